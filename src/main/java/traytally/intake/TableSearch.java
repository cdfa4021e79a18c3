package traytally.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import traytally.sheet.Address;
import traytally.sheet.Cell;
import traytally.sheet.CellRange;
import traytally.sheet.Row;

/** Finds the lists in a sheet: where their headers stand and which rows are theirs. */
final class TableSearch {
  /** Titles above a header are few (an assumption). */
  private static final int HEADER_WITHIN = 30;

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
    while (start.isPresent()) {
      Table table = new Table(sheet, start.get().headers(), start.get().guess());
      start = fill(table, start.get().index());
      tables.add(table);
    }
    return tables;
  }

  /** A header row, its place among the rows and what it is taken for. */
  private record Start(int index, List<ColumnHeader> headers, ColumnGuess guess) {}

  private Optional<Start> header(int from, int to) {
    Optional<Start> best = Optional.empty();
    for (int index = from; index < to; index++) {
      Optional<Start> start = start(index);
      int score = best.map(b -> b.guess().score()).orElse(0);
      if (start.filter(s -> s.guess().score() > score).isPresent()) {
        best = start;
      }
    }
    return best;
  }

  private Optional<Start> start(int index) {
    Row row = sheet.rows().get(index);
    long texts = row.cells().stream().filter(TableSearch::mayBeHeader).count();
    long filled = row.cells().stream().filter(c -> !c.isBlank()).count();
    if (texts < 2 || texts * 2 < filled) {
      return Optional.empty();
    }
    List<ColumnHeader> headers = row.cells().stream().map(ColumnHeader::of).toList();
    Optional<ColumnGuess> guess = recall(headers);
    if (guess.isEmpty()) {
      guess = ColumnGuess.best(headers, wanted, given);
    }
    return guess.map(g -> new Start(index, headers, g));
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
    // Remembered headers beat any guess of another row.
    ColumnGuess guess = new ColumnGuess(known.kind(), columns, why, Integer.MAX_VALUE);
    return guess.isComplete() ? Optional.of(guess) : Optional.empty();
  }

  /** The headers as they are remembered: folded, one a line. */
  static String key(List<ColumnHeader> headers) {
    return String.join("\n", headers.stream().map(ColumnHeader::folded).toList());
  }

  /** Puts the rows under the header at {@code index} into {@code table}, up to the next header. */
  private Optional<Start> fill(Table table, int index) {
    Sections sections = new Sections(table);
    List<Row> rows = sheet.rows();
    int last = rows.get(index).number();
    Optional<Start> next = Optional.empty();
    int hidden = 0;
    for (int i = index + 1; i < rows.size() && next.isEmpty(); i++) {
      Row row = rows.get(i);
      boolean gap = row.number() > last + 1;
      last = row.number();
      if (repeatsHeader(table, row)) {
        table.assume("A header row that stands again was passed over.");
      } else {
        next = mayBeHeaderRow(row, gap) ? start(i) : Optional.empty();
        if (next.isEmpty()) {
          hidden += row.hidden() ? 1 : 0;
          sections.take(
              row,
              gap,
              i + 1 < rows.size() ? Optional.of(rows.get(i + 1)) : Optional.empty(),
              mapped(table, row));
        }
      }
    }
    if (hidden > 0) {
      table.assume(hidden + " hidden rows were read like the others.");
    }
    sections.fillDown();
    return next;
  }

  private static boolean mayBeHeaderRow(Row row, boolean gap) {
    return gap
        && row.cells().stream().filter(TableSearch::mayBeHeader).count() > 2
        && row.cells().stream().allMatch(c -> c.isBlank() || mayBeHeader(c));
  }

  private boolean repeatsHeader(Table table, Row row) {
    if (row.cells().isEmpty() || row.cells().size() > table.headers().size()) {
      return false;
    }
    for (int column : table.guess().columns().values()) {
      if (!WordListMatch.same(row.cell(column), table.headers().get(column))) {
        return false;
      }
    }
    return true;
  }

  /** Compares a cell with a header without folding every cell of a long list. */
  private static final class WordListMatch {
    private WordListMatch() {}

    static boolean same(Cell cell, ColumnHeader header) {
      return cell instanceof Cell.Text text && text.text().strip().equalsIgnoreCase(header.text());
    }
  }

  private ListRow mapped(Table table, Row row) {
    ListRow list = new ListRow(row.number());
    table
        .guess()
        .columns()
        .forEach(
            (field, column) -> {
              Cell cell = row.cell(column);
              if (cell.isBlank() && IDENTITY.contains(field)) {
                cell = merged(row.number(), column).orElse(cell);
              }
              list.put(field, cell, column);
            });
    return list;
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
