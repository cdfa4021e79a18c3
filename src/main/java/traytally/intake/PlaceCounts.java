package traytally.intake;

import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * Counts that stand apart by the place the pieces lie in: {@code Tray 1}, {@code Tray 2}, {@code
 * Garage}. A column headed Tray alone names a tray; several with numbers, or one that also says
 * Stock or Qty, count.
 */
final class PlaceCounts {
  private static final WordList WORDS = WordList.read("words.txt");
  private static final Set<String> PLACES = Set.copyOf(WORDS.words("place.word"));
  private static final Set<String> COUNTS = Set.copyOf(WORDS.words("place.count"));
  private static final Set<String> BESIDE_PACKS = Set.copyOf(WORDS.words("place.beside packs"));

  private final List<ColumnHeader> headers;
  private final Under under;
  private final Set<String> settled;

  /**
   * The columns under {@code headers}.
   *
   * @param settled the folded headers that the person spoke of
   */
  PlaceCounts(List<ColumnHeader> headers, Under under, Set<String> settled) {
    this.headers = headers;
    this.under = under;
    this.settled = settled;
  }

  /** The same guess, with its counts by place if it has any. */
  ColumnGuess in(ColumnGuess guess) {
    Set<Integer> everywhere = guess.has(Field.PACKS) ? Set.of() : placesOfAll(guess);
    if (!everywhere.isEmpty() && !guess.tallies()) {
      return total(guess, everywhere)
          .map(column -> counting(without(guess, everywhere), column))
          .orElseGet(() -> sum(guess, everywhere, Field.PIECES));
    }
    Set<Integer> places = new HashSet<>();
    Set<Integer> sure = new HashSet<>();
    for (int column = 0; column < headers.size(); column++) {
      if (isPlace(column) && mayCount(guess, column)) {
        places.add(column);
        if (words(column).stream().anyMatch(COUNTS::contains) || isNumbered(column)) {
          sure.add(column);
        }
      }
    }
    boolean packs = guess.has(Field.PACKS);
    int pieces = guess.columns().getOrDefault(Field.PIECES, -1);
    boolean total = pieces >= 0 && !isPlace(pieces);
    boolean other = packs || total || guess.tallies();
    Set<Integer> counted = other || places.size() < 2 ? sure : places;
    if (counted.isEmpty() || (!packs && counted.equals(Set.of(pieces)))) {
      return besidePacks(guess);
    }
    return total
        ? without(guess, counted)
        : sum(guess, counted, packs ? Field.LOOSE : Field.PIECES);
  }

  /**
   * Counts of several places, one of which alone would be all there is: {@code In the boat}, {@code
   * At home}.
   */
  private Set<Integer> placesOfAll(ColumnGuess guess) {
    Set<Integer> places = new HashSet<>();
    Set<String> named = new HashSet<>();
    boolean all = false;
    for (int column = 0; column < headers.size(); column++) {
      List<String> words = words(column).stream().filter(PLACES::contains).toList();
      if (!words.isEmpty() && mayLie(guess, column)) {
        places.add(column);
        all |= HeaderWords.isUsual(headers.get(column).folded(), Field.PIECES, ListKind.BOX);
        if (!named.add(String.join(" ", words))) {
          // What was in the box, and is now.
          return Set.of();
        }
      }
    }
    return all && places.size() > 1 ? places : Set.of();
  }

  /** Whether what lies in a place is counted; what is in a bag may be so where no packs are. */
  private boolean mayLie(ColumnGuess guess, int column) {
    if (InStock.isOtherTackle(headers.get(column).folded())) {
      return false;
    }
    boolean bag =
        guess.columns().getOrDefault(Field.PACK_SIZE, -1) == column
            && words(column).get(0).equals("in")
            && under.counts(column);
    return bag || mayCount(guess, column);
  }

  /** The column of what lies in all {@code places} together, if there is one. */
  private Optional<Integer> total(ColumnGuess guess, Set<Integer> places) {
    return IntStream.range(0, headers.size())
        .filter(column -> !places.contains(column))
        .filter(
            column -> HeaderWords.isUsual(headers.get(column).folded(), Field.PIECES, ListKind.BOX))
        .filter(column -> mayCount(guess, column))
        .boxed()
        .findFirst();
  }

  /** Whether a word of {@code text} is of a place that pieces lie in. */
  static boolean namesPlace(String text) {
    return Stream.of(WordList.fold(text).split(" ", -1)).anyMatch(PLACES::contains);
  }

  /** Whether its header speaks of a place, and is not a plain word for all the pieces. */
  private boolean isPlace(int column) {
    return words(column).stream().anyMatch(PLACES::contains)
        && !HeaderWords.isUsual(headers.get(column).folded(), Field.PIECES, ListKind.BOX);
  }

  private List<String> words(int column) {
    return Arrays.asList(headers.get(column).folded().split(" ", -1));
  }

  /** Whether a column may be a count: no field that is surely another, and numbers in it. */
  private boolean mayCount(ColumnGuess guess, int column) {
    if (settled.contains(headers.get(column).folded())) {
      return false;
    }
    for (Map.Entry<Field, Integer> entry : guess.columns().entrySet()) {
      boolean open = Set.of(Field.TRAY, Field.LOOSE, Field.PIECES).contains(entry.getKey());
      if (entry.getValue() == column && !open) {
        return false;
      }
    }
    return under.counts(column);
  }

  /** Whether it is one of several of a name: Tray 1 and Tray 2, Box A and Box B. */
  private boolean isNumbered(int column) {
    String header = headers.get(column).folded();
    String stem = header.replaceFirst(" (?:\\d+|[a-z])$", "");
    return !stem.equals(header)
        && headers.stream()
            .map(ColumnHeader::folded)
            .anyMatch(
                h -> !h.equals(header) && h.replaceFirst(" (?:\\d+|[a-z])$", "").equals(stem));
  }

  /** The guess whose trays are only parts of a total. */
  private static ColumnGuess without(ColumnGuess guess, Set<Integer> counted) {
    Map<Field, Integer> columns = new HashMap<>(guess.columns());
    Map<Integer, String> why = new HashMap<>(guess.why());
    columns.values().removeIf(counted::contains);
    counted.forEach(column -> why.put(column, "passed over: a part of the pieces"));
    return new ColumnGuess(guess.kind(), columns, guess.across(), why, guess.score());
  }

  private static ColumnGuess counting(ColumnGuess guess, int total) {
    return guess.columns().getOrDefault(Field.PIECES, -1) == total
        ? guess
        : guess.taking(Field.PIECES, total, "a usual word for it");
  }

  private static ColumnGuess sum(ColumnGuess guess, Set<Integer> counted, Field field) {
    Map<Field, Integer> columns = new HashMap<>(guess.columns());
    Map<Integer, String> why = new HashMap<>(guess.why());
    Map<Integer, Field> across = new HashMap<>();
    columns.values().removeIf(counted::contains);
    Integer loose = columns.remove(field);
    if (loose != null) {
      across.put(loose, field);
    }
    counted.forEach(column -> across.put(column, field));
    if (across.size() == 1) {
      int column = across.keySet().iterator().next();
      columns.put(field, column);
      why.put(column, "counts of one place");
      return new ColumnGuess(guess.kind(), columns, guess.across(), why, guess.score() + 1);
    }
    across.keySet().forEach(column -> why.put(column, "one of several counts, added up"));
    return new ColumnGuess(guess.kind(), columns, across, why, guess.score() + across.size());
  }

  /** Pieces in use beside packs are loose ones. */
  private ColumnGuess besidePacks(ColumnGuess guess) {
    for (int column = 0; column < headers.size(); column++) {
      boolean free = !guess.columns().containsValue(column);
      if (guess.has(Field.PACKS)
          && !guess.has(Field.LOOSE)
          && !guess.has(Field.PIECES)
          && free
          && BESIDE_PACKS.contains(headers.get(column).folded())
          && mayCount(guess, column)) {
        return guess.taking(Field.LOOSE, column, "pieces beside packs");
      }
    }
    return guess;
  }

  /** Whether a guess adds up counts of several columns. */
  static boolean areIn(ColumnGuess guess) {
    return guess.across().containsValue(Field.PIECES) || guess.across().containsValue(Field.LOOSE);
  }

  /** Puts the counts of one row together in {@code list}: {@code 4 + 2 + 10}. */
  static void addUp(Table table, Row row, ListRow list) {
    StringBuilder sum = new StringBuilder();
    int first = -1;
    Field field = table.guess().across().values().iterator().next();
    for (int column : new TreeMap<>(table.guess().across()).keySet()) {
      Cell cell = row.cell(column);
      if (cell instanceof Cell.ErrorValue
          || cell instanceof Cell.DateTime
          || cell instanceof Cell.Time) {
        // The whole row is in doubt, whatever stands beside it.
        list.put(field, cell, column);
        return;
      }
      if (!cell.isBlank()) {
        first = first < 0 ? column : first;
        sum.append(sum.length() == 0 ? "" : " + ")
            .append(Quantities.isNone(cell.shown()) ? "0" : cell.shown().strip());
      }
    }
    table.assume("Pieces are the sum of the columns " + named(table) + ".");
    if (first >= 0) {
      list.put(field, Cell.text(sum.toString()), first);
    }
  }

  private static String named(Table table) {
    List<String> names =
        table.guess().across().keySet().stream()
            .sorted()
            .map(column -> "\"" + table.headers().get(column).text() + "\"")
            .toList();
    int last = names.size() - 1;
    return last == 0
        ? names.get(0)
        : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
  }
}
