package traytally.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import traytally.sheet.Row;

/** A text whose columns were lined up with more tabs behind the shorter words. */
final class AlignedTabs {
  /** Nobody lines up a longer list by hand (an assumption). */
  private static final int LONGEST = 2_000;

  /** Fewer cells a row, or fewer rows, may line up by chance (an assumption). */
  private static final int FEWEST = 3;

  private AlignedTabs() {}

  /** The sheet with its cells side by side, if all its rows have as many as the first of them. */
  static Optional<GivenSheet> closedUp(GivenSheet sheet) {
    if (!sheet.name().isEmpty() || sheet.rows().size() > LONGEST) {
      return Optional.empty();
    }
    List<Row> full = sheet.rows().stream().filter(row -> row.filled().size() > 1).toList();
    if (full.size() < FEWEST
        || full.get(0).filled().size() < FEWEST
        || !full.stream().allMatch(row -> row.filled().size() == full.get(0).filled().size())
        || full.stream().noneMatch(row -> standsBeside(row, full.get(0)))) {
      return Optional.empty();
    }
    List<Row> rows = new ArrayList<>();
    sheet.rows().forEach(row -> rows.add(new Row(row.number(), row.filled(), row.hidden())));
    return Optional.of(new GivenSheet(sheet.file(), sheet.name(), sheet.hidden(), rows, List.of()));
  }

  /** Whether a row has a cell where the first one has a gap. */
  private static boolean standsBeside(Row row, Row first) {
    for (int column = 0; column < row.cells().size(); column++) {
      boolean gap = column < first.cells().size() - 1 && first.cell(column).isBlank();
      if (gap && !row.cell(column).isBlank()) {
        return true;
      }
    }
    return false;
  }
}
