package traytally.intake;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import traytally.sheet.Cell;

/**
 * What headers say, looked at again in the light of what stands below them: a "count" that says yes
 * and no, an "item" that numbers the rows, a "where" that lists drawers.
 */
final class SecondLook {
  /** Two counts may be one and two (an assumption). */
  private static final int FEWEST_NUMBERED = 4;

  /** A time of day without its colon has three digits or four. */
  private static final int TIME = 3;

  private final List<ColumnHeader> headers;
  private final Under under;
  private final Optional<ListKind> wanted;
  private final Map<String, Optional<Field>> given;

  /**
   * A look at the columns under {@code headers}.
   *
   * @param wanted the kind of list the person said it is
   * @param given what the person said of some headers, folded
   */
  SecondLook(
      List<ColumnHeader> headers,
      Under under,
      Optional<ListKind> wanted,
      Map<String, Optional<Field>> given) {
    this.headers = headers;
    this.under = under;
    this.wanted = wanted;
    this.given = given;
  }

  /** The same guess, or a better one. */
  ColumnGuess at(ColumnGuess guess) {
    Map<String, Optional<Field>> without = new HashMap<>(given);
    int pieces = column(guess, Field.PIECES);
    boolean sums = pieces >= 0 && under.money(pieces) && mustBeBox(guess);
    if (pieces >= 0
        && (sums || under.answers(pieces) || numbersRows(pieces) || under.dates(pieces))) {
      passOver(pieces, without);
    }
    if (listsPlaces(guess)) {
      return ColumnGuess.best(headers, Optional.of(ListKind.BOX), without).orElse(guess);
    }
    int how = column(guess, Field.LOST_HOW);
    if (!guess.has(Field.LOST) && holdsNumbers(how)) {
      return guess.moving(Field.LOST_HOW, Field.LOST, "counts under a word for losses");
    }
    int water = column(guess, Field.WATER);
    if (holdsNumbers(water) && !isPlaceNumber(headers.get(water))) {
      passOver(water, without);
    }
    if (guess.kind() == ListKind.BOX && wanted.isEmpty() && pieces >= 0 && under.money(pieces)) {
      // A price under Now, beside what it was.
      without.put(headers.get(pieces).folded(), Optional.of(Field.PACK_PRICE));
      return ColumnGuess.best(headers, Optional.of(ListKind.PRICES), without).orElse(guess);
    }
    int in = column(guess, Field.START);
    int out = column(guess, Field.END);
    if (guess.kind() == ListKind.TRIPS && isCounted(in) && isCounted(out)) {
      // Pieces that came in and went out, and no times.
      passOver(in, without);
      passOver(out, without);
      return ColumnGuess.best(headers, wanted, without).orElse(guess);
    }
    int body = column(guess, Field.BODY);
    if (holdsNumbers(body)) {
      passOver(body, without);
    }
    return countedAgain(
        without.size() == given.size()
            ? guess
            : ColumnGuess.best(headers, Optional.of(guess.kind()), without).orElse(guess));
  }

  /** The same guess with the count that was made again to the right of the first one. */
  private ColumnGuess countedAgain(ColumnGuess guess) {
    int pieces = column(guess, Field.PIECES);
    return guess.kind() != ListKind.BOX || pieces < 0
        ? guess
        : IntStream.range(pieces + 1, headers.size())
            .filter(column -> guess.leaves(column) && isFree(column))
            .filter(column -> CountsOverTime.isRecount(headers.get(column).folded()))
            .filter(column -> !under.filled(column).isEmpty() && under.counts(column))
            .mapToObj(column -> guess.taking(Field.PIECES, column, "counted again"))
            .findFirst()
            .orElse(guess);
  }

  private boolean isFree(int column) {
    return !given.containsKey(headers.get(column).folded());
  }

  /** Whether a list counts the box, whatever it tells of money. */
  private boolean mustBeBox(ColumnGuess guess) {
    return wanted.filter(kind -> kind == ListKind.BOX).isPresent()
        || (guess.kind() == ListKind.BOX && guess.has(Field.PACKS));
  }

  private static int column(ColumnGuess guess, Field field) {
    return guess.columns().getOrDefault(field, -1);
  }

  /** Leaves a column out, unless the person spoke of it. */
  private void passOver(int column, Map<String, Optional<Field>> without) {
    without.putIfAbsent(headers.get(column).folded(), Optional.empty());
  }

  private boolean holdsNumbers(int column) {
    return column >= 0 && !under.filled(column).isEmpty() && under.numbers(column);
  }

  /** Whether prices are told of what lies in places, and not of what shops sell. */
  private boolean listsPlaces(ColumnGuess guess) {
    int shop = column(guess, Field.SHOP);
    if (guess.kind() != ListKind.PRICES
        || wanted.isPresent()
        || shop < 0
        || !headers.get(shop).folded().matches("where|place")) {
      return false;
    }
    List<Cell> cells = under.filled(shop);
    long places = cells.stream().filter(cell -> PlaceCounts.namesPlace(cell.shown())).count();
    return places * 2 > cells.size();
  }

  /** Whether a column numbers the rows: one, two, three and so on. */
  private boolean numbersRows(int column) {
    List<Cell> cells = under.filled(column);
    for (int i = 0; i < cells.size(); i++) {
      if (Numbers.parse(Numbers.plain(cells.get(i).shown()))
          .filter(BigDecimal.valueOf(i + 1L)::equals)
          .isEmpty()) {
        return false;
      }
    }
    return cells.size() >= FEWEST_NUMBERED;
  }

  /** Whether waters may have numbers under such a header. */
  private static boolean isPlaceNumber(ColumnHeader header) {
    return header
        .folded()
        .matches("(?:.* )?(?:peg|swim|mark|spot|zone|sector|section|beat|station)(?: .*)?");
  }

  private boolean isCounted(int column) {
    return holdsNumbers(column)
        && under.filled(column).stream().noneMatch(c -> c.shown().contains("."))
        && under.filled(column).stream().anyMatch(c -> c.shown().strip().length() < TIME);
  }
}
