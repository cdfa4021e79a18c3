package traytally.intake;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import traytally.plastic.Plastic;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * A list with its counts in a square: colours down, lengths or body styles across.
 *
 * <p>Its header row names lengths ({@code 3"}, {@code 75 mm}, or bare numbers beside a header such
 * as Colour), or shapes.
 */
final class Square {
  /** Nobody has more colours, shapes or lengths side by side (an assumption). */
  private static final int WIDEST = 300;

  private final Row row;
  private final Optional<ListKind> wanted;
  private final Under under;

  /**
   * A row that may head a square.
   *
   * @param under the rows below it
   */
  Square(Row row, Optional<ListKind> wanted, Under under) {
    this.row = row;
    this.wanted = wanted;
    this.under = under;
  }

  /** Whether the row names at least two lengths with their units. */
  static boolean mayBe(Row row) {
    return row.cells().size() <= WIDEST
        && row.cells().stream().filter(Square::isLengthWithUnit).count() >= 2;
  }

  /** Whether the row names two lengths or more, be it without a unit, beside a header's word. */
  static boolean mayBeBare(Row row) {
    return withUnits(row).isPresent()
        && row.cells().stream()
            .anyMatch(c -> isColumn(ColumnHeader.of(c).folded()) || isShape(c.shown()));
  }

  /** The shape that stands over the colours of a square of lengths, where their word would. */
  static Optional<String> shapeInCorner(List<ColumnHeader> headers, ColumnGuess guess) {
    return guess.across().containsValue(Field.LENGTH)
        ? Optional.ofNullable(guess.columns().get(Field.COLOUR))
            .map(column -> headers.get(column).text())
            .filter(Square::isShape)
        : Optional.empty();
  }

  /**
   * The row with the unit written behind each of its lengths, if it names two lengths or more; bare
   * numbers are lengths where they stand beside nothing but headers.
   */
  static Optional<Row> withUnits(Row row) {
    return withUnits(row, Optional.empty());
  }

  /** The same, where a word above the lengths may tell their unit. */
  static Optional<Row> withUnits(Row row, Optional<Lengths.Unit> told) {
    if (row.cells().size() > WIDEST) {
      return Optional.empty();
    }
    List<BigDecimal> bare = new ArrayList<>();
    for (Cell cell : row.cells()) {
      if (isBareLength(cell)) {
        RowReader.writtenLength(cell).ifPresent(length -> bare.add(length.number()));
      }
    }
    if (bare.isEmpty()) {
      return mayBe(row) ? Optional.of(row) : Optional.empty();
    }
    Lengths.Bare unit = Lengths.decide(bare);
    boolean headers = row.cells().stream().allMatch(c -> isBareLength(c) || isUsual(c));
    boolean tells = told.isPresent() || unit != Lengths.Bare.CANNOT_TELL;
    if (bare.size() < 2 || !headers || !tells) {
      return Optional.empty();
    }
    List<Cell> cells = new ArrayList<>();
    for (Cell cell : row.cells()) {
      Optional<Lengths.Written> length =
          RowReader.writtenLength(cell).filter(l -> isBareLength(cell));
      cells.add(
          length
              .map(l -> withUnit(cell, told.orElseGet(() -> Lengths.unit(unit, l.number()))))
              .orElse(cell));
    }
    return Optional.of(new Row(row.number(), cells, row.hidden()));
  }

  private static Cell withUnit(Cell cell, Lengths.Unit unit) {
    return Cell.text(cell.shown().strip() + " " + unit.word());
  }

  private static boolean isUsual(Cell cell) {
    String header = ColumnHeader.of(cell).folded();
    return header.isEmpty()
        || isShape(cell.shown())
        || isLengthWithUnit(cell)
        || isTotal(header)
        || isColumn(header);
  }

  /** Whether a header is a word for a field of the box. */
  private static boolean isColumn(String header) {
    for (Field field : Field.values()) {
      if (field.isIn(ListKind.BOX) && HeaderWords.isUsual(header, field, ListKind.BOX)) {
        return true;
      }
    }
    return false;
  }

  static boolean isLengthWithUnit(Cell cell) {
    return RowReader.writtenLength(cell).filter(l -> l.unit().isPresent()).isPresent();
  }

  private static boolean isBareLength(Cell cell) {
    return RowReader.writtenLength(cell)
        .filter(l -> l.unit().isEmpty() && l.number().signum() > 0)
        .filter(l -> l.number().compareTo(BigDecimal.valueOf(Plastic.LONGEST_MM)) <= 0)
        .isPresent();
  }

  Optional<ColumnGuess> guess() {
    boolean other = wanted.isPresent() && wanted.get() != ListKind.BOX;
    if (other || row.cells().size() > WIDEST || headsWords()) {
      return Optional.empty();
    }
    Map<Integer, Field> across = lengthsAcross();
    if (across.isEmpty()) {
      across = bodiesAcross();
    }
    if (across.isEmpty()) {
      across = coloursAcross();
    }
    if (across.isEmpty()) {
      return Optional.empty();
    }
    across = withUnknown(across);
    ColumnGuess words = ColumnGuess.of(words(across), ListKind.BOX, Map.of());
    boolean colours = across.containsValue(Field.COLOUR);
    Map<Field, Integer> columns = new HashMap<>(words.columns());
    Map<Integer, String> why = new HashMap<>(words.why());
    List.of(
            Field.PIECES,
            Field.PACKS,
            Field.LOOSE,
            Field.HAD,
            Field.BOUGHT_SINCE,
            Field.LOST_SO_FAR,
            Field.GIVEN_AWAY)
        .forEach(columns::remove);
    if (across.containsValue(Field.LENGTH)) {
      columns.remove(Field.LENGTH);
    }
    why.keySet().retainAll(columns.values());
    int first = across.keySet().stream().mapToInt(i -> i).min().orElse(0);
    if (!colours && !columns.containsKey(Field.COLOUR)) {
      // The corner over the colours is often blank, or tells both ways: "colour / length".
      boolean body = columns.getOrDefault(Field.BODY, -1) == first - 1;
      if (first == 0 || body) {
        return Optional.empty();
      }
      columns.put(Field.COLOUR, first - 1);
      why.put(first - 1, "beside the square of counts");
    }
    for (int column : across.keySet()) {
      why.put(column, "counts under \"" + row.cell(column).shown().strip() + "\"");
    }
    return Optional.of(
        new ColumnGuess(ListKind.BOX, columns, across, why, 2 * (columns.size() + across.size())));
  }

  /** Whether headers stand below one another at its left: the list lies on its side. */
  private boolean headsWords() {
    int first = Pairs.filled(row).stream().findFirst().orElse(0);
    List<Cell> below = Pairs.isWord(row.cell(first).shown()) ? under.filled(first) : List.of();
    // Gold and clear are colours as well.
    long words =
        below.stream()
            .map(Cell::shown)
            .filter(word -> Pairs.isWord(word) && Anatomy.colourWords(word) == 0)
            .count();
    return words * 2 > below.size();
  }

  /** A column of counts under a word nobody knows belongs to the square it stands in or beside. */
  private Map<Integer, Field> withUnknown(Map<Integer, Field> across) {
    Map<Integer, Field> all = new HashMap<>(across);
    Field field = across.values().iterator().next();
    int first = across.keySet().stream().mapToInt(i -> i).min().orElse(0);
    int last = across.keySet().stream().mapToInt(i -> i).max().orElse(0);
    for (int column = first + 1; column < row.cells().size(); column++) {
      boolean goesOn = column < last || all.containsKey(column - 1);
      if (!all.containsKey(column) && goesOn && isUnknown(column) && under.counts(column)) {
        all.put(column, field);
      }
    }
    // One that stands right before the first goes on to the left.
    for (int column = first - 1; column > 0; column--) {
      if (all.containsKey(column + 1) && isUnknown(column) && under.counts(column)) {
        all.put(column, field);
      }
    }
    return all;
  }

  /** Whether a header is a word for no field of the box, and for nothing that is passed over. */
  private boolean isUnknown(int column) {
    String header = ColumnHeader.of(row.cell(column)).folded();
    return row.cell(column) instanceof Cell.Text
        && header.matches(".*\\p{L}.*")
        && !isTotal(header)
        && !HeaderWords.isPassedOver(header)
        && ColumnGuess.of(List.of(ColumnHeader.of(header)), ListKind.BOX, Map.of())
            .columns()
            .isEmpty();
  }

  /** The headers with those of the square itself left blank. */
  private List<ColumnHeader> words(Map<Integer, Field> across) {
    List<ColumnHeader> headers = new ArrayList<>();
    for (int column = 0; column < row.cells().size(); column++) {
      String text = row.cell(column).shown();
      boolean corner = across.containsKey(column + 1) && isShapeOverColours(column);
      headers.add(ColumnHeader.of(corner || across.containsKey(column) ? "" : text));
    }
    return headers;
  }

  /** Whether a shape heads the first column, which names no other shapes. */
  private boolean isShapeOverColours(int column) {
    return column == 0
        && isShape(row.cell(0).shown())
        && under.filled(0).stream().filter(cell -> isShape(cell.shown())).count() * 2
            < under.filled(0).size();
  }

  private Map<Integer, Field> lengthsAcross() {
    Map<Integer, Field> withUnit = new HashMap<>();
    Map<Integer, Field> bare = new HashMap<>();
    List<BigDecimal> numbers = new ArrayList<>();
    boolean named = false;
    boolean others = false;
    for (int column = 0; column < row.cells().size(); column++) {
      Cell cell = row.cell(column);
      if (isLengthWithUnit(cell) && under.lengths(column)) {
        // A row of a list: over counts a length heads them, over lengths it is one of them.
        return Map.of();
      } else if (isLengthWithUnit(cell)) {
        withUnit.put(column, Field.LENGTH);
      } else if (isBareLength(cell)) {
        bare.put(column, Field.LENGTH);
        RowReader.writtenLength(cell).ifPresent(l -> numbers.add(l.number()));
      } else {
        String header = ColumnHeader.of(cell).folded();
        named |= header.matches("(?:.* )?(?:colours?|colors?|shades?)(?: .*)?");
        others |= !header.isEmpty() && !isTotal(header) && !isShapeOverColours(column);
      }
    }
    if (withUnit.size() >= 2) {
      withUnit.putAll(bare);
      return withUnit;
    }
    boolean rising =
        numbers.size() >= 2 && numbers.equals(numbers.stream().sorted().distinct().toList());
    boolean corner = (row.cell(0).isBlank() || isShapeOverColours(0)) && !others;
    return (named || corner)
            && rising
            && withUnit.isEmpty()
            && Lengths.decide(numbers) != Lengths.Bare.CANNOT_TELL
        ? bare
        : Map.of();
  }

  /** Shapes across: every header but the first, and but totals, is of shape words. */
  private Map<Integer, Field> bodiesAcross() {
    Map<Integer, Field> across = new HashMap<>();
    boolean colour =
        ColumnHeader.of(row.cell(0)).folded().matches("(?:colours?|colors?|shades?)(?: .*)?|");
    for (int column = 1; column < row.cells().size() && colour; column++) {
      String text = row.cell(column).shown();
      if (row.cell(column) instanceof Cell.Text && isShape(text)) {
        across.put(column, Field.BODY);
      } else if (!text.isBlank()
          && !isTotal(WordList.fold(text))
          && !(isUnknown(column) && under.counts(column))) {
        return Map.of();
      }
    }
    return across.size() >= 2 ? across : Map.of();
  }

  /** Whether a folded header stands over sums or remarks beside a square. */
  static boolean isTotal(String header) {
    return header.matches(
        "(?:row |line )?totals?|total row|tot|sums?|all|in all|all told|altogether|overall|notes?");
  }

  /** Colours across: a column of shapes, and two headers or more that are all colour words. */
  private Map<Integer, Field> coloursAcross() {
    Map<Integer, Field> across = new HashMap<>();
    boolean shapes = false;
    for (int column = 0; column < row.cells().size(); column++) {
      String header = ColumnHeader.of(row.cell(column)).folded();
      if (row.cell(column) instanceof Cell.Text && isColour(row.cell(column))) {
        across.put(column, Field.COLOUR);
      } else if (HeaderWords.isUsual(header, Field.COLOUR, ListKind.BOX)) {
        return Map.of();
      } else {
        shapes |= HeaderWords.isUsual(header, Field.BODY, ListKind.BOX);
      }
    }
    return shapes && across.size() >= 2 ? across : Map.of();
  }

  private static boolean isColour(Cell cell) {
    String header =
        Anatomy.lengthWithin(cell.shown())
            .map(parts -> WordList.fold(parts.body()))
            .orElseGet(() -> ColumnHeader.of(cell).folded());
    long words = header.split(" ", -1).length;
    return !isColumn(header) && Anatomy.colourWords(header) == words;
  }

  private static final Set<Field> PACK =
      Set.of(Field.MAKER, Field.BODY, Field.COLOUR, Field.LENGTH, Field.PACK_SIZE);

  /**
   * The columns of a list of prices with a shop over each of its last columns.
   *
   * @param below the first row under the header
   */
  static Optional<ColumnGuess> shopsAcross(List<ColumnHeader> headers, Row below) {
    ColumnGuess all = ColumnGuess.of(headers, ListKind.PRICES, Map.of());
    // A shop's name may hold a word of another column, as Post does.
    Map<Field, Integer> packs = new HashMap<>(all.columns());
    packs.keySet().retainAll(PACK);
    ColumnGuess words = new ColumnGuess(ListKind.PRICES, packs, Map.of(), all.why(), all.score());
    boolean lure = words.has(Field.BODY) || words.has(Field.COLOUR);
    boolean priced = all.has(Field.PACK_PRICE) || all.has(Field.SHOP);
    if (!lure || priced || !words.has(Field.PACK_SIZE)) {
      return Optional.empty();
    }
    Map<Integer, Field> across = new HashMap<>();
    Map<Integer, String> why = new HashMap<>(words.why());
    int first = words.columns().values().stream().mapToInt(i -> i).max().orElse(0) + 1;
    for (int column = first; column < headers.size(); column++) {
      boolean named = headers.get(column).folded().matches(".*\\p{L}.*");
      boolean sum = below.cell(column).isBlank() || isSum(below.cell(column));
      if (!named || !sum) {
        return Optional.empty();
      }
      across.put(column, Field.SHOP);
      why.put(column, "prices of \"" + headers.get(column).text() + "\"");
    }
    return across.size() < 2
        ? Optional.empty()
        : Optional.of(
            new ColumnGuess(
                ListKind.PRICES,
                words.columns(),
                across,
                why,
                2 * (words.columns().size() + across.size())));
  }

  /** Whether a cell says in place of a price that a shop does not have it. */
  static boolean isNotSold(Cell cell) {
    return cell instanceof Cell.Text text
        && !text.text().matches(".*\\d.*")
        && Words.yesNo(text.text()).value().filter(sold -> !sold).isPresent();
  }

  private static boolean isSum(Cell cell) {
    return cell instanceof Cell.Numeric
        || (cell instanceof Cell.Text text
            && (isNotSold(cell) || text.text().matches(".*\\d[.,]\\d{1,2}\\D*|\\D?\\d{1,3}\\D?")));
  }

  private static boolean isShape(String text) {
    String bare =
        Anatomy.lengthWithin(text)
            .or(() -> Anatomy.bareLengthWithin(text))
            .map(Anatomy::body)
            .orElse(text);
    long words = WordList.fold(bare).split(" ", -1).length;
    return Anatomy.bodyWords(bare) == words
        && !WordList.fold(bare).matches("body|tail|lure|type|shape");
  }
}
