package traytally.sheet;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * What a reader is asked to do with any bytes at all: give cells or say in a sentence why not.
 * Whatever else comes out of it is a fault.
 */
final class FuzzTarget {
  static final Path SEEDS = Path.of("src/test/resources/fuzz");

  private FuzzTarget() {}

  /** Any file: the kind is told from the content. */
  static void file(Path folder, byte[] content) throws IOException {
    Path file = folder.resolve("fuzz");
    Files.write(file, content);
    try (Workbook workbook = Workbook.open(file)) {
      for (Sheet sheet : workbook.sheets()) {
        try (Rows rows = workbook.rows(sheet)) {
          while (rows.hasNext()) {
            look(rows.next());
          }
        }
      }
    } catch (UnreadableSheetException e) {
      requireSentence(e);
    }
  }

  /** The part of an .xlsx that holds a sheet, in a file that is otherwise sound. */
  static void sheetPart(Path folder, byte[] content) throws IOException {
    Path file = folder.resolve("fuzz.xlsx");
    HandmadeXlsx.ofSheet("")
        .part("xl/worksheets/sheet1.xml", new String(content, StandardCharsets.ISO_8859_1))
        .texts("<si><t>paddle</t></si>")
        .writeTo(file);
    file(folder, Files.readAllBytes(file));
  }

  private static void look(Row row) {
    for (Cell cell : row.cells()) {
      if (cell.isBlank() != cell.shown().isBlank() && cell.shown().isEmpty()) {
        throw new IllegalStateException("blank to the eye and not to the reader: " + cell);
      }
    }
  }

  private static void requireSentence(UnreadableSheetException e) {
    String said = String.valueOf(e.getMessage());
    if (!said.endsWith(".") || said.contains("Exception") || said.length() > 300) {
      throw new IllegalStateException("no sentence: " + said, e);
    }
  }
}
