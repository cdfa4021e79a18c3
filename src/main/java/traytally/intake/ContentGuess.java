package traytally.intake;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.regex.Pattern;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * What the columns of a list of the box or of prices without headers are, told by what they hold.
 */
final class ContentGuess {
  /** Fewer rows are no list that speaks for itself (an assumption). */
  private static final int FEWEST_ROWS = 3;

  /** As many rows tell what columns are (an assumption). */
  private static final int LOOKED_AT = 2_000;

  /** The share of a column's cells that must be of one kind (an assumption). */
  private static final double MOST = 0.8;

  /** The share of rows whose words must be known for a list that says nothing of itself. */
  private static final double ENOUGH = 0.4;

  /** No count in a home tray is this large and no length in mm this small (an assumption). */
  private static final int SMALLEST_MM = 25;

  private static final Pattern PRICE =
      Pattern.compile("[€£$]\\s*\\d+(?:[.,]\\d{1,2})?|\\d+(?:[.,]\\d{1,2})?\\s*[€£$]|\\d{1,3}p");

  private static final Pattern PACK =
      Pattern.compile(
          "(?i)(?:an? )?(?:packs?|packets?|bags?|pkts?|pks?) of \\d+|\\d+ ?(?:per|in an?|to an?|/) ?(?:pack|packet|bag|pkt|pk)|\\d+ ?(?:pk|pack)");

  private final List<Row> rows;
  private final Optional<ListKind> wanted;
  private final Map<Field, Integer> columns = new HashMap<>();
  private final Map<Integer, String> why = new HashMap<>();

  /** The guess, and the number of columns it speaks of. */
  record Guess(ColumnGuess columns, int width) {}

  ContentGuess(List<Row> rows, Optional<ListKind> wanted) {
    this.rows =
        rows.stream()
            .filter(r -> r.cells().stream().anyMatch(c -> !c.isBlank()))
            .limit(LOOKED_AT)
            .toList();
    this.wanted = wanted;
  }

  Optional<Guess> guess() {
    boolean other = wanted.filter(w -> w != ListKind.BOX && w != ListKind.PRICES).isPresent();
    if (other || rows.size() < FEWEST_ROWS) {
      return Optional.empty();
    }
    int width = rows.stream().mapToInt(r -> r.cells().size()).max().orElse(0);
    if (width > HeaderSearch.MOST_COLUMNS) {
      return Optional.empty();
    }
    List<Integer> texts = new ArrayList<>();
    List<Integer> numbers = new ArrayList<>();
    for (int column = 0; column < width; column++) {
      sort(column, texts, numbers);
    }
    ListKind kind = prices(numbers, texts) ? ListKind.PRICES : ListKind.BOX;
    if (wanted.filter(w -> w != kind).isPresent()) {
      return Optional.empty();
    }
    if (kind == ListKind.BOX) {
      numbers(numbers);
    }
    texts(texts);
    boolean lure = columns.containsKey(Field.BODY) || columns.containsKey(Field.COLOUR);
    boolean counts = columns.containsKey(Field.PIECES) || columns.containsKey(Field.PACK_PRICE);
    if (!lure || !(counts || oneBreath(texts))) {
      return Optional.empty();
    }
    if (wanted.isEmpty() && !speaksOfLures()) {
      return Optional.empty();
    }
    return Optional.of(new Guess(new ColumnGuess(kind, columns, Map.of(), why, 1), width));
  }

  /** Whether words of shape and words of colour stand in enough of the rows. */
  private boolean speaksOfLures() {
    boolean headed = !columns.containsKey(Field.BODY) && columns.containsKey(Field.COLOUR);
    long shapes = headed ? rows.size() : 0;
    long colours = 0;
    for (Row row : rows) {
      StringBuilder words = new StringBuilder();
      row.cells().forEach(cell -> words.append(cell.shown()).append(' '));
      shapes += Anatomy.bodyWords(words.toString()) > 0 ? 1 : 0;
      colours += Anatomy.colourWords(words.toString()) > 0 ? 1 : 0;
    }
    boolean shaped = shapes >= ENOUGH * rows.size();
    boolean coloured = colours >= ENOUGH * rows.size();
    // Words, lengths with their units and counts speak for one another.
    boolean full =
        List.of(Field.BODY, Field.COLOUR, Field.LENGTH, Field.PIECES).stream()
            .allMatch(columns::containsKey);
    return full ? shaped || coloured : shaped && coloured;
  }

  private List<Cell> filled(int column) {
    // Headings and remarks stand alone in their rows and say nothing of the columns.
    boolean single = rows.stream().allMatch(r -> r.cells().size() <= 1);
    return rows.stream()
        .filter(r -> single || r.cells().stream().filter(c -> !c.isBlank()).count() > 1)
        .map(r -> r.cell(column))
        .filter(c -> !c.isBlank())
        .toList();
  }

  private void sort(int column, List<Integer> texts, List<Integer> numbers) {
    List<Cell> cells = filled(column);
    long lengths =
        cells.stream()
            .filter(c -> RowReader.writtenLength(c).filter(l -> l.unit().isPresent()).isPresent())
            .count();
    long counts = cells.stream().filter(ContentGuess::isCount).count();
    if (cells.size() < rows.size() / 2) {
      return;
    }
    if (lengths >= MOST * cells.size() && !columns.containsKey(Field.LENGTH)) {
      columns.put(Field.LENGTH, column);
      why.put(column, "holds lengths");
    } else if (counts >= MOST * cells.size()) {
      numbers.add(column);
    } else {
      texts.add(column);
    }
  }

  /** Whether a column holds prices, beside one that tells what a pack holds. */
  private boolean prices(List<Integer> numbers, List<Integer> texts) {
    List<Integer> all = new ArrayList<>(texts);
    all.addAll(numbers);
    Optional<Integer> price = all.stream().filter(c -> mostly(c, PRICE)).findFirst();
    Optional<Integer> size = all.stream().filter(c -> mostly(c, PACK)).findFirst();
    if (price.isEmpty() || size.isEmpty() || columns.containsKey(Field.PIECES)) {
      return false;
    }
    columns.put(Field.PACK_PRICE, price.get());
    why.put(price.get(), "holds prices");
    columns.put(Field.PACK_SIZE, size.get());
    why.put(size.get(), "holds packs and their pieces");
    for (List<Integer> sorted : List.of(numbers, texts)) {
      sorted.remove(price.get());
      sorted.remove(size.get());
    }
    return true;
  }

  private boolean mostly(int column, Pattern pattern) {
    List<Cell> cells = filled(column);
    long fitting = cells.stream().filter(c -> pattern.matcher(c.shown().strip()).matches()).count();
    return fitting > 0 && fitting >= MOST * cells.size();
  }

  private static boolean isCount(Cell cell) {
    return cell instanceof Cell.Numeric
        || (cell instanceof Cell.Text text
            && Quantities.parse(text.text(), OptionalInt.of(1)).value().isPresent());
  }

  private void numbers(List<Integer> numbers) {
    List<Integer> left = new ArrayList<>(numbers);
    if (left.size() == 2 && !columns.containsKey(Field.LENGTH)) {
      boolean first = areMm(left.get(0));
      boolean second = areMm(left.get(1));
      if (first == second) {
        return;
      }
      int length = left.remove(first ? 0 : 1);
      columns.put(Field.LENGTH, length);
      why.put(length, "holds numbers that can only be lengths");
    }
    if (left.size() == 1) {
      columns.put(Field.PIECES, left.get(0));
      why.put(left.get(0), "holds counts");
    }
  }

  private boolean areMm(int column) {
    return filled(column).stream()
        .allMatch(
            c ->
                RowReader.writtenLength(c)
                    .filter(l -> l.number().compareTo(BigDecimal.valueOf(SMALLEST_MM)) >= 0)
                    .isPresent());
  }

  private void texts(List<Integer> texts) {
    if (texts.size() == 1 && standUnderShapes(texts.get(0))) {
      columns.put(Field.COLOUR, texts.get(0));
      why.put(texts.get(0), "holds colours, under headings");
      return;
    }
    if (texts.size() == 1) {
      columns.put(Field.BODY, texts.get(0));
      why.put(texts.get(0), "holds words");
      return;
    }
    if (texts.size() < 2) {
      return;
    }
    if (texts.size() > 2 && columns.containsKey(Field.PACK_PRICE)) {
      shop(texts);
    }
    int first = texts.get(0);
    int second = texts.get(1);
    double lean = shapes(first) - shapes(second);
    // Without a word that tells, a body style repeats over its colours.
    boolean firstRepeats = distinct(first) <= distinct(second);
    boolean firstIsBody = lean > 0 || (lean == 0 && firstRepeats);
    columns.put(Field.BODY, firstIsBody ? first : second);
    columns.put(Field.COLOUR, firstIsBody ? second : first);
    why.put(firstIsBody ? first : second, "holds shapes");
    why.put(firstIsBody ? second : first, "holds colours");
    if (texts.size() > 2) {
      columns.put(Field.NOTE, texts.get(2));
      why.put(texts.get(2), "holds other words");
    }
  }

  /** Takes the column that names neither shapes nor colours, and the same shops again and again. */
  private void shop(List<Integer> texts) {
    texts.stream()
        .filter(column -> shapes(column) == 0)
        .min(Comparator.comparingInt(this::distinct))
        .ifPresent(
            column -> {
              columns.put(Field.SHOP, column);
              why.put(column, "holds names of shops");
              texts.remove(column);
            });
  }

  /** Whether a column of colours stands under headings, the first of them over all. */
  private boolean standUnderShapes(int column) {
    boolean several = rows.stream().anyMatch(row -> row.cells().size() > 1);
    return several && isHeading(rows.get(0)) && shapes(column) < 0;
  }

  private static boolean isHeading(Row row) {
    List<Cell> filled = row.filled();
    return filled.size() == 1 && Anatomy.bodyWords(filled.get(0).shown()) > 0;
  }

  /** Words of shape less words of colour, a cell. */
  private double shapes(int column) {
    return filled(column).stream()
        .mapToLong(c -> Long.signum(Anatomy.bodyWords(c.shown()) - Anatomy.colourWords(c.shown())))
        .average()
        .orElse(0);
  }

  private int distinct(int column) {
    TreeSet<String> seen = new TreeSet<>();
    filled(column).forEach(c -> seen.add(WordList.fold(c.shown())));
    return seen.size();
  }

  /** Whether the one column of words tells whole plastics with their counts. */
  private boolean oneBreath(List<Integer> texts) {
    if (texts.size() != 1) {
      return false;
    }
    List<Cell> cells = filled(texts.get(0));
    long whole =
        cells.stream()
            .map(c -> Anatomy.of(c.shown()))
            .filter(a -> a.isWhole() && !a.quantity().isEmpty())
            .count();
    return whole >= FEWEST_ROWS && whole >= MOST * cells.size();
  }
}
