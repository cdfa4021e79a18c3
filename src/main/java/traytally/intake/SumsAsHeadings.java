package traytally.intake;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * A table of two columns as spreadsheet programs sum up a longer list: each shape with the sum of
 * its colours, and below it the colours with their counts.
 */
final class SumsAsHeadings {
  /** People read so much of a summary (an assumption). */
  private static final int MOST = 2_000;

  private static final int FEWEST = 3;

  private record Line(Row row, String label, BigDecimal count) {}

  private final GivenSheet sheet;

  private SumsAsHeadings(GivenSheet sheet) {
    this.sheet = sheet;
  }

  /** The list of {@code sheet} with shape, colour and count in columns, if it is such a table. */
  static Optional<GivenSheet> apart(GivenSheet sheet) {
    return sheet.rows().size() > MOST ? Optional.empty() : new SumsAsHeadings(sheet).apart();
  }

  private Optional<GivenSheet> apart() {
    List<Line> lines = new ArrayList<>();
    int header = 0;
    for (Row row : sheet.rows()) {
      Optional<Line> line = line(row);
      if (line.isPresent()) {
        lines.add(line.get());
      } else if (lines.isEmpty()) {
        header = row.number();
      } else {
        return Optional.empty();
      }
    }
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < lines.size(); ) {
      int below = sumsUp(lines, i);
      boolean total = i > 0 && i == lines.size() - 1;
      if (below == 0 && !total) {
        return Optional.empty();
      }
      Line heading = lines.get(i);
      for (Line colour : lines.subList(i + 1, i + 1 + below)) {
        rows.add(
            new Row(
                colour.row().number(),
                List.of(
                    Cell.text(heading.label()),
                    Cell.text(colour.label()),
                    Cell.text(colour.count().toPlainString())),
                colour.row().hidden()));
      }
      i += 1 + below;
    }
    if (rows.size() < FEWEST || header == 0) {
      return Optional.empty();
    }
    List<Cell> headers = List.of(Cell.text("Body style"), Cell.text("Colour"), Cell.text("Pieces"));
    rows.add(0, new Row(header, headers, false));
    return Optional.of(new GivenSheet(sheet.file(), sheet.name(), sheet.hidden(), rows, List.of()));
  }

  /** How many lines below a shape come to its count; 0 if they do not. */
  private static int sumsUp(List<Line> lines, int heading) {
    BigDecimal sum = BigDecimal.ZERO;
    String label = lines.get(heading).label();
    if (Anatomy.bodyWords(label) == 0 || Anatomy.colourWords(label) > 0) {
      return 0;
    }
    for (int i = heading + 1; i < lines.size(); i++) {
      sum = sum.add(lines.get(i).count());
      boolean colour = Anatomy.bodyWords(lines.get(i).label()) == 0;
      int far = sum.compareTo(lines.get(heading).count());
      if (!colour || far > 0) {
        return 0;
      }
      if (far == 0) {
        return i - heading;
      }
    }
    return 0;
  }

  private static Optional<Line> line(Row row) {
    List<Cell> filled = row.filled();
    if (filled.size() != 2 || !(filled.get(0) instanceof Cell.Text)) {
      return Optional.empty();
    }
    return Numbers.parse(Numbers.plain(filled.get(1).shown()))
        .map(count -> new Line(row, filled.get(0).shown().strip(), count));
  }
}
