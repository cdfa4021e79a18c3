package traytally.intake;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * Lists handed over as lines of text, one after another, to a book in memory. Cells stand apart by
 * {@code |}: {@code =75} is a number, {@code =75;0" mm"} one with its format, {@code @2026-04-03} a
 * day, {@code @09:10} a time, {@code #N/A} an error, all others are text. A line {@code ~…} is
 * hidden, and an empty one is a row with nothing in it.
 */
final class Handed {
  static final LocalDate TODAY = LocalDate.of(2026, 5, 1);

  private final Recorder recorder = new Recorder();
  private ImportOptions options = ImportOptions.NONE;
  private LocalDate today = TODAY;
  private String said = "";

  /** Passes such options as {@code count-date 2026-04-20} from here on. */
  Handed with(String... lines) {
    options = GoldenTest.options(List.of(lines));
    return this;
  }

  /** Imports on that day from here on. */
  Handed on(String date) {
    today = LocalDate.parse(date);
    return this;
  }

  static GivenSheet sheet(String file, String tab, String... lines) {
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < lines.length; i++) {
      boolean hidden = lines[i].startsWith("~");
      String[] texts = lines[i].substring(hidden ? 1 : 0).split("\\|", -1);
      List<Cell> cells = new ArrayList<>();
      for (String text : texts) {
        cells.add(cell(text));
      }
      while (!cells.isEmpty() && cells.get(cells.size() - 1).isBlank()) {
        cells.remove(cells.size() - 1);
      }
      if (!cells.isEmpty()) {
        rows.add(new Row(i + 1, cells, hidden));
      }
    }
    return new GivenSheet(file, tab, false, rows, List.of());
  }

  private static Cell cell(String text) {
    if (text.startsWith("=")) {
      String[] parts = text.substring(1).split(";", 2);
      return new Cell.Numeric(
          Double.parseDouble(parts[0]), parts.length > 1 ? parts[1] : "General");
    }
    if (text.startsWith("@")) {
      String when = text.substring(1);
      return when.contains(":")
          ? new Cell.Time(Duration.ofSeconds(LocalTime.parse(when).toSecondOfDay()))
          : new Cell.DateTime(LocalDate.parse(when).atStartOfDay());
    }
    return text.matches("#[A-Z/0!]+") ? new Cell.ErrorValue(text) : Cell.text(text);
  }

  /** What would come of the sheets; nothing is recorded. */
  Imported read(GivenSheet... sheets) {
    return Import.read(List.of(sheets), recorder.book(), options, today);
  }

  /** Imports a text list {@code list.csv}. */
  Handed take(String... lines) {
    return take(sheet("list.csv", "", lines));
  }

  /** Imports the sheets together. */
  Handed take(GivenSheet... sheets) {
    Imported imported = read(sheets);
    recorder.record(imported.entry());
    said = Transcript.of(imported);
    return this;
  }

  /** What came of the last import, line by line. */
  String said() {
    return said;
  }

  /** The last import said every one of {@code parts}. */
  Handed says(String... parts) {
    for (String part : parts) {
      assertTrue(said.contains(part), () -> "lacks: " + part + "\n" + said);
    }
    return this;
  }

  /** The last import said none of {@code parts}. */
  Handed saysNot(String... parts) {
    for (String part : parts) {
      assertFalse(said.contains(part), () -> "has: " + part + "\n" + said);
    }
    return this;
  }

  /** What the refusal of the sheets says. */
  String refusal(GivenSheet... sheets) {
    return String.valueOf(
        assertThrows(ListRefusedException.class, () -> read(sheets)).getMessage());
  }
}
