package traytally.intake;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import traytally.sheet.Cell;

/**
 * A body style or colour under a header that is no word for it: a column of texts that mostly name
 * shapes, or colours.
 */
final class ToldByContent {
  /** The share of a column's texts that must be of known words (an assumption). */
  private static final double MOSTLY = 0.6;

  /** Fewer counts may be remarks (an assumption). */
  private static final int FEWEST = 3;

  private static final String HOLDS_COUNTS = "holds counts";

  private final List<ColumnHeader> headers;
  private final Under under;
  private final Set<String> settled;

  /**
   * The columns under {@code headers}.
   *
   * @param settled the folded headers that the person spoke of
   */
  ToldByContent(List<ColumnHeader> headers, Under under, Set<String> settled) {
    this.headers = headers;
    this.under = under;
    this.settled = settled;
  }

  /** The same guess, with what it lacked and the cells tell. */
  ColumnGuess in(ColumnGuess guess) {
    ColumnGuess told = guess;
    int lost = told.columns().getOrDefault(Field.LOST, -1);
    boolean lureless = !told.has(Field.BODY) && !told.has(Field.COLOUR);
    if (told.kind() == ListKind.TRIPS && lureless && lost >= 0 && namesLures(lost)) {
      told = told.moving(Field.LOST, Field.BODY, "names the lures lost");
    }
    if (!told.has(Field.BODY) && !told.across().containsValue(Field.BODY)) {
      // A list without a column of colours may tell the whole plastic, or all that was used, in
      // one.
      boolean alone = !told.has(Field.COLOUR) && !told.across().containsValue(Field.COLOUR);
      told =
          with(
              told, Field.BODY, text -> shapes(text) > 0 || (alone && Anatomy.bodyWords(text) > 0));
    }
    if (!told.has(Field.COLOUR) && !told.across().containsValue(Field.COLOUR)) {
      told = with(told, Field.COLOUR, text -> shapes(text) < 0);
    }
    if (!told.has(Field.DATE) && told.kind() == ListKind.TRIPS) {
      told = withDate(told);
    }
    if (told.kind() == ListKind.BOX && !told.isComplete()) {
      told = withCounts(told);
    }
    // A log tells of weather too, and rain falls in millimetres.
    if (!told.has(Field.LENGTH)
        && !told.across().containsValue(Field.LENGTH)
        && told.kind() != ListKind.TRIPS) {
      told = withLength(told);
    }
    return told;
  }

  /** Above 0 if a text speaks of a shape rather than of a colour, below 0 the other way about. */
  private static int shapes(String text) {
    return Long.compare(Anatomy.bodyWords(text), Anatomy.colourWords(text));
  }

  private ColumnGuess with(ColumnGuess guess, Field field, Predicate<String> speaks) {
    Optional<Integer> found = Optional.empty();
    for (int column = 0; column < headers.size() && found.isEmpty(); column++) {
      if (isUnread(guess, column) && mostly(column, speaks)) {
        found = Optional.of(column);
      }
    }
    return found.map(column -> guess.taking(field, column, "told by what it holds")).orElse(guess);
  }

  private ColumnGuess withDate(ColumnGuess guess) {
    for (int column = 0; column < headers.size(); column++) {
      List<Cell> cells = guess.leaves(column) ? under.filled(column) : List.of();
      long days =
          cells.stream().filter(c -> c instanceof Cell.DateTime || Dates.isDate(c.shown())).count();
      boolean free =
          !settled.contains(headers.get(column).folded())
              && !HeaderWords.isPassedOver(headers.get(column).folded());
      if (free && days > 0 && days >= MOSTLY * cells.size()) {
        return guess.taking(Field.DATE, column, "holds dates");
      }
    }
    return guess;
  }

  /** Counts that say so themselves, under whatever header: {@code 6 left}. */
  private ColumnGuess withCounts(ColumnGuess guess) {
    int note = guess.columns().getOrDefault(Field.NOTE, -1);
    return IntStream.range(0, headers.size())
        .filter(column -> !settled.contains(headers.get(column).folded()))
        .filter(column -> guess.leaves(column) || column == note)
        .filter(column -> under.filled(column).size() >= FEWEST)
        .filter(column -> mostly(column, ToldByContent::saysItCounts))
        .mapToObj(
            column ->
                column == note
                    ? guess.moving(Field.NOTE, Field.PIECES, HOLDS_COUNTS)
                    : guess.taking(Field.PIECES, column, HOLDS_COUNTS))
        .findFirst()
        .orElse(guess);
  }

  private static boolean saysItCounts(String text) {
    return text.matches("(?i).*\\b(?:left|remaining|pieces|pcs|packs?)\\b.*")
        && Under.isCount(Cell.text(text));
  }

  private ColumnGuess withLength(ColumnGuess guess) {
    return IntStream.range(0, headers.size())
        .filter(
            column ->
                !settled.contains(headers.get(column).folded())
                    && guess.leaves(column)
                    && !headers.get(column).folded().isEmpty()
                    && !HeaderWords.isPassedOver(headers.get(column).folded())
                    && !under.filled(column).isEmpty()
                    && under.lengths(column))
        .boxed()
        .findFirst()
        .map(column -> guess.taking(Field.LENGTH, column, "holds lengths"))
        .orElse(guess);
  }

  private boolean namesLures(int column) {
    return !under.filled(column).isEmpty() && mostly(column, text -> Anatomy.bodyWords(text) > 0);
  }

  private boolean isUnread(ColumnGuess guess, int column) {
    ColumnHeader header = headers.get(column);
    return !settled.contains(header.folded())
        && !header.folded().isEmpty()
        && isUnread(guess, column, header, under);
  }

  /** Whether a column has a header that says nothing, and holds words. */
  private static boolean isUnread(ColumnGuess guess, int column, ColumnHeader header, Under under) {
    return !header.text().isEmpty()
        && !HeaderWords.isPassedOver(header.folded())
        && guess.leaves(column)
        && under.words(column);
  }

  private boolean mostly(int column, Predicate<String> speaks) {
    List<Cell> cells = under.filled(column);
    long speaking = cells.stream().map(Cell::shown).filter(speaks).count();
    return speaking >= MOSTLY * cells.size();
  }

  /** Whether a column of texts of {@code table} was taken for nothing. */
  static boolean leavesWords(Table table) {
    Under under = new Under(table.sheet(), table.firstRow());
    return IntStream.range(0, table.headers().size())
        .anyMatch(column -> isUnread(table.guess(), column, table.headers().get(column), under));
  }
}
