package traytally.intake;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import traytally.sheet.Address;
import traytally.sheet.Cell;
import traytally.sheet.CellRange;
import traytally.sheet.Row;

/** Finds the lists in a sheet: where their headers stand and which rows are theirs. */
final class TableSearch {
  /** Titles above a header are few (an assumption). */
  private static final int HEADER_WITHIN = 30;

  /** How far below a title that passes for a header the true header may stand. */
  private static final int TITLES = 2;

  /** Remembered headers beat any guess of another row. */
  private static final int REMEMBERED = 1_000_000;

  private static final Pattern UNIT_ROW =
      Pattern.compile(
          "[(\\[]?(?:mm|cm|in|inch|inches|ins|pcs|pieces|min|mins|minutes|h|hrs|hours|€|£|eur|gbp)\\.?[)\\]]?",
          Pattern.CASE_INSENSITIVE);

  private static final Set<Field> NUMBERS =
      Set.of(
          Field.LENGTH,
          Field.PIECES,
          Field.PACKS,
          Field.LOOSE,
          Field.PACK_SIZE,
          Field.PACK_PRICE,
          Field.MINUTES,
          Field.TAKES,
          Field.LOST,
          Field.HOURS);

  private static final Set<Field> IDENTITY =
      Set.of(
          Field.MAKER,
          Field.BODY,
          Field.COLOUR,
          Field.LENGTH,
          Field.DATE,
          Field.WATER,
          Field.SPECIES,
          Field.CLARITY,
          Field.SHOP,
          Field.TRAY,
          Field.PACK_SIZE,
          Field.PACK_PRICE,
          Field.CURRENCY);

  private final GivenSheet sheet;
  private final Optional<ListKind> wanted;
  private final Map<String, Optional<Field>> given;
  private final Map<String, Remembered> remembered;

  /** A mapping of earlier: the kind and, header by header, the field. */
  record Remembered(ListKind kind, List<Optional<Field>> fields) {}

  TableSearch(
      GivenSheet sheet,
      Optional<ListKind> wanted,
      Map<String, Optional<Field>> given,
      Map<String, Remembered> remembered) {
    this.sheet = sheet;
    this.wanted = wanted;
    this.given = given;
    this.remembered = remembered;
  }

  /** The lists of the sheet from top to bottom; none if nothing is recognised. */
  List<Table> tables() {
    List<Table> tables = new ArrayList<>();
    Optional<Start> start = header(0, Math.min(sheet.rows().size(), HEADER_WITHIN));
    if (start.isEmpty()) {
      return withoutHeader().stream().toList();
    }
    List<Integer> groups = sideBySide(start.get());
    if (groups.size() > 1) {
      return apart(groups);
    }
    while (start.isPresent()) {
      Table table = new Table(sheet, start.get().headers(), start.get().guess());
      start = fill(table, start.get());
      tables.add(table);
    }
    return tables;
  }

  /**
   * A header, its place among the rows and what it is taken for.
   *
   * @param first its first row
   * @param last its last row: headers may take two
   */
  private record Start(int first, int last, List<ColumnHeader> headers, ColumnGuess guess) {}

  /** The first columns of lists that stand side by side under one header row. */
  private List<Integer> sideBySide(Start start) {
    List<ColumnHeader> headers = start.headers();
    List<Integer> groups = new ArrayList<>();
    boolean blankBefore = true;
    String first = "";
    for (int column = 0; column < headers.size(); column++) {
      String header = headers.get(column).folded();
      if (!header.isEmpty() && (blankBefore || header.equals(first))) {
        groups.add(column);
        first = first.isEmpty() ? header : first;
      }
      blankBefore = header.isEmpty();
    }
    for (int i = 0; i < groups.size(); i++) {
      int to = i + 1 < groups.size() ? groups.get(i + 1) : headers.size();
      if (ColumnGuess.best(headers.subList(groups.get(i), to), wanted, given).isEmpty()) {
        return List.of();
      }
    }
    return groups;
  }

  /** The lists of the columns from each of {@code groups} on, each read as a sheet of its own. */
  private List<Table> apart(List<Integer> groups) {
    List<Table> tables = new ArrayList<>();
    for (int i = 0; i < groups.size(); i++) {
      int from = i == 0 ? 0 : groups.get(i);
      int to = i + 1 < groups.size() ? groups.get(i + 1) : Integer.MAX_VALUE;
      List<Row> rows = new ArrayList<>();
      for (Row row : sheet.rows()) {
        List<Cell> cells = new ArrayList<>();
        for (int column = 0; column < Math.min(to, row.cells().size()); column++) {
          cells.add(column < from ? Cell.blank() : row.cell(column));
        }
        rows.add(new Row(row.number(), cells, row.hidden()));
      }
      rows.removeIf(row -> row.cells().stream().allMatch(Cell::isBlank));
      GivenSheet part =
          new GivenSheet(sheet.file(), sheet.name(), sheet.hidden(), rows, sheet.merges());
      tables.addAll(new TableSearch(part, wanted, given, Map.of()).tables());
    }
    return tables;
  }

  private Optional<Table> withoutHeader() {
    return columnsByContent()
        .or(
            () ->
                wanted.filter(w -> w != ListKind.BOX).isEmpty()
                    ? new NoteLines(sheet).table()
                    : Optional.empty());
  }

  private Optional<Table> columnsByContent() {
    return new ContentGuess(sheet.rows(), wanted)
        .guess()
        .map(
            guess -> {
              List<ColumnHeader> headers = Collections.nCopies(guess.width(), ColumnHeader.of(""));
              Table table = new Table(sheet, headers, guess.columns());
              table.assume("No header row was found: the columns were told by what they hold.");
              fill(table, new Start(-1, -1, headers, guess.columns()));
              return table;
            });
  }

  private Optional<Start> header(int from, int to) {
    Optional<Start> best = Optional.empty();
    int until = to;
    for (int index = from; index < until; index++) {
      Optional<Start> start = start(index);
      int score = best.map(b -> b.guess().score()).orElse(0);
      if (start.filter(s -> s.guess().score() > score).isPresent()) {
        // A title may pass for a header, but then the true one is near.
        until = best.isEmpty() ? Math.min(to, index + 1 + TITLES) : until;
        best = start;
      }
    }
    return best;
  }

  private Optional<Start> start(int index) {
    Row row = sheet.rows().get(index);
    Optional<Start> square =
        new Square(row, wanted).guess().map(g -> new Start(index, index, headers(row), g));
    if (square.isPresent()) {
      return square;
    }
    if (!looksLikeHeader(row)) {
      return Optional.empty();
    }
    Optional<Start> one = guess(headers(row)).map(g -> new Start(index, index, headers(row), g));
    if (index + 1 >= sheet.rows().size()) {
      return one;
    }
    Row below = sheet.rows().get(index + 1);
    if (one.isPresent() && continues(below, one.get().guess())) {
      List<ColumnHeader> both = both(row, below, true);
      return guess(both).map(g -> new Start(index, index + 1, both, g)).or(() -> one);
    }
    if (one.isEmpty() && wanted.filter(w -> w != ListKind.PRICES).isEmpty()) {
      Optional<ColumnGuess> shops = Square.shopsAcross(headers(row), below);
      if (shops.isPresent()) {
        return Optional.of(new Start(index, index, headers(row), shops.get()));
      }
    }
    return looksLikeHeader(below)
        ? twoRows(index, one.map(o -> o.guess().score()).orElse(0)).or(() -> one)
        : one;
  }

  private static List<ColumnHeader> headers(Row row) {
    return row.cells().stream().map(ColumnHeader::of).toList();
  }

  private static boolean looksLikeHeader(Row row) {
    long texts = row.cells().stream().filter(TableSearch::mayBeHeader).count();
    long filled = row.cells().stream().filter(c -> !c.isBlank()).count();
    return texts >= 2 && texts * 2 >= filled;
  }

  private Optional<ColumnGuess> guess(List<ColumnHeader> headers) {
    return recall(headers).or(() -> ColumnGuess.best(headers, wanted, given));
  }

  /** A header of two rows, if the two together say more than {@code score}. */
  private Optional<Start> twoRows(int index, int score) {
    Row upper = sheet.rows().get(index);
    Row lower = sheet.rows().get(index + 1);
    int lowerAlone = guess(headers(lower)).map(ColumnGuess::score).orElse(0);
    Optional<Start> best = Optional.empty();
    for (boolean joined : new boolean[] {false, true}) {
      List<ColumnHeader> both = both(upper, lower, joined);
      Optional<ColumnGuess> guess = guess(both);
      int beaten =
          Math.max(Math.max(score, lowerAlone), best.map(b -> b.guess().score()).orElse(0));
      if (guess.filter(g -> g.score() > beaten).isPresent()) {
        best = Optional.of(new Start(index, index + 1, both, guess.get()));
      }
    }
    return best;
  }

  /** Whether the row goes on with the header above it: units and header words, and no number. */
  private static boolean continues(Row below, ColumnGuess guess) {
    boolean any = false;
    for (Field field : NUMBERS) {
      int column = guess.columns().getOrDefault(field, Integer.MAX_VALUE);
      Cell cell = below.cell(column);
      if (!cell.isBlank()) {
        any = true;
        boolean header =
            UNIT_ROW.matcher(cell.shown().strip()).matches()
                || ColumnGuess.isUsual(ColumnHeader.of(cell).folded(), field, guess.kind());
        if (!mayBeHeader(cell) || !header) {
          return false;
        }
      }
    }
    return any;
  }

  private List<ColumnHeader> both(Row upper, Row lower, boolean joined) {
    List<ColumnHeader> both = new ArrayList<>();
    String over = "";
    for (int column = 0; column < Math.max(upper.cells().size(), lower.cells().size()); column++) {
      Cell top = upper.cell(column);
      // A heading over several columns stands in the first, merged or not.
      over =
          top.isBlank()
              ? merged(upper.number(), column).map(Cell::shown).orElse(over)
              : top.shown();
      String below = lower.cell(column).isBlank() ? "" : lower.cell(column).shown();
      String own = top.isBlank() ? "" : top.shown();
      String text = below.isEmpty() ? own : joined ? over + " " + below : below;
      both.add(ColumnHeader.of(text));
    }
    return both;
  }

  private static boolean mayBeHeader(Cell cell) {
    return cell instanceof Cell.Text text
        && !cell.isBlank()
        && Numbers.parse(Numbers.plain(text.text())).isEmpty();
  }

  /** The guess an earlier import settled on for exactly these headers. */
  private Optional<ColumnGuess> recall(List<ColumnHeader> headers) {
    Remembered known = remembered.get(key(headers));
    if (known == null
        || !given.isEmpty()
        || wanted.filter(w -> w != known.kind()).isPresent()
        || known.fields().size() != headers.size()) {
      return Optional.empty();
    }
    Map<Field, Integer> columns = new HashMap<>();
    Map<Integer, String> why = new HashMap<>();
    for (int column = 0; column < headers.size(); column++) {
      int here = column;
      known
          .fields()
          .get(column)
          .ifPresent(
              field -> {
                columns.put(field, here);
                why.put(here, "as the last time");
              });
    }
    ColumnGuess guess = new ColumnGuess(known.kind(), columns, Map.of(), why, REMEMBERED);
    return guess.isComplete() ? Optional.of(guess) : Optional.empty();
  }

  /** The headers as they are remembered: folded, one a line. */
  static String key(List<ColumnHeader> headers) {
    return String.join("\n", headers.stream().map(ColumnHeader::folded).toList());
  }

  /** Puts the rows under the header at {@code index} into {@code table}, up to the next header. */
  private Optional<Start> fill(Table table, Start start) {
    List<String> titles = titles(start.first());
    table.under(titles);
    Sections sections = new Sections(table, titles);
    List<Row> rows = sheet.rows();
    int last = start.last() < 0 ? 0 : rows.get(start.last()).number();
    Optional<Start> next = Optional.empty();
    int hidden = 0;
    ListRow.Columns columns = ListRow.Columns.of(sheet, table.guess().columns());
    Optional<Row> following = rowAt(start.last() + 1);
    for (int i = start.last() + 1; i < rows.size() && next.isEmpty(); i++) {
      Row row = following.orElseThrow();
      following = rowAt(i + 1);
      boolean gap = row.number() > last + 1;
      last = row.number();
      if (repeatsHeader(table, row)) {
        table.assume("A header row that stands again was passed over.");
      } else {
        next = mayBeHeaderRow(row, gap) ? start(i) : Optional.empty();
        if (next.isEmpty()) {
          hidden += row.hidden() ? 1 : 0;
          sections.take(row, gap, following, mapped(table, row, columns.row(i)));
        }
      }
    }
    if (hidden > 0) {
      table.assume(hidden + " hidden rows were read like the others.");
    }
    sections.fillDown();
    new TakeApart(table).run();
    return next;
  }

  private Optional<Row> rowAt(int index) {
    return index < sheet.rows().size() ? Optional.of(sheet.rows().get(index)) : Optional.empty();
  }

  /** The lone texts over a header, the nearest first. */
  private List<String> titles(int first) {
    List<String> titles = new ArrayList<>();
    for (int i = first - 1; i >= 0 && first - i < HEADER_WITHIN; i--) {
      List<Cell> filled = sheet.rows().get(i).cells().stream().filter(c -> !c.isBlank()).toList();
      if (filled.size() != 1) {
        break;
      }
      titles.add(filled.get(0).shown().strip());
    }
    return titles;
  }

  private static boolean mayBeHeaderRow(Row row, boolean gap) {
    if (gap && Square.mayBe(row)) {
      return true;
    }
    return gap
        && row.cells().stream().filter(TableSearch::mayBeHeader).count() > 2
        && row.cells().stream().allMatch(c -> c.isBlank() || mayBeHeader(c));
  }

  private boolean repeatsHeader(Table table, Row row) {
    if (row.cells().isEmpty() || row.cells().size() > table.headers().size()) {
      return false;
    }
    for (int column : table.guess().columns().values()) {
      if (!stands(row.cell(column), table.headers().get(column))) {
        return false;
      }
    }
    return !table.guess().columns().isEmpty();
  }

  private static boolean stands(Cell cell, ColumnHeader header) {
    return cell instanceof Cell.Text text
        && !header.text().isEmpty()
        && text.text().strip().equalsIgnoreCase(header.text());
  }

  private ListRow mapped(Table table, Row row, ListRow list) {
    if (sheet.merges().isEmpty()) {
      return list;
    }
    table
        .guess()
        .columns()
        .forEach(
            (field, column) -> {
              if (IDENTITY.contains(field) && row.cell(column).isBlank()) {
                mergedAbove(row.number(), column).ifPresent(cell -> list.put(field, cell, column));
              }
            });
    return list;
  }

  /** What a merged area that begins over this cell holds; one that runs across is no value. */
  private Optional<Cell> mergedAbove(int number, int column) {
    Address address = new Address(number, column);
    return sheet.merges().stream()
            .anyMatch(range -> range.first().column() == column && range.contains(address))
        ? merged(number, column)
        : Optional.empty();
  }

  /** What a merged area over this cell holds. */
  private Optional<Cell> merged(int number, int column) {
    if (sheet.merges().isEmpty()) {
      return Optional.empty();
    }
    Address address = new Address(number, column);
    for (CellRange range : sheet.merges()) {
      if (range.contains(address)) {
        return sheet.rows().stream()
            .filter(row -> row.number() == range.first().row())
            .findFirst()
            .map(row -> row.cell(range.first().column()))
            .filter(cell -> !cell.isBlank());
      }
    }
    return Optional.empty();
  }
}
