package traytally.intake;

import java.util.Collection;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import traytally.intake.Candidates.Candidate;

/**
 * What each column under one header row is taken for, as one kind of list.
 *
 * @param columns the column of each field found, counted from 0
 * @param across columns of counts whose headers are lengths, or body styles, of a list with its
 *     counts in a square; empty for a list with one plastic a row
 * @param why in a few words, by column
 * @param score how well the headers fit this kind; compares guesses of one row
 */
record ColumnGuess(
    ListKind kind,
    Map<Field, Integer> columns,
    Map<Integer, Field> across,
    Map<Integer, String> why,
    int score) {
  /** Why a column is taken as the person said. */
  static final String AS_SAID = "as you said";

  ColumnGuess {
    // In the order of fields and columns, so that what is said of them stands in one order too.
    columns = Collections.unmodifiableSortedMap(new TreeMap<>(columns));
    across = Collections.unmodifiableSortedMap(new TreeMap<>(across));
    why = Map.copyOf(why);
  }

  /** Counts of what one has, which a shop's stock is not called without its shop. */
  private static final List<String> HELD =
      List.of(
          "left",
          "on hand",
          "held",
          "stock held",
          "on shelf",
          "on the shelf",
          "how many left",
          "number in stock",
          "qty in stock",
          "quantity in stock",
          "how many in stock");

  /** Beside a count, what is left now, and no price. */
  private static final List<String> NOW = List.of("now");

  /** A count, where nothing else in a list of plastics is one. */
  private static final String NUMBER = "n";

  /** What may stand in several columns that are added up, if the person says so. */
  private static final Set<Field> SUMMED = EnumSet.of(Field.PIECES, Field.LOOSE, Field.LANDED);

  /** What only a log tells. */
  private static final Set<Field> OUTING =
      EnumSet.complementOf(
          EnumSet.of(
              Field.DATE,
              Field.MAKER,
              Field.BODY,
              Field.COLOUR,
              Field.SECOND_COLOUR,
              Field.LENGTH,
              Field.NOTE));

  /** What the person said, or said before, of some headers: folded header to field or to none. */
  static ColumnGuess of(
      List<ColumnHeader> headers, ListKind kind, Map<String, Optional<Field>> given) {
    Map<Field, Integer> columns = new EnumMap<>(Field.class);
    Map<Integer, String> why = new HashMap<>();
    Map<Integer, Field> across = new HashMap<>();
    Set<Integer> settled = new HashSet<>();
    int score = 0;
    for (int column = 0; column < headers.size(); column++) {
      Optional<Field> told = given.getOrDefault(headers.get(column).folded(), Optional.empty());
      if (given.containsKey(headers.get(column).folded())) {
        settled.add(column);
        boolean field = told.isPresent() && told.get().isIn(kind);
        if (field && !columns.containsKey(told.get())) {
          columns.put(told.get(), column);
          why.put(column, AS_SAID);
          score += 4;
        } else if (field && SUMMED.contains(told.get())) {
          across.put(column, told.get());
          why.put(column, AS_SAID);
        }
      }
    }
    Set.copyOf(across.values()).forEach(field -> across.put(columns.remove(field), field));
    for (Candidate candidate : new Candidates(headers, kind).likeliestFirst()) {
      boolean open =
          !columns.containsKey(candidate.field()) && !across.containsValue(candidate.field());
      if (!settled.contains(candidate.column()) && open) {
        settled.add(candidate.column());
        columns.put(candidate.field(), candidate.column());
        why.put(candidate.column(), candidate.why());
        score += candidate.isUsual() ? 2 : 1;
      }
    }
    if (columns.containsKey(Field.SECOND_COLOUR) && !columns.containsKey(Field.COLOUR)) {
      // There is no second without a first: a list of tails tells their one colour.
      columns.put(Field.COLOUR, columns.remove(Field.SECOND_COLOUR));
    }
    boolean counted =
        !across.isEmpty()
            || columns.containsKey(Field.LOST_SO_FAR)
            || Candidates.COUNTS.stream()
                .anyMatch(f -> f != Field.BOUGHT_SINCE && columns.containsKey(f));
    if (kind == ListKind.BOX && !counted && columns.containsKey(Field.BOUGHT_SINCE)) {
      // A list of what came counts nothing else.
      columns.put(Field.PIECES, columns.remove(Field.BOUGHT_SINCE));
    }
    boolean lure = columns.containsKey(Field.BODY) && columns.containsKey(Field.COLOUR);
    int number = headers.stream().map(ColumnHeader::folded).toList().indexOf(NUMBER);
    if (kind == ListKind.BOX && !counted && lure && number >= 0 && !settled.contains(number)) {
      columns.put(Field.PIECES, number);
      why.put(number, "how statistics call a count");
      score++;
    }
    return new ColumnGuess(kind, columns, across, why, score);
  }

  boolean has(Field field) {
    return columns.containsKey(field);
  }

  /** The same with one column more, told by something else than its header. */
  ColumnGuess taking(Field field, int column, String because) {
    Map<Field, Integer> more = new HashMap<>(columns);
    Map<Integer, String> whys = new HashMap<>(why);
    Optional.ofNullable(more.put(field, column)).ifPresent(whys::remove);
    whys.put(column, because);
    return new ColumnGuess(kind, more, across, whys, score + 1);
  }

  /** The same with the column of one field told to be another's. */
  ColumnGuess moving(Field from, Field to, String because) {
    Map<Field, Integer> moved = new HashMap<>(columns);
    Optional.ofNullable(moved.remove(from)).ifPresent(column -> moved.put(to, column));
    Map<Integer, String> whys = new HashMap<>(why);
    Optional.ofNullable(moved.get(to)).ifPresent(column -> whys.put(column, because));
    return new ColumnGuess(kind, moved, across, whys, score);
  }

  /** Whether a column was taken for nothing. */
  boolean leaves(int column) {
    return !columns.containsValue(column) && !across.containsKey(column);
  }

  /** Whether what there was and what went are counted, so that what is left can be worked out. */
  boolean tallies() {
    return (has(Field.HAD) || has(Field.BOUGHT_SINCE)) && has(Field.LOST_SO_FAR);
  }

  /** Whether enough is found to read such a list. */
  boolean isComplete() {
    boolean lure = has(Field.BODY) || has(Field.COLOUR);
    return switch (kind) {
      case BOX ->
          lure
              && (!across.isEmpty()
                  || has(Field.PIECES)
                  || has(Field.PACKS)
                  || has(Field.LOOSE)
                  || tallies());
      case TRIPS -> lure && (has(Field.DATE) || tellsFish());
      case PLAN ->
          !has(Field.BODY)
              && has(Field.DATE)
              && (has(Field.HOURS) || (has(Field.START) && has(Field.END)));
      case PRICES -> (lure && has(Field.PACK_PRICE)) || tellsTermsAlone();
    };
  }

  /** Whether it is of shops and what they ask for sending, and of no plastic. */
  boolean tellsTermsAlone() {
    return has(Field.SHOP)
        && (has(Field.POSTAGE) || has(Field.FREE_OVER))
        && !has(Field.BODY)
        && !has(Field.COLOUR)
        && !has(Field.PACK_PRICE);
  }

  /** Whether it may as well count the box: a price beside "qty" or "left", and no shop. */
  private boolean mayCountTheBox(List<ColumnHeader> headers) {
    return kind == ListKind.PRICES
        && !has(Field.SHOP)
        && (isUnder(Field.PACK_SIZE, HeaderWords.of("prices.pack size"), headers)
            || isUnder(Field.PACK_PRICE, NOW, headers)
            || (isUnder(Field.PACK_PRICE, PriceList.EACH, headers) && !has(Field.PACK_SIZE))
            || isUnder(Field.IN_STOCK, HELD, headers))
        && of(headers, ListKind.BOX, Map.of()).isComplete();
  }

  private boolean isUnder(Field field, Collection<String> words, List<ColumnHeader> headers) {
    return Optional.ofNullable(columns.get(field))
        .map(column -> headers.get(column).folded())
        .filter(words::contains)
        .isPresent();
  }

  /** A title may hold two words of a header; a header has one that is nothing else, or three. */
  boolean convinces() {
    return columns.size() >= 3 || score > columns.size();
  }

  /** Whether it can only be a log, its dates perhaps on rows of their own. */
  private boolean tellsFish() {
    boolean fish = has(Field.TAKES) || has(Field.HOOKED) || has(Field.LANDED);
    return fish && (has(Field.MINUTES) || has(Field.CASTS) || has(Field.LOST));
  }

  /** Whether it is no log, or a log that tells more than a day: a count may be dated too. */
  boolean tellsOuting() {
    return kind != ListKind.TRIPS || columns.keySet().stream().anyMatch(OUTING::contains);
  }

  /** The headers a list of this kind needs, in words. */
  static String wanted(ListKind kind) {
    return switch (kind) {
      case BOX -> "Body style, Colour, Length and Pieces";
      case TRIPS -> "Date, Body style and Colour";
      case PLAN -> "Date and Hours";
      case PRICES -> "Shop, Body style, Colour, Pack size and Pack price";
    };
  }

  /** The complete guess that fits best, among all kinds or as {@code wanted}. */
  static Optional<ColumnGuess> best(
      List<ColumnHeader> headers, Optional<ListKind> wanted, Map<String, Optional<Field>> given) {
    Optional<ColumnGuess> best = Optional.empty();
    for (ListKind kind :
        new ListKind[] {ListKind.TRIPS, ListKind.PRICES, ListKind.BOX, ListKind.PLAN}) {
      if (wanted.isPresent() && wanted.get() != kind) {
        continue;
      }
      ColumnGuess guess = of(headers, kind, given);
      if (guess.isComplete()
          && (wanted.isPresent() || guess.convinces())
          && (wanted.isPresent() || !guess.mayCountTheBox(headers))
          && (wanted.isPresent()
              || guess.tellsOuting()
              || !of(headers, ListKind.BOX, given).isComplete())
          && best.filter(b -> b.score() >= guess.score()).isEmpty()) {
        best = Optional.of(guess);
      }
    }
    return best;
  }
}
