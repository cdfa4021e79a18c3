package traytally.render;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.render.Examples.column;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import traytally.report.Column;
import traytally.report.Column.Kind;
import traytally.report.Column.Room;
import traytally.report.Report;
import traytally.report.Value;

class ArrangementTest {
  private static final Report LIST =
      Examples.table(
          List.of(
              column("", "Got", Kind.TICK),
              column("body", "Body style", Kind.TEXT),
              new Column("tray", "Tray", Kind.TEXT, Room.SPARE),
              new Column("lost", "Lost", Kind.WHOLE, Room.SPARE),
              new Column("reason", "Why", Kind.TEXT, Room.BELOW)),
          List.of(
              List.of(
                  Value.UNKNOWN,
                  Value.of("paddle tail"),
                  Value.of("blue one"),
                  Value.of(3),
                  Value.of("1 left; about 2 go by 5 June; trusted"))));

  private static String table(int width) throws IOException {
    return Golden.text(LIST, Format.TABLE, Look.PLAIN.withWidth(width));
  }

  @Test
  void allStandsSideBySideWhereThereIsRoom() throws IOException {
    assertTrue(
        table(120)
            .contains("[ ]  paddle tail  blue one     3  1 left; about 2 go by 5 June; trusted"),
        table(120));
  }

  @Test
  void sentencesGoBelowTheirRowFirst() throws IOException {
    assertTrue(
        table(50)
            .contains(
                "[ ]  paddle tail  blue one     3\n     Why: 1 left; about 2 go by 5 June; trusted\n"),
        table(50));
  }

  @Test
  void spareColumnsAreLeftOutFromTheLastAndNamed() throws IOException {
    String narrow = table(30);
    assertTrue(narrow.contains("[ ]  paddle tail  blue one\n"), narrow);
    assertTrue(narrow.contains("No room in 30 columns for:\n  Lost."), narrow);
    String narrowest = table(20);
    assertTrue(narrowest.contains("[ ]  paddle tail\n"), narrowest);
    assertTrue(narrowest.replaceAll("\\s+", " ").contains("for: Tray, Lost."), narrowest);
    assertFalse(table(50).contains("No room"), "nothing was left out");
  }

  @Test
  void nothingSpareLeavesTheRowsAsBefore() throws IOException {
    Report report = Examples.single(Kind.TEXT, Value.of("paddle tail"));
    assertEquals(
        "Box · 2026-05-01\n\nIt\n───────────\npaddle tail\n",
        Golden.text(report, Format.TABLE, Look.PLAIN));
  }
}
