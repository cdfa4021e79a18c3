package traytally.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import traytally.intake.HeaderSearch.Remembered;
import traytally.intake.HeaderSearch.Start;
import traytally.sheet.Address;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/** Finds the lists in a sheet: where their headers stand and which rows are theirs. */
final class TableSearch {
  /** Titles above a header are few (an assumption). */
  private static final int HEADER_WITHIN = 30;

  /** Headers that name some columns stand on top (an assumption). */
  private static final int NAMED_WITHIN = 3;

  private static final Set<Field> IDENTITY =
      Set.of(
          Field.MAKER,
          Field.BODY,
          Field.COLOUR,
          Field.SECOND_COLOUR,
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
  private final LocalDate today;
  private final Map<String, Remembered> remembered;
  private final HeaderSearch headers;

  TableSearch(
      GivenSheet sheet,
      Optional<ListKind> wanted,
      Map<String, Optional<Field>> given,
      Map<String, Remembered> remembered,
      LocalDate today) {
    this.sheet = sheet;
    this.wanted = wanted;
    this.given = given;
    this.today = today;
    this.remembered = remembered;
    this.headers = new HeaderSearch(sheet, wanted, given, remembered);
  }

  /** The lists of the sheet from top to bottom; none if nothing is recognised. */
  List<Table> tables() {
    Optional<GivenSheet> messages = Chat.messages(sheet);
    if (messages.isPresent()) {
      return new TableSearch(messages.get(), wanted, given, Map.of(), today).tables();
    }
    Optional<GivenSheet> closedUp = AlignedTabs.closedUp(sheet);
    if (closedUp.isPresent()) {
      List<Table> lists =
          new TableSearch(closedUp.get(), wanted, given, remembered, today).tables();
      lists.forEach(list -> list.assume("Several tabs between two cells were read as one."));
      return lists;
    }
    Optional<Cards> cards = Cards.of(sheet, wanted, given);
    if (cards.isPresent()) {
      List<Table> lists =
          new TableSearch(
                  cards.get().sheet(), Optional.of(cards.get().kind()), given, remembered, today)
              .tables();
      cards.get().tell(sheet, lists);
      return lists;
    }
    Optional<GivenSheet> apart =
        wanted.filter(kind -> kind != ListKind.BOX).isEmpty()
            ? SumsAsHeadings.apart(sheet)
            : Optional.empty();
    if (apart.isPresent()) {
      List<Table> lists = new TableSearch(apart.get(), wanted, given, Map.of(), today).tables();
      lists.forEach(list -> list.assume("Each shape stands with its sum over its colours."));
      return lists;
    }
    List<Table> tables = new ArrayList<>();
    Optional<Start> start = headers.first(Math.min(sheet.rows().size(), HEADER_WITHIN));
    Optional<Table> diary = start.flatMap(this::diary);
    if (diary.isPresent()) {
      return List.of(diary.get());
    }
    if (start.isEmpty()) {
      List<Table> upright = upright();
      return upright.isEmpty() ? withoutHeader().stream().toList() : upright;
    }
    List<Integer> groups = sideBySide(start.get());
    if (groups.size() > 1) {
      return apart(groups);
    }
    while (start.isPresent()) {
      Start begun =
          DateInStart.settled(sheet, ClarityColumn.settled(sheet, start.get(), given.keySet()));
      Table table = new Table(sheet, begun.headers(), begun.guess());
      if (tables.isEmpty()) {
        noteAbove(table, begun.first());
      }
      start = fill(table, begun);
      tables.add(table);
    }
    return tables;
  }

  /** The diary whose lines hold what passed for a header, if they do. */
  private Optional<Table> diary(Start start) {
    Row header = sheet.rows().get(start.first());
    return wanted.filter(w -> w != ListKind.TRIPS).isEmpty() && DiaryLines.mayBeLine(header)
        ? new DiaryLines(sheet).table()
        : Optional.empty();
  }

  /** Says which rows over the headers look like rows of the list, and are not read as such. */
  private void noteAbove(Table table, int first) {
    for (Row row : sheet.rows().subList(0, first)) {
      List<Cell> filled = row.filled();
      boolean read = ToldInTitle.in(row).size() * 2 == filled.size();
      if (filled.size() > 1 && !read && filled.stream().anyMatch(Under::isCount)) {
        int column = row.cells().indexOf(filled.get(0));
        String text = filled.get(0).shown().strip();
        table.note(row.number(), column, text, "stands above the headers and was left out.");
      }
    }
  }

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
        rows.add(new Row(row.number(), cells, row.hidden(), row.struck()));
      }
      rows.removeIf(row -> row.cells().stream().allMatch(Cell::isBlank));
      GivenSheet part =
          new GivenSheet(sheet.file(), sheet.name(), sheet.hidden(), rows, sheet.merges());
      tables.addAll(new TableSearch(part, wanted, given, Map.of(), today).tables());
    }
    return tables;
  }

  /** The lists of a sheet with its headers down its side. */
  private List<Table> upright() {
    Optional<GivenSheet> upright = Upright.of(sheet);
    if (upright.isEmpty()
        || new HeaderSearch(upright.get(), wanted, given, Map.of()).first(1).isEmpty()) {
      return List.of();
    }
    List<Table> tables = new TableSearch(upright.get(), wanted, given, Map.of(), today).tables();
    tables.forEach(
        table ->
            table.assume(
                "The headers stand down the left side, and what they tell beside them: each"
                    + " plastic was read as a row."));
    return tables;
  }

  private Optional<Table> withoutHeader() {
    if (sheet.rows().stream().limit(NAMED_WITHIN).anyMatch(HeaderSearch::namesColumns)) {
      // Its columns have headers, and which of them counts is to be asked.
      return Optional.empty();
    }
    return (wanted.filter(w -> w != ListKind.TRIPS).isEmpty()
            ? new DiaryLines(sheet).table()
            : Optional.<Table>empty())
        .or(this::planLines)
        .or(this::columnsByContent)
        .or(
            () ->
                wanted.filter(w -> w != ListKind.BOX).isEmpty()
                    ? new NoteLines(sheet).table()
                    : Optional.empty());
  }

  private Optional<Table> planLines() {
    return wanted.filter(w -> w != ListKind.PLAN).isEmpty()
        ? new PlanLines(sheet, today, wanted.isPresent()).table()
        : Optional.empty();
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

  /** Puts the rows under the header at {@code index} into {@code table}, up to the next header. */
  private Optional<Start> fill(Table table, Start start) {
    List<String> titles = titles(start.first());
    Square.shapeInCorner(start.headers(), start.guess()).ifPresent(shape -> titles.add(0, shape));
    table.under(titles);
    table.beginAt(start.last() + 1);
    Sections sections = new Sections(table, titles);
    List<String> ofTwo = headerRows(start);
    List<Row> rows = sheet.rows();
    int last = start.last() < 0 ? 0 : rows.get(start.last()).number();
    Optional<Start> next = Optional.empty();
    int hidden = 0;
    ListRow.Columns columns = ListRow.Columns.of(sheet, table.guess().columns());
    Optional<Row> following = rowAt(start.last() + 1);
    boolean titled = false;
    boolean foreign = false;
    Nameless nameless = new Nameless(table);
    Optional<DayMonthYear> days = DayMonthYear.of(table);
    Optional<SharedHeader> shared = SharedHeader.of(table);
    for (int i = start.last() + 1; i < rows.size() && next.isEmpty(); i++) {
      Row row = following.orElseThrow();
      following = rowAt(i + 1);
      boolean gap = row.number() > last + 1;
      boolean fresh = gap || titled;
      titled = gap && isTitle(row);
      last = row.number();
      next = nextDay(table, start, i);
      if (next.isEmpty()
          && isTitle(row)
          && following.filter(f -> endsAt(table, row, f, gap)).isPresent()) {
        next = headers.at(i + 1);
      }
      if (next.isPresent()) {
        break;
      }
      if (repeatsHeader(table, row)
          || (!ofTwo.isEmpty() && ofTwo.contains(NoteLines.words(row, "|")))) {
        table.assume("A header row that stands again was passed over.");
      } else {
        next = HeaderSearch.mayBe(row, fresh) ? headers.at(i) : Optional.empty();
        // A list of hooks has headers too, some of which lists of plastics know.
        foreign = next.isEmpty() && (fresh ? HeaderSearch.namesOtherThings(row) : foreign && !gap);
        if (foreign) {
          String first = NoteLines.words(row, ", ");
          table.note(row.number(), 0, first, "is of another list, which was passed over.");
        } else if (next.isEmpty()) {
          hidden += row.hidden() ? 1 : 0;
          ListRow list = mapped(table, row, columns.row(i));
          days.ifPresent(d -> d.put(list));
          shared.ifPresent(s -> s.put(list));
          sections.take(row, gap, following, list);
          nameless.look(row);
        }
      }
    }
    if (hidden > 0) {
      table.assume(
          hidden == 1
              ? "A hidden row was read like the others."
              : hidden + " hidden rows were read like the others.");
    }
    nameless.say();
    ToldInTitle.fill(table);
    DayInTitle.fill(table);
    sections.fillDown();
    new TakeApart(table).run();
    TitleLength.inherit(table, titles);
    return next;
  }

  /** Columns that hold something under no header and are taken for nothing. */
  private static final class Nameless {
    private final Table table;
    private final BitSet known = new BitSet();
    private final BitSet filled = new BitSet();

    Nameless(Table table) {
      this.table = table;
      for (int column = 0; column < table.headers().size(); column++) {
        known.set(column, !table.headers().get(column).text().isEmpty());
      }
      table.guess().columns().values().forEach(known::set);
      table.guess().across().keySet().forEach(known::set);
    }

    void look(Row row) {
      for (int c = known.nextClearBit(0); c < row.cells().size(); c = known.nextClearBit(c + 1)) {
        if (!ListRow.isBlank(row.cell(c))) {
          filled.set(c);
        }
      }
    }

    void say() {
      filled.stream()
          .forEach(
              column ->
                  table.assume(
                      "Column "
                          + Address.columnLetters(column)
                          + " has no header and was passed over."));
    }
  }

  private Optional<Row> rowAt(int index) {
    return index < sheet.rows().size() ? Optional.of(sheet.rows().get(index)) : Optional.empty();
  }

  /** The lone texts over a header, the nearest first. */
  private List<String> titles(int first) {
    List<String> titles = new ArrayList<>();
    for (int i = first - 1; i >= 0 && first - i < HEADER_WITHIN; i--) {
      List<Cell> filled = sheet.rows().get(i).filled();
      List<String> told = filled.size() > 1 ? ToldInTitle.in(sheet.rows().get(i)) : List.of();
      if (!told.isEmpty()) {
        titles.addAll(told);
        continue;
      }
      if (filled.size() > 1 && Pairs.areMarked(sheet.rows().get(i))) {
        // Who fished and from where, beside the day and the water in the rows around it.
        continue;
      }
      if (filled.size() != 1) {
        break;
      }
      titles.add(filled.get(0).shown().strip());
    }
    return titles;
  }

  private static boolean isTitle(Row row) {
    int filled = 0;
    for (int column = 0; column < row.cells().size() && filled < 2; column++) {
      filled += ListRow.isBlank(row.cell(column)) ? 0 : 1;
    }
    return filled == 1;
  }

  /**
   * Whether a title begins another list: over other headers below a gap, or over the same ones,
   * where it is no tray, no body, no shop.
   */
  private boolean endsAt(Table table, Row title, Row below, boolean gap) {
    boolean same = repeatsHeader(table, below);
    return (same
            ? table.kind() == ListKind.BOX && table.guess().has(Field.BODY)
            : gap && HeaderSearch.mayBe(below, true))
        && title.cells().stream().noneMatch(cell -> Sections.isTray(cell.shown().strip()));
  }

  /** The log of the next day where the lines of its card begin at {@code index}. */
  private Optional<Start> nextDay(Table table, Start start, int index) {
    if (table.kind() != ListKind.TRIPS || table.guess().has(Field.DATE)) {
      return Optional.empty();
    }
    OptionalInt below = DayLines.below(sheet, index);
    if (below.isEmpty()) {
      return Optional.empty();
    }
    int first = below.getAsInt();
    return headers
        .at(first)
        .filter(s -> s.guess().kind() == ListKind.TRIPS)
        .or(() -> Optional.of(new Start(first, first - 1, start.headers(), start.guess())));
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
    // A square below another may have lengths of its own under the same words.
    return !table.guess().columns().isEmpty()
        && table.guess().across().keySet().stream()
            .allMatch(c -> row.cell(c).shown().strip().equals(table.headers().get(c).text()));
  }

  /** The rows of a header that takes two, as they read: either may stand again. */
  private List<String> headerRows(Start start) {
    return start.last() > start.first()
        ? sheet.rows().subList(start.first(), start.last() + 1).stream()
            .map(row -> NoteLines.words(row, "|"))
            .toList()
        : List.of();
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
                sheet
                    .mergedAbove(row.number(), column)
                    .ifPresent(cell -> list.put(field, cell, column));
              }
            });
    return list;
  }
}
