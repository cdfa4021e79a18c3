package traytally.sheet;

import java.io.IOException;
import java.util.zip.ZipException;
import javax.xml.stream.XMLStreamException;
import org.apache.poi.EncryptedDocumentException;
import org.apache.poi.OldFileFormatException;

/** Puts whatever goes wrong inside a file into one sentence, keeping the cause. */
final class Refusal {
  private static final String DAMAGED = "This file is damaged and cannot be read to its end. ";

  static final String PASSWORD =
      "This file is locked with a password. Open it, save it without one, and import that.";

  static final String OLDER =
      "This file was saved by a very old spreadsheet program (Excel 95 or before). "
          + RowBuilder.SAVE_AGAIN;

  static final String TOO_LARGE =
      "This file is too large to be read. Copy the rows you need into a new file and import that.";

  private Refusal() {}

  /** Something that reads a file. */
  interface Attempt<T> {
    T read() throws IOException, XMLStreamException;
  }

  /** What the attempt read, or the one exception this package throws. */
  static <T> T unlessRead(Attempt<T> attempt) {
    try {
      return attempt.read();
    } catch (UnreadableSheetException e) {
      throw e;
    } catch (EncryptedDocumentException e) {
      throw new UnreadableSheetException(PASSWORD, e);
    } catch (OldFileFormatException e) {
      throw new UnreadableSheetException(OLDER, e);
    } catch (ZipException e) {
      throw new UnreadableSheetException(
          "This file is damaged or was cut short. Copy it again from where it came from, or open it"
              + " in a spreadsheet program and save it again.",
          e);
    } catch (OutOfMemoryError e) {
      // A forged length asks for one absurd array; the heap itself is sound once that is refused.
      throw new UnreadableSheetException(TOO_LARGE, e);
    } catch (IOException | XMLStreamException | RuntimeException | StackOverflowError e) {
      // The libraries answer broken files with some dozen unrelated classes, half-way through too.
      throw new UnreadableSheetException(DAMAGED + RowBuilder.SAVE_AGAIN, e);
    }
  }
}
