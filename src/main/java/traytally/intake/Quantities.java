package traytally.intake;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Counts of pieces as people write them: {@code 12}, {@code 2 packs}, {@code 2x8}, {@code ~5}. */
final class Quantities {
  /** More pieces of one plastic than any tray holds; a slip of the keyboard (an assumption). */
  static final int MOST_PIECES = 100_000;

  static final String NEGATIVE = "is a negative count. Write the pieces you have, 0 if none.";
  static final String TOO_MANY = "is more pieces than any box holds. Write the pieces you have.";
  static final String NO_COUNT = "is not a count of pieces.";

  private static final Set<String> NONE =
      Set.of(
          "none",
          "nil",
          "zero",
          "no",
          "non",
          "0",
          "-",
          "--",
          "nought",
          "nothing",
          "out",
          "gone",
          "empty",
          "all gone",
          "none left",
          "all lost",
          "sold out",
          "finished",
          "used up");

  private static final Pattern POINTED_THOUSANDS = Pattern.compile("[1-9]\\d{0,2}(?:\\.\\d{3})+");

  private static final Pattern BEFORE =
      Pattern.compile(
          "(?:~|≈|>=?|about|abt\\.?|around|circa|ca\\.?|c\\.|approx\\.?|approximately|roughly|maybe|over|at"
              + " least|probably|prob)\\s*(.+)");
  private static final Pattern AFTER =
      Pattern.compile(
          "(.+?)\\s*(?:\\+|\\+/-|ish|-ish|\\?|\\*+|or so|or more|approx\\.?|at least|about|ca\\.?|i think)");

  /** A tally of strokes, each fifth laid across; two slanting ones are a ditto mark instead. */
  private static final Pattern STROKES =
      Pattern.compile("\\|[|/\\\\ ]*|i[i/\\\\ ]*|l[l/\\\\ ]*|/(?:[/\\\\ ]){2,}");

  /** What there was less what is gone; a range names the smaller number first. */
  private static final Pattern LESS =
      Pattern.compile("(\\d{1,6})\\s*[-–−]\\s*(\\d{1,6})(?: left)?");

  private static final Pattern RANGE = Pattern.compile("(\\d+)\\s*(?:-|to|or)\\s*(\\d+)(.*)");

  private static final String PACK =
      "(?:packs?|packets?|pkts?|pks?|pcks?|bags?|sachets?|sealed packs?|full packs?|unopened"
          + " packs?|new packs?|unopened)\\.?";
  private static final Pattern PACK_WORD =
      Pattern.compile("(?<![a-z])" + PACK, Pattern.CASE_INSENSITIVE);
  private static final String PIECE =
      "(?:pieces?|pcs?|pce|lures?|tails?|baits?|plastics?|left|loose|singles?|off|spare|extra|units?|single|odd|ea|each|count|ct)?\\.?";
  private static final String NUM =
      "("
          + Numbers.NUMBER
          + "|an?|half|half an?|a score|(?:a |the )?(?:last )?(?:couple|pair)(?: of)?|"
          + String.join("|", Numbers.WORDS)
          + ")";
  private static final String SOME =
      "an?|one|two|three|four|some|most|all|half|the rest|few|a few|a couple";

  private static final Pattern DOZENS =
      Pattern.compile("(?:" + NUM + "\\s*)?(?:dozens?|doz|dz)\\.?\\s*(?:of\\s*)?" + PIECE);

  /** A remark in brackets behind a count, unless it speaks of packs as their number's unit. */
  private static final Pattern REMARKED =
      Pattern.compile("(.+?)\\s*\\((?!" + PACK + ")([^()]*[a-z][^()]*)\\)");

  private static final Pattern PACKS_OF =
      Pattern.compile(
          NUM
              + "\\s*(?:of\\s*)?"
              + PACK
              + "\\s*(?:of|x|@|\\*|a|/|each|\\(|with|at)\\s*(?:of\\s*)?(\\d+)\\s*"
              + PIECE
              + "\\)?(?:\\s*left)?");
  private static final Pattern TIMES =
      Pattern.compile(
          "(\\d+)\\s*(?:x|\\*|@)\\s*(\\d+)\\s*(?:" + PACK + "|" + PIECE + ")(?:\\s*left)?");
  private static final Pattern A_PACK_OF =
      Pattern.compile(
          "(?:a\\s*)?" + PACK + "\\s*(?:of|x|@|\\()\\s*(\\d+)(?:\\s*" + PIECE + ")?\\)?");
  private static final Pattern PACKS =
      Pattern.compile("(?:" + NUM + "\\s*(?:of\\s*)?)?" + PACK + "(?:\\s*left)?");

  /** Of which the half is of a pack, and not half a piece. */
  private static final Pattern AND_A_HALF =
      Pattern.compile("(?:" + NUM + "\\s*)?(" + PACK + ")\\s*(?:and|&|\\+)\\s*a\\s*half");

  /** Words before a count that leave it as it is. */
  private static final Pattern ONLY =
      Pattern.compile(
          "(?:just|only|my|the|last|now|still|left)(?: the| my| only| just)?(?: last)?:?\\s+(?=\\w)");

  /** What was counted before, and what there is now. */
  private static final Pattern WAS_NOW =
      Pattern.compile(
          "(?:was|had|were)\\s+[\\w ]+?(?:[,;:>-]|\\s)+(?:is\\s+)?now\\s+(?:only\\s+)?(\\S.*)");

  /** A count that was corrected, perhaps more than once: {@code 12 > 9}, {@code 8 -> 6 -> 5}. */
  private static final Pattern CORRECTED =
      Pattern.compile(
          "(?:\\d{1,6}\\s*(?:->|-->|=>|→|➔|>|>>|,? now)\\s*)+(\\d{1,6}(?: left)?)"
              + "|~~[^~]+~~\\s*(\\d.*)");

  /** A count, and behind a mark a remark on some of it: {@code 4, one torn}. */
  private static final Pattern OF_WHICH =
      Pattern.compile(
          "(.+?)\\s*[,;-]\\s*((?:"
              + SOME
              + ")\\s+[a-z]{3,}(?:\\s[a-z]+){0,3}|(?!(?:and|plus|loose|half|dozen|"
              + PACK
              + "))[a-z]{3,}(?: [a-z']+){0,4})");

  /** What a pack holds, said in brackets behind the count. */
  private static final Pattern SIZE_BEHIND =
      Pattern.compile(
          "(.+?)\\s*\\((?:(?:an? )?"
              + PACK
              + "\\s*(?:of|=|x|hold)\\s*(\\d{1,3})|(\\d{1,3})\\s*(?:per|in an?|to an?|an?|/)\\s*"
              + PACK
              + ")\\)");

  private static final Pattern PIECES =
      Pattern.compile("(?:x\\s*)?" + NUM + "(?:\\s*x)?\\s*" + PIECE + "(?:\\s*left)?");

  /** A face behind a count, or marks of regret. */
  private static final Pattern FACE = Pattern.compile("(?<=\\w)\\s*(?:[:;]-?[()/|]|!+)$");

  private Quantities() {}

  /** Pieces, where {@code packSize} is what a pack holds, if known. */
  static Told<Integer> parse(String text, OptionalInt packSize) {
    String plain = Numbers.plain(text).toLowerCase(Locale.ROOT).strip();
    if (plain.isEmpty()) {
      return Told.nothing();
    }
    if (FACE.matcher(plain).find()) {
      return parse(FACE.matcher(plain).replaceFirst(""), packSize);
    }
    if (NONE.contains(plain)) {
      return Told.of(0);
    }
    if (STROKES.matcher(plain).matches()) {
      return Told.assuming(plain.replace(" ", "").length(), "Strokes were counted");
    }
    if (POINTED_THOUSANDS.matcher(plain).matches()) {
      // Nobody counts thousandths of a lure: the point can only mark thousands.
      return parse(plain.replace(".", ""), packSize);
    }
    Matcher size = SIZE_BEHIND.matcher(plain);
    if (size.matches()) {
      String told = Objects.requireNonNullElseGet(size.group(2), () -> size.group(3));
      return parse(size.group(1), OptionalInt.of(Integer.parseInt(told)));
    }
    Matcher was = WAS_NOW.matcher(plain);
    if (was.matches()) {
      return parse(was.group(1), packSize);
    }
    Matcher corrected = CORRECTED.matcher(plain);
    if (corrected.matches()) {
      String last = Objects.requireNonNullElseGet(corrected.group(1), () -> corrected.group(2));
      return parse(last, packSize)
          .value()
          .map(n -> Told.assuming(n, "Where a count was corrected, its last number was taken"))
          .orElseGet(() -> Told.wrong(NO_COUNT + " Write a number such as 12."));
    }
    Matcher only = ONLY.matcher(plain);
    if (only.lookingAt()) {
      return parse(plain.substring(only.end()), packSize);
    }
    Told<Integer> exact = sum(withHalf(plain), packSize);
    if (exact.value().isPresent() || plain.startsWith("-")) {
      return exact;
    }
    Told<Integer> guessed = guessed(plain, packSize);
    if (guessed.value().isPresent()) {
      return guessed;
    }
    Matcher remarked = REMARKED.matcher(plain);
    Matcher some = OF_WHICH.matcher(plain);
    if (!remarked.matches() && !some.matches()) {
      return exact;
    }
    boolean brackets = remarked.matches();
    Told<Integer> bare = parse(brackets ? remarked.group(1) : some.group(1), packSize);
    return bare.value().isPresent() && !bare.approximate()
        ? Told.assuming(
            bare.value().get(),
            brackets
                ? "What stands in brackets behind a count was passed over"
                : "A remark behind a count was passed over")
        : bare;
  }

  /** {@code 2 packs and a half} as {@code 2.5 packs}. */
  private static String withHalf(String plain) {
    Matcher half = AND_A_HALF.matcher(plain);
    return half.matches()
        ? packs(half.group(1))
            .map(packs -> packs.add(new BigDecimal("0.5")) + " " + half.group(2))
            .orElse(plain)
        : plain;
  }

  /** Whether {@code text} is a word for no pieces. */
  static boolean isNone(String text) {
    return NONE.contains(Numbers.plain(text).toLowerCase(Locale.ROOT));
  }

  /** Whether {@code text} speaks of packs. */
  static boolean countsPacks(String text) {
    return PACK_WORD.matcher(text).find();
  }

  private static Told<Integer> guessed(String plain, OptionalInt packSize) {
    Matcher less = LESS.matcher(plain);
    if (less.matches() && Integer.parseInt(less.group(1)) > Integer.parseInt(less.group(2))) {
      int left = Integer.parseInt(less.group(1)) - Integer.parseInt(less.group(2));
      return Told.about(left, "taken as " + less.group(1) + " less " + less.group(2));
    }
    String core = plain;
    Matcher before = BEFORE.matcher(core);
    if (before.matches()) {
      core = before.group(1);
    }
    Matcher after = AFTER.matcher(core);
    if (after.matches()) {
      core = after.group(1);
    }
    Matcher range = RANGE.matcher(core);
    if (range.matches()) {
      core = range.group(1) + range.group(3);
    }
    if (core.equals(plain)) {
      return Told.nothing();
    }
    Told<Integer> sum = sum(core.strip(), packSize);
    return sum.value().isPresent()
        ? Told.about(sum.value().get(), "taken as " + sum.value().get())
        : sum;
  }

  /** Terms joined by +, & or "and". */
  private static Told<Integer> sum(String plain, OptionalInt packSize) {
    int total = 0;
    String[] terms = plain.split("\\s*(?:\\+|&|\\band\\b|\\bplus\\b|(?<=[a-z)]),)\\s*", -1);
    for (String term : terms) {
      Told<BigDecimal> pieces = term(term, packSize);
      if (pieces.isWrong()) {
        return Told.wrong(pieces.wrong());
      }
      Told<Integer> whole = whole(pieces.value().orElse(BigDecimal.ZERO));
      if (whole.isWrong()) {
        return whole;
      }
      total += whole.value().orElse(0);
    }
    return total > MOST_PIECES ? tooMany() : Told.of(total);
  }

  /** {@code pieces} as a whole count that a tray can hold. */
  static Told<Integer> whole(BigDecimal pieces) {
    if (pieces.signum() < 0) {
      return Told.wrong(NEGATIVE);
    }
    if (pieces.compareTo(BigDecimal.valueOf(MOST_PIECES)) > 0) {
      return tooMany();
    }
    if (!Numbers.isWhole(pieces)) {
      return Told.wrong("is not a whole count. Write whole pieces.");
    }
    return Told.of(pieces.intValueExact());
  }

  private static Told<Integer> tooMany() {
    return Told.wrong(TOO_MANY);
  }

  private static Told<BigDecimal> term(String term, OptionalInt packSize) {
    Matcher times = TIMES.matcher(term);
    if (times.matches()) {
      return product(Numbers.parse(times.group(1)), times.group(2));
    }
    Matcher packsOf = PACKS_OF.matcher(term);
    if (packsOf.matches()) {
      return product(number(packsOf.group(1)), packsOf.group(2));
    }
    Matcher one = A_PACK_OF.matcher(term);
    if (one.matches()) {
      return product(Optional.of(BigDecimal.ONE), one.group(1));
    }
    Matcher packs = PACKS.matcher(term);
    if (packs.matches()) {
      return packSize.isPresent()
          ? product(packs(packs.group(1)), Integer.toString(packSize.getAsInt()))
          : Told.wrong(
              "counts packs, and nothing says how many pieces a pack holds. Write the pieces, or"
                  + " add a column \"Pack size\".");
    }
    Matcher dozens = DOZENS.matcher(term);
    if (dozens.matches()) {
      return product(packs(dozens.group(1)), "12");
    }
    Matcher pieces = PIECES.matcher(term);
    Optional<BigDecimal> number = pieces.matches() ? number(pieces.group(1)) : Numbers.parse(term);
    return number
        .map(Told::of)
        .orElseGet(() -> Told.wrong(NO_COUNT + " Write a number such as 12, or 2x8."));
  }

  /** How many packs, or dozens: one where no number is said. */
  private static Optional<BigDecimal> packs(String words) {
    return number(Objects.requireNonNullElse(words, "one"));
  }

  private static Told<BigDecimal> product(Optional<BigDecimal> packs, String size) {
    // A third of a pack is kept to twelve places: rounded here, it is whole again or it is not.
    return packs
        .map(p -> p.multiply(new BigDecimal(size)).setScale(6, java.math.RoundingMode.HALF_UP))
        .map(Told::of)
        .orElseGet(() -> Told.wrong(NO_COUNT + " Write a number such as 12."));
  }

  private static Optional<BigDecimal> number(String words) {
    return switch (words) {
      case "a", "an" -> Optional.of(BigDecimal.ONE);
      case "half", "half a", "half an" -> Optional.of(new BigDecimal("0.5"));
      case "a score" -> Optional.of(BigDecimal.valueOf(20));
      default ->
          words.contains("couple") || words.contains("pair")
              ? Optional.of(BigDecimal.valueOf(2))
              : Numbers.word(words).or(() -> Numbers.parse(words));
    };
  }
}
