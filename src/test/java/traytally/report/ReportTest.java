package traytally.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import traytally.report.Column.Kind;

class ReportTest {
  private static final Column COLOUR = new Column("colour", "Colour", Kind.TEXT);

  private static Report report(List<Report.Single> facts, List<Column> columns) {
    return new Report(
        "box", "Box", LocalDate.EPOCH, facts, columns, List.of(), List.of(), List.of());
  }

  private static Report sections(Report.Section... sections) {
    return new Report(
        "box",
        "Box",
        LocalDate.EPOCH,
        List.of(),
        List.of(COLOUR),
        List.of(List.of(Value.of("plum")), List.of(Value.of("pearl"))),
        List.of(sections),
        List.of());
  }

  private static void assertRefused(Runnable made) {
    assertThrows(IllegalArgumentException.class, made::run);
  }

  @Test
  void twoValuesCannotShareAKey() {
    assertRefused(() -> report(List.of(), List.of(COLOUR, COLOUR)));
    Report.Single rows = new Report.Single(new Column("rows", "", Kind.WHOLE), Value.of(1));
    assertRefused(() -> report(List.of(rows), List.of(COLOUR)));
  }

  @Test
  void keysAreInSnakeCase() {
    assertRefused(() -> new Column("packPrice", "Pack price", Kind.MONEY));
    assertRefused(() -> new Column("", "", Kind.MONEY));
    assertEquals("use_p90", new Column("use_p90", "", Kind.WHOLE).key());
  }

  @Test
  void sectionsFollowOneAnotherWithinTheRows() {
    Report.Section first = new Report.Section("A", 0, 1, "");
    Report.Section second = new Report.Section("B", 1, 2, "");
    assertEquals(2, sections(first, second).sections().size());
    assertRefused(() -> sections(second, first));
    assertRefused(() -> sections(new Report.Section("C", 1, 3, "")));
    assertRefused(() -> new Report.Section("D", 1, 0, ""));
  }
}
