package traytally.sheet;

import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Reads whole files for the tests. */
final class Reader {
  private Reader() {}

  static List<Row> rows(Path file) {
    return rows(file, Reading.AS_FOUND);
  }

  /** The rows of all sheets. */
  static List<Row> rows(Path file, Reading reading) {
    List<Row> all = new ArrayList<>();
    try (Workbook workbook = Workbook.open(file, reading)) {
      for (Sheet sheet : workbook.sheets()) {
        try (Rows rows = workbook.rows(sheet)) {
          rows.forEachRemaining(all::add);
        }
      }
    }
    return all;
  }

  /** The rows as a person sees them, the cells of each apart by a stroke. */
  static List<String> shown(Path file) {
    return shown(file, Reading.AS_FOUND);
  }

  static List<String> shown(Path file, Reading reading) {
    List<String> lines = new ArrayList<>();
    for (Row row : rows(file, reading)) {
      lines.add(
          row.number() + ": " + String.join("|", row.cells().stream().map(Cell::shown).toList()));
    }
    return lines;
  }

  /** What the person is told of a file that cannot be read. */
  static String refusal(Path file, Reading reading) {
    return assertThrows(UnreadableSheetException.class, () -> rows(file, reading)).getMessage();
  }

  static String refusal(Path file) {
    return refusal(file, Reading.AS_FOUND);
  }
}
