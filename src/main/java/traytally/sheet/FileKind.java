package traytally.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** The kinds of file that are read, told from the content whatever the name says. */
enum FileKind {
  XLSX,
  XLS,
  TEXT;

  private static final String OTHER_KIND =
      "This is %s, not a sheet. Save your list as .xlsx or .csv and import that.";

  private static final String WEB_PAGE =
      "This is a web page that was named like a spreadsheet. " + RowBuilder.SAVE_AGAIN;

  /** First bytes, as ISO 8859-1, of what people hand over by mistake. */
  private record Mark(String bytes, String name) {}

  // From each format's own specification, as collected in file(1)'s magic.
  private static final List<Mark> OTHERS =
      List.of(
          new Mark("%PDF", "a PDF"),
          new Mark("{\\rtf", "a text document (RTF)"),
          new Mark("\u0089PNG", "a picture"),
          new Mark("\u00FF\u00D8\u00FF", "a picture"),
          new Mark("GIF8", "a picture"),
          new Mark("BM", "a picture"),
          new Mark("II*\0", "a picture"),
          new Mark("MM\0*", "a picture"),
          new Mark("RIFF", "a picture or a sound"),
          new Mark("7z\u00BC\u00AF", "a packed archive"),
          new Mark("Rar!", "a packed archive"),
          new Mark("\u001F\u008B", "a packed archive"),
          new Mark("MZ", "a program"),
          new Mark("\u007FELF", "a program"),
          new Mark("SQLite format 3", "a database"));

  /** The kind of a file, or a refusal that names what it is instead. */
  static FileKind of(Path file, Limits limits) throws IOException {
    if (!Files.isRegularFile(file)) {
      throw new UnreadableSheetException(
          Files.exists(file)
              ? "This is a folder, not a file. Name the file to import."
              : "There is no such file. Check the name and the folder.");
    }
    if (Files.size(file) > limits.fileBytes()) {
      throw new UnreadableSheetException(Refusal.TOO_LARGE);
    }
    byte[] head;
    try (InputStream in = Files.newInputStream(file)) {
      head = in.readNBytes(TextEncoding.HEAD_BYTES);
    }
    if (head.length == 0) {
      throw new UnreadableSheetException("This file is empty. Check that it was saved.");
    }
    String start = new String(head, StandardCharsets.ISO_8859_1);
    if (start.startsWith("PK\3\4") || start.startsWith("PK\5\6")) {
      return XLSX;
    }
    if (start.startsWith("\u00D0\u00CF\u0011\u00E0\u00A1\u00B1\u001A\u00E1")) {
      return XLS;
    }
    refuseOlder(head);
    boolean binary = start.indexOf('\0') >= 0 && TextEncoding.byHead(head).isEmpty();
    for (Mark mark : OTHERS) {
      // "BM" and "MZ" may well begin a list; a picture or a program has NUL bytes as well.
      if (start.startsWith(mark.bytes()) && (binary || mark.bytes().length() > 2)) {
        throw new UnreadableSheetException(String.format(Locale.ROOT, OTHER_KIND, mark.name()));
      }
    }
    if (binary) {
      throw new UnreadableSheetException(
          String.format(Locale.ROOT, OTHER_KIND, "a file of some other program"));
    }
    refuseMarkup(start);
    return TEXT;
  }

  /** BIFF 2 to 8 outside a compound file: a BOF record, 09 0x, of 4 to 16 bytes. */
  private static void refuseOlder(byte[] head) {
    if (head.length > 4
        && head[0] == 9
        && (head[1] == 0 || head[1] == 2 || head[1] == 4 || head[1] == 8)
        && head[2] >= 4
        && head[2] <= 16
        && head[3] == 0) {
      throw new UnreadableSheetException(Refusal.OLDER);
    }
  }

  private static void refuseMarkup(String start) {
    String text = start.replaceFirst("^\u00EF\u00BB\u00BF", "").stripLeading();
    String lower = text.toLowerCase(Locale.ROOT);
    if (lower.startsWith("<")) {
      boolean page =
          lower.contains("<html") || lower.contains("<table") || lower.startsWith("<!doctype");
      if (page) {
        throw new UnreadableSheetException(WEB_PAGE);
      }
      if (lower.startsWith("<?xml") || lower.startsWith("<!--")) {
        throw new UnreadableSheetException("This is an XML file. " + RowBuilder.SAVE_AGAIN);
      }
    }
    if (text.startsWith("ID;P") || lower.startsWith("mime-version:")) {
      throw new UnreadableSheetException(
          "This is a sheet in a form that is not read. " + RowBuilder.SAVE_AGAIN);
    }
  }
}
