package traytally.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/** Finds the headers of a sheet, of one row or two, and what their columns may be taken for. */
final class HeaderSearch {
  /** How far below a title that passes for a header the true header may stand. */
  private static final int TITLES = 2;

  /** Wider rows are no list of a box whose columns their cells must tell (an assumption). */
  static final int MOST_COLUMNS = 60;

  /** Remembered headers beat any guess of another row. */
  private static final int REMEMBERED = 1_000_000;

  /** Why a column is taken as it was the last time. */
  static final String AS_BEFORE = "as the last time";

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

  private static final Pattern MEASURED =
      Pattern.compile(
          "\\s*\\d+(?:[.,]\\d+)?\\s*(?:mm|cm|mins?|minutes?|h|hrs?|hours?|takes?|hits?|bites?|hooked"
              + "|landed|caught|lost|casts?|pcs|pieces)\\.?\\s*",
          Pattern.CASE_INSENSITIVE);

  private final GivenSheet sheet;
  private final Optional<ListKind> wanted;
  private final Map<String, Optional<Field>> given;
  private final Map<String, Remembered> remembered;

  /** A mapping of earlier: the kind and, header by header, the field. */
  record Remembered(ListKind kind, List<Optional<Field>> fields) {}

  HeaderSearch(
      GivenSheet sheet,
      Optional<ListKind> wanted,
      Map<String, Optional<Field>> given,
      Map<String, Remembered> remembered) {
    this.sheet = sheet;
    this.wanted = wanted;
    this.given = given;
    this.remembered = remembered;
  }

  /**
   * A header, its place among the rows and what it is taken for.
   *
   * @param first its first row
   * @param last its last row: headers may take two
   */
  record Start(int first, int last, List<ColumnHeader> headers, ColumnGuess guess) {}

  /** The best header among the first {@code rows} rows. */
  Optional<Start> first(int rows) {
    Optional<Start> best = Optional.empty();
    int until = rows;
    for (int index = 0; index < until; index++) {
      Optional<Start> start = followsRows(index) ? Optional.empty() : at(index);
      int score = best.map(b -> b.guess().score()).orElse(0);
      if (start.filter(s -> s.guess().score() > score).isPresent()) {
        // A title may pass for a header, but then the true one is near.
        until = best.isEmpty() ? Math.min(rows, index + 1 + TITLES) : until;
        best = start;
      }
    }
    return best;
  }

  /** Whether the two rows before are of a list, so that what passes for a header is one of them. */
  private boolean followsRows(int index) {
    return index >= 2 && isOfList(index, 1) && isOfList(index, 2);
  }

  private boolean isOfList(int index, int before) {
    Row row = sheet.rows().get(index - before);
    List<Cell> filled = row.filled();
    return row.number() == sheet.rows().get(index).number() - before
        && filled.size() > 2
        && filled.stream().anyMatch(Under::isCount)
        && filled.stream().anyMatch(HeaderSearch::mayBeWord);
  }

  /** Whether a row names two columns of a list or more, and holds nothing but words. */
  static boolean namesColumns(Row row) {
    long usual = 0;
    for (Cell cell : row.cells()) {
      if (!cell.isBlank() && !mayBeWord(cell)) {
        return false;
      }
      usual += isUsual(ColumnHeader.of(cell).folded()) ? 1 : 0;
    }
    return usual >= 2;
  }

  /**
   * Whether a row is of the headers of another list: words alone, of which one counts or measures,
   * one is of what lists pass over, and none names a body style or a colour.
   */
  static boolean namesOtherThings(Row row) {
    boolean measured = false;
    boolean other = false;
    for (Cell cell : row.cells()) {
      String header = ColumnHeader.of(cell).folded();
      if (header.isEmpty()) {
        continue;
      }
      if (!mayBeWord(cell)
          || HeaderWords.isUsual(header, Field.BODY, ListKind.BOX)
          || HeaderWords.isUsual(header, Field.COLOUR, ListKind.BOX)) {
        return false;
      }
      measured |= isUsual(header);
      other |= HeaderWords.isPassedOver(header) || InStock.isOtherTackle(header);
    }
    return measured && other;
  }

  /** Whether {@code header}, folded, is a usual word for what a list of the box tells. */
  static boolean isUsual(String header) {
    return !header.isEmpty()
        && Stream.of(Field.BODY, Field.COLOUR, Field.LENGTH, Field.PIECES)
            .anyMatch(field -> HeaderWords.isUsual(header, field, ListKind.BOX));
  }

  /** The header that the row at {@code index} begins, if it does. */
  Optional<Start> at(int index) {
    Row row = sheet.rows().get(index);
    Optional<Start> square =
        squareUnderTwoRows(index)
            .or(
                () ->
                    new Square(row, wanted, new Under(sheet, index + 1))
                        .guess()
                        .map(g -> new Start(index, index, headers(row), g)));
    if (square.isPresent()) {
      return square;
    }
    if (!looksLikeHeader(row)) {
      return Optional.empty();
    }
    Optional<Start> one =
        guess(headers(row), index + 1).map(g -> new Start(index, index, headers(row), g));
    if (index + 1 >= sheet.rows().size()) {
      return one;
    }
    Row below = sheet.rows().get(index + 1);
    if (one.isPresent() && continues(below, one.get().guess(), row)) {
      return Stream.of(both(row, below, true), both(row, below, false))
          .flatMap(both -> guess(both, index + 2).map(g -> start(index, both, g)).stream())
          .max(Comparator.comparingInt(start -> start.guess().score()))
          .or(() -> one);
    }
    if (one.isEmpty() && wanted.filter(w -> w != ListKind.PRICES).isEmpty()) {
      Optional<ColumnGuess> shops = Square.shopsAcross(headers(row), below);
      if (shops.isPresent()) {
        return Optional.of(new Start(index, index, headers(row), shops.get()));
      }
    }
    return looksLikeHeader(below)
            && below.cells().stream().noneMatch(HeaderSearch::isBroken)
            && !countsUnder(row, below)
        ? twoRows(index, one.map(o -> o.guess().score()).orElse(0)).or(() -> one)
        : one;
  }

  private static Start start(int upper, List<ColumnHeader> both, ColumnGuess guess) {
    return new Start(upper, upper + 1, both, guess);
  }

  /** A square with lengths in one row of its head and shapes or colours in the other. */
  private Optional<Start> squareUnderTwoRows(int index) {
    if (index + 1 >= sheet.rows().size()) {
      return Optional.empty();
    }
    Row upper = sheet.rows().get(index);
    Row below = sheet.rows().get(index + 1);
    boolean headed = upper.cells().stream().anyMatch(cell -> headsLengths(cell.shown()));
    Optional<Lengths.Unit> unit = unitOver(upper);
    // Lengths under their own word are told by it, and not by what they stand beside.
    Optional<Row> lower =
        Square.withUnits(below, unit).map(row -> headed && unit.isEmpty() ? below : row);
    if (lower.isEmpty() && !Square.mayBe(upper)) {
      return Optional.empty();
    }
    List<ColumnHeader> both = both(upper, lower.orElse(below), true);
    List<Cell> cells = new ArrayList<>();
    both.forEach(header -> cells.add(Cell.text(header.text())));
    Row joined = new Row(upper.number(), cells, upper.hidden());
    return new Square(joined, wanted, new Under(sheet, index + 2))
        .guess()
        .filter(g -> headed || !g.across().containsValue(Field.LENGTH))
        .map(g -> new Start(index, index + 1, both, g));
  }

  /** The unit that a word for lengths states over several of them, if one does. */
  private static Optional<Lengths.Unit> unitOver(Row upper) {
    return upper.cells().stream()
        .filter(cell -> headsLengths(cell.shown()))
        .flatMap(cell -> ColumnHeader.of(cell).lengthUnit().stream())
        .findFirst();
  }

  private static boolean headsLengths(String over) {
    return HeaderWords.isUsual(ColumnHeader.of(over).folded(), Field.LENGTH, ListKind.BOX);
  }

  private static List<ColumnHeader> headers(Row row) {
    return row.cells().stream().map(ColumnHeader::of).toList();
  }

  private static boolean looksLikeHeader(Row row) {
    if (beginsWithDay(row)
        || row.cells().stream().anyMatch(HeaderSearch::isPackCount)
        || row.cells().stream().filter(HeaderSearch::isMeasured).count() >= 2) {
      return false;
    }
    long texts = row.cells().stream().filter(HeaderSearch::mayBeWord).count();
    long filled = row.cells().stream().filter(c -> !c.isBlank()).count();
    return texts >= 2 && texts * 2 >= filled;
  }

  private Optional<ColumnGuess> guess(List<ColumnHeader> headers, int below) {
    return recall(headers).or(() -> guessed(headers, new Under(sheet, below)));
  }

  private Optional<ColumnGuess> guessed(List<ColumnHeader> headers, Under under) {
    FishByKind fish = new FishByKind(headers, under, given.keySet());
    Optional<ColumnGuess> best =
        ColumnGuess.best(headers, wanted, given)
            .map(new SecondLook(headers, under, wanted, given)::at)
            .map(guess -> LuresAcross.withCounts(guess, headers, under))
            .map(fish::in)
            .map(guess -> LuresAcross.in(guess, headers));
    return byContent(best, headers, under)
        .or(() -> best)
        .filter(guess -> mayBeLures(guess, under))
        .filter(guess -> !isTitleOfLines(headers, under));
  }

  /** Whether what reads as two headers stands over lines of one cell: a title with a comma. */
  private boolean isTitleOfLines(List<ColumnHeader> headers, Under under) {
    return headers.size() == 2 && wanted.isEmpty() && given.isEmpty() && under.isOfLines();
  }

  /** Whether a list that tells no length has colours, or shapes, in its cells. */
  private boolean mayBeLures(ColumnGuess guess, Under under) {
    int body = guess.columns().getOrDefault(Field.BODY, -1);
    int colour = guess.columns().getOrDefault(Field.COLOUR, -1);
    if (wanted.isPresent()
        || guess.kind() != ListKind.BOX
        || guess.has(Field.LENGTH)
        || body < 0
        || colour < 0) {
      return true;
    }
    List<Cell> named = under.filled(body);
    return named.isEmpty()
        || under.filled(colour).size() * 2 > named.size()
        || named.stream().anyMatch(cell -> Anatomy.bodyWords(cell.shown()) > 0);
  }

  /** A list whose columns are told by what they hold, too; of the box if nothing else is told. */
  private Optional<ColumnGuess> byContent(
      Optional<ColumnGuess> best, List<ColumnHeader> headers, Under under) {
    if (headers.size() > MOST_COLUMNS) {
      return Optional.empty();
    }
    Optional<ListKind> kind = best.map(ColumnGuess::kind).or(() -> wanted);
    return byContent(kind.orElse(ListKind.BOX), best, headers, under)
        .or(
            () ->
                kind.isEmpty()
                    ? byContent(ListKind.TRIPS, best, headers, under)
                        .filter(ColumnGuess::tellsOuting)
                    : Optional.empty());
  }

  private Optional<ColumnGuess> byContent(
      ListKind kind, Optional<ColumnGuess> best, List<ColumnHeader> headers, Under under) {
    if (kind == ListKind.PLAN) {
      return Optional.empty();
    }
    ColumnGuess words = best.orElseGet(() -> ColumnGuess.of(headers, kind, given));
    ColumnGuess places =
        kind == ListKind.BOX ? new PlaceCounts(headers, under, given.keySet()).in(words) : words;
    return Optional.of(new ToldByContent(headers, under, given.keySet()).in(places))
        .filter(g -> g.isComplete() && (wanted.isPresent() || g.convinces()));
  }

  /** A header of two rows, if the two together say more than {@code score}. */
  private Optional<Start> twoRows(int index, int score) {
    Row upper = sheet.rows().get(index);
    Row lower = sheet.rows().get(index + 1);
    int lowerAlone = guess(headers(lower), index + 2).map(ColumnGuess::score).orElse(0);
    Optional<Start> best = Optional.empty();
    for (boolean joined : new boolean[] {false, true}) {
      List<ColumnHeader> both = both(upper, lower, joined);
      Optional<ColumnGuess> guess = guess(both, index + 2);
      int beaten =
          Math.max(Math.max(score, lowerAlone), best.map(b -> b.guess().score()).orElse(0));
      if (guess.filter(g -> g.score() > beaten).isPresent()) {
        best = Optional.of(start(index, both, guess.get()));
      }
    }
    return best;
  }

  /**
   * Whether the row goes on with the header above it: units and header words, and no number; or
   * words where no plastic is named, of which some stand under no header of their own.
   */
  private static boolean continues(Row below, ColumnGuess guess, Row above) {
    boolean any = divides(below, guess, above);
    for (Field field : NUMBERS) {
      int column = guess.columns().getOrDefault(field, Integer.MAX_VALUE);
      Cell cell = below.cell(column);
      if (!cell.isBlank()) {
        any = true;
        boolean header =
            isUnit(cell.shown().strip())
                || HeaderWords.isUsual(ColumnHeader.of(cell).folded(), field, guess.kind());
        if (!mayBeWord(cell) || !header) {
          return false;
        }
      }
    }
    return any;
  }

  private static boolean divides(Row below, ColumnGuess guess, Row above) {
    boolean under = false;
    for (int column = 0; column < below.cells().size(); column++) {
      Cell cell = below.cell(column);
      if (!cell.isBlank() && (!mayBeWord(cell) || isLure(guess, column))) {
        return false;
      }
      under |= !cell.isBlank() && above.cell(column).isBlank();
    }
    return under;
  }

  /** Whether a number stands right under a word for a count: it is one, and heads nothing. */
  private static boolean countsUnder(Row above, Row below) {
    return IntStream.range(0, below.cells().size())
        .filter(c -> Numbers.parse(Numbers.plain(below.cell(c).shown())).isPresent())
        .mapToObj(column -> ColumnHeader.of(above.cell(column)).folded())
        .anyMatch(header -> HeaderWords.isUsual(header, Field.PIECES, ListKind.BOX));
  }

  private static boolean isLure(ColumnGuess guess, int column) {
    return Stream.of(Field.BODY, Field.COLOUR, Field.MAKER, Field.NOTE)
        .anyMatch(field -> guess.columns().getOrDefault(field, -1) == column);
  }

  private List<ColumnHeader> both(Row upper, Row lower, boolean joined) {
    List<ColumnHeader> both = new ArrayList<>();
    String over = "";
    for (int column = 0; column < Math.max(upper.cells().size(), lower.cells().size()); column++) {
      Cell top = upper.cell(column);
      // A heading over several columns stands in the first, merged or not.
      over =
          top.isBlank()
              ? sheet.merged(upper.number(), column).map(Cell::shown).orElse(over)
              : top.shown();
      String below = lower.cell(column).isBlank() ? "" : lower.cell(column).shown();
      String own = top.isBlank() ? "" : top.shown();
      boolean alone =
          !joined
              || Square.isTotal(WordList.fold(below))
              || (headsLengths(over) && RowReader.writtenLength(Cell.text(below)).isPresent());
      String text = below.isEmpty() ? own : alone ? below : over + " " + below;
      both.add(ColumnHeader.of(text));
    }
    return both;
  }

  /** Whether a row is of a log, or begins a day of one, and is no header. */
  private static boolean beginsWithDay(Row row) {
    return row.cells().stream()
        .filter(cell -> !cell.isBlank())
        .findFirst()
        .filter(c -> c instanceof Cell.DateTime || Dates.isDate(c.shown()))
        .isPresent();
  }

  /** Whether a cell counts packs or pieces in words, as no header does: {@code 2 bags}. */
  private static boolean isPackCount(Cell cell) {
    return cell instanceof Cell.Text text
        && text.text().matches("\\s*\\d.*")
        && (Quantities.countsPacks(text.text()) || text.text().matches(".*\\b(?:loose|left)\\b.*"))
        && Under.isCount(cell);
  }

  /** Whether a cell holds a number that heads no column: one with a fraction. */
  private static boolean isBroken(Cell cell) {
    return Numbers.parse(Numbers.plain(cell.shown())).filter(n -> !Numbers.isWhole(n)).isPresent();
  }

  /** Whether a cell holds a number with its unit behind it, as no header does: {@code 3 takes}. */
  private static boolean isMeasured(Cell cell) {
    return cell instanceof Cell.Text text && MEASURED.matcher(text.text()).matches();
  }

  /** Whether {@code text} is a unit that stands below or beside a header. */
  static boolean isUnit(String text) {
    return UNIT_ROW.matcher(text).matches();
  }

  private static boolean mayBeWord(Cell cell) {
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
                why.put(here, AS_BEFORE);
              });
    }
    ColumnGuess guess = new ColumnGuess(known.kind(), columns, Map.of(), why, REMEMBERED);
    return guess.isComplete() ? Optional.of(guess) : Optional.empty();
  }

  /** The headers as they are remembered: folded, one a line. */
  static String key(List<ColumnHeader> headers) {
    return String.join("\n", headers.stream().map(ColumnHeader::folded).toList());
  }

  /** Whether a row below others may begin a list of its own. */
  static boolean mayBe(Row row, boolean gap) {
    if (gap && (Square.mayBe(row) || Square.mayBeBare(row))) {
      return true;
    }
    return gap
        && row.cells().stream().filter(HeaderSearch::mayBeWord).count() > 2
        && row.cells().stream().allMatch(c -> c.isBlank() || mayBeWord(c));
  }
}
