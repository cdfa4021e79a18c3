package traytally.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * A list whose headers stand down its left side, set upright: one that lies on its side, or cards,
 * a line for each thing that is told of a plastic.
 */
final class Upright {
  /** A header, and behind a mark what it tells: {@code Colour: copper}. */
  private static final Pattern LINE = Pattern.compile("(\\p{L}[\\p{L} ]{0,30}?)\\s*[:=]\\s*(.*)");

  /** People read so much across, and so many cards (an assumption). */
  private static final int MOST = 2_000;

  /** Two headers may be chance (an assumption). */
  private static final int FEWEST = 3;

  private final GivenSheet sheet;

  private Upright(GivenSheet sheet) {
    this.sheet = sheet;
  }

  /** The list of {@code sheet} under a row of headers, if it has them down its side. */
  static Optional<GivenSheet> of(GivenSheet sheet) {
    if (sheet.rows().size() > MOST) {
      return Optional.empty();
    }
    Upright upright = new Upright(sheet);
    return upright.fromCards().or(upright::fromItsSide);
  }

  private Optional<GivenSheet> fromItsSide() {
    List<Row> told = new ArrayList<>();
    int width = 0;
    for (Row row : sheet.rows()) {
      if (row.cells().size() > 2 && isHeader(row.cell(0).shown())) {
        told.add(row);
        width = Math.max(width, row.cells().size());
      }
    }
    if (told.size() < FEWEST || width > MOST) {
      return Optional.empty();
    }
    List<Row> rows = new ArrayList<>();
    for (int column = 0; column < width; column++) {
      int here = column;
      List<Cell> cells = told.stream().map(row -> row.cell(here)).toList();
      if (cells.stream().anyMatch(cell -> !cell.isBlank())) {
        rows.add(new Row(column + 1, cells, false));
      }
    }
    return Optional.of(under(rows));
  }

  private Optional<GivenSheet> fromCards() {
    Map<String, Integer> columns = new LinkedHashMap<>();
    List<Row> rows = new ArrayList<>();
    Map<Integer, Cell> card = new LinkedHashMap<>();
    int lines = 0;
    int last = 0;
    int first = 0;
    for (Row row : sheet.rows()) {
      Optional<Map.Entry<String, Cell>> line = line(row);
      if (line.isEmpty()) {
        continue;
      }
      lines++;
      first = first == 0 ? row.number() : first;
      int column = columns.computeIfAbsent(line.get().getKey(), key -> columns.size());
      if (card.containsKey(column)) {
        rows.add(row(last, card));
        card.clear();
      }
      card.put(column, line.get().getValue());
      last = row.number();
    }
    boolean known = columns.keySet().stream().filter(Upright::isHeader).count() >= FEWEST;
    if (!known || rows.isEmpty() || lines * 2 < sheet.rows().size()) {
      return Optional.empty();
    }
    rows.add(row(last, card));
    List<Cell> headers = columns.keySet().stream().map(Cell::text).toList();
    rows.add(0, new Row(first, headers, false));
    return Optional.of(under(rows));
  }

  private static Row row(int number, Map<Integer, Cell> card) {
    int width = card.keySet().stream().mapToInt(c -> c + 1).max().orElse(0);
    List<Cell> cells = new ArrayList<>();
    for (int column = 0; column < width; column++) {
      cells.add(card.getOrDefault(column, Cell.blank()));
    }
    return new Row(number, cells, false);
  }

  /** What a row tells and under which header, if it is a line of a card. */
  private static Optional<Map.Entry<String, Cell>> line(Row row) {
    List<Cell> filled = row.filled();
    if (filled.isEmpty() || !(filled.get(0) instanceof Cell.Text)) {
      return Optional.empty();
    }
    String first = filled.get(0).shown().strip();
    if (filled.size() == 2 && isHeader(first)) {
      return Optional.of(Map.entry(first, filled.get(1)));
    }
    Matcher line = LINE.matcher(NoteLines.words(row, ", "));
    return line.matches()
        ? Optional.of(Map.entry(line.group(1), Cell.text(line.group(2).strip())))
        : Optional.empty();
  }

  private static boolean isHeader(String text) {
    return HeaderSearch.isUsual(ColumnHeader.of(text).folded());
  }

  private GivenSheet under(List<Row> rows) {
    return new GivenSheet(sheet.file(), sheet.name(), sheet.hidden(), rows, List.of());
  }
}
