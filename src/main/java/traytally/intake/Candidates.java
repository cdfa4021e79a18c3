package traytally.intake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** What the columns under one header row may each be, as one kind of list. */
final class Candidates {
  private static final int DATED_COUNT = 100;

  /** Longer texts are remarks, not headers (an assumption). */
  private static final int LONGEST_HEADER = 40;

  /** What a running count of pieces stands under, and the day of each beside it. */
  private static final Set<String> LEFT =
      Set.of("left", "balance", "remaining", "on hand", "in stock", "total left", "stock level");

  private static final Set<String> DAY = Set.of("date", "when", "day");

  /** Beside what went out, what came in, and no inches. */
  private static final Set<String> IN = Set.of("in", "ins");

  private static final Set<String> OUT = Set.of("out", "outs");

  /** How long in hours and minutes, and not in millimetres. */
  private static final Set<Field> TIMES = EnumSet.of(Field.MINUTES, Field.HOURS);

  /** What counts pieces or packs, and no money. */
  static final Set<Field> COUNTS =
      EnumSet.of(Field.PIECES, Field.PACKS, Field.LOOSE, Field.HAD, Field.BOUGHT_SINCE);

  private final List<ColumnHeader> headers;
  private final ListKind kind;
  private final boolean leaves;
  private final boolean goesOut;
  private final int newest;

  /** A column that may tell a field, and how well its header fits. */
  record Candidate(int column, Field field, int score) {
    boolean isUsual() {
      return score >= HeaderWords.USUAL;
    }

    /** Why it may, in a few words. */
    String why() {
      if (isUsual()) {
        return "a usual word for it";
      }
      if (score == DATED_COUNT) {
        return "the newest of the dated counts";
      }
      return score >= HeaderWords.WITHIN
          ? "holds a usual word for it"
          : "nearly a usual word for it";
    }
  }

  Candidates(List<ColumnHeader> headers, ListKind kind) {
    this.headers = headers;
    this.kind = kind;
    this.leaves = anyOf(LEFT);
    this.goesOut = anyOf(OUT);
    this.newest = CountsOverTime.newestFirst(headers).stream().findFirst().orElse(-1);
  }

  private boolean anyOf(Set<String> words) {
    return headers.stream().anyMatch(header -> words.contains(header.folded()));
  }

  /** All of them, the likeliest first. */
  List<Candidate> likeliestFirst() {
    List<Candidate> candidates = new ArrayList<>();
    for (int column = 0; column < headers.size(); column++) {
      String header = headers.get(column).folded();
      if (!header.isEmpty() && header.length() <= LONGEST_HEADER) {
        int least = HeaderWords.isPassedOver(header) ? HeaderWords.USUAL : 1;
        for (Field field : Field.values()) {
          int score = mayBe(field, column) ? score(field, column) : 0;
          if (score >= least) {
            candidates.add(new Candidate(column, field, score));
          }
        }
      }
    }
    // Of two counts under one word the later column is the newer one.
    candidates.sort(
        Comparator.comparingInt(Candidate::score)
            .reversed()
            .thenComparingInt(c -> c.field() == Field.PIECES ? -c.column() : c.column()));
    return candidates;
  }

  private int score(Field field, int column) {
    String header = headers.get(column).folded();
    int score = field.isIn(kind) ? HeaderWords.score(header, field, kind) : 0;
    if (kind == ListKind.BOX && field == Field.DATE && leaves && DAY.contains(header)) {
      // What was left is counted on a day; what came may be of any.
      return HeaderWords.USUAL;
    }
    if (kind == ListKind.BOX && field == Field.PIECES && CountsOverTime.isDated(header)) {
      return column == newest ? DATED_COUNT : 0;
    }
    // The millimetres of a lure are its length, and what is told in minutes is how long.
    boolean byUnit =
        (field == Field.LENGTH && isSized(column))
            || (field == Field.MINUTES && isIn(column, "min"));
    return byUnit ? Math.max(score, HeaderWords.USUAL) : score;
  }

  private boolean isIn(int column, String unit) {
    return headers.get(column).unit().filter(u -> u.startsWith(unit)).isPresent();
  }

  /** Whether a header names a lure and a unit of length. */
  private boolean isSized(int column) {
    return headers.get(column).lengthUnit().isPresent()
        && HeaderWords.isUsual(headers.get(column).folded(), Field.BODY, kind);
  }

  /** Whether nothing in a header speaks against a field. */
  private boolean mayBe(Field field, int column) {
    ColumnHeader header = headers.get(column);
    String word = header.folded();
    return switch (field) {
      case BODY -> !isSized(column);
      case MAKER -> !HeaderWords.namesMakerAndBody(word, kind);
      case DATE ->
          kind != ListKind.TRIPS
              || HeaderWords.isUsual(word, Field.DATE, kind)
              || !HeaderWords.isUsual(word, Field.DATE, ListKind.BOX);
      case PACK_SIZE -> !CountsOverTime.isDated(word);
      case LENGTH -> !(goesOut && IN.contains(word));
      default ->
          !(COUNTS.contains(field) && header.tellsMoney())
              && !(TIMES.contains(field) && header.lengthUnit().isPresent());
    };
  }
}
