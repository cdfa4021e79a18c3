package traytally.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import traytally.sheet.UnreadableSheetException;
import traytally.sheet.Workbook;

/** A text list through the whole import, twice: it is taken or refused, and the same only once. */
public final class ListFuzz {
  private static final LocalDate TODAY = LocalDate.of(2026, 5, 1);
  private static final Path FILE = file();

  private ListFuzz() {}

  private static Path file() {
    try {
      return Files.createTempFile("traytally-fuzz", ".csv");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Called by the fuzzer with each input. */
  public static void fuzzerTestOneInput(byte[] content) throws IOException {
    Files.write(FILE, content);
    List<GivenSheet> sheets;
    try (Workbook workbook = Workbook.open(FILE)) {
      sheets = GivenSheet.of("list.csv", workbook);
    } catch (UnreadableSheetException e) {
      return; // what it says is looked at where the readers alone are fuzzed
    }
    Recorder recorder = new Recorder();
    Imported first;
    try {
      first = Import.read(sheets, recorder.book(), ImportOptions.NONE, TODAY);
    } catch (ListRefusedException e) {
      require(e.getMessage().endsWith("."), "no sentence: " + e.getMessage());
      return;
    }
    for (SheetReading reading : first.readings()) {
      require(
          reading.rowsRead() == reading.rowsTaken() + reading.rowsSkipped(),
          "a row is not accounted for: " + reading);
    }
    if (first.entry().isEmpty()) {
      return;
    }
    recorder.record(first.entry());
    Imported second = Import.read(sheets, recorder.book(), ImportOptions.NONE, TODAY);
    require(second.entry().isEmpty(), "the second import changes: " + second.entry());
  }

  private static void require(boolean holds, String otherwise) {
    if (!holds) {
      throw new IllegalStateException(otherwise);
    }
  }
}
