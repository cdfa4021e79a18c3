package traytally.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

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
  private static final WordList WORDS = WordList.read("headers.txt");

  /**
   * The words over a field's column, strongest first.
   *
   * @param whole those that a header may be
   * @param within how many of them, from the first on, may also stand within a header
   */
  private record HeaderWords(List<String> whole, int within) {}

  /** The words over each field's column: every header is held against all of them. */
  private static final Map<ListKind, Map<Field, HeaderWords>> HEADERS = headers();

  private static final HeaderWords NONE = new HeaderWords(List.of(), 0);

  /** Why a column is taken as the person said. */
  static final String AS_SAID = "as you said";

  /** Scores only rank guesses: a word that is the header beats one within it beats a slip. */
  private static final int EXACT = 1000;

  /** Two words of one field, {@code River / Broad}, weigh a little less than one. */
  private static final int SAME_TWICE = 50;

  private static final int WITHIN = 300;
  private static final int SLIP = 150;
  private static final int DATED_COUNT = 100;

  /** Longer texts are remarks, not headers (an assumption). */
  private static final int LONGEST_HEADER = 40;

  ColumnGuess {
    columns = Map.copyOf(columns);
    across = Map.copyOf(across);
    why = Map.copyOf(why);
  }

  /** Words that stand over some column exactly: they are no slip of another. */
  private static final Set<String> USUAL = usual();

  private static Set<String> usual() {
    Set<String> usual = new HashSet<>(WORDS.words("ignored"));
    HEADERS.values().forEach(kind -> kind.values().forEach(words -> usual.addAll(words.whole())));
    return usual;
  }

  /** What a running count of pieces stands under, and the day of each beside it. */
  private static final Set<String> LEFT =
      Set.of("left", "balance", "remaining", "on hand", "in stock", "total left", "stock level");

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

  /** How long in hours and minutes, and not in millimetres. */
  private static final Set<Field> TIMES = EnumSet.of(Field.MINUTES, Field.HOURS);

  /** Beside what went out, what came in, and no inches. */
  private static final Set<String> IN = Set.of("in", "ins");

  private static final Set<String> OUT = Set.of("out", "outs");

  private static final Set<String> DAY = Set.of("date", "when", "day");

  private static final Set<Field> COUNTS =
      EnumSet.of(Field.PIECES, Field.PACKS, Field.LOOSE, Field.HAD, Field.BOUGHT_SINCE);

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

  private static Map<ListKind, Map<Field, HeaderWords>> headers() {
    Map<ListKind, Map<Field, HeaderWords>> headers = new EnumMap<>(ListKind.class);
    for (ListKind kind : ListKind.values()) {
      Map<Field, HeaderWords> words = new EnumMap<>(Field.class);
      for (Field field : Field.values()) {
        List<String> whole = new ArrayList<>(field.headers(kind, "", WORDS));
        int within = whole.size();
        whole.addAll(field.headers(kind, " alone", WORDS));
        words.put(field, new HeaderWords(List.copyOf(whole), within));
      }
      headers.put(kind, words);
    }
    return headers;
  }

  private record Candidate(int column, Field field, int score) {}

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
    for (Candidate candidate : candidates(headers, kind)) {
      boolean open =
          !columns.containsKey(candidate.field()) && !across.containsValue(candidate.field());
      if (!settled.contains(candidate.column()) && open) {
        settled.add(candidate.column());
        columns.put(candidate.field(), candidate.column());
        why.put(candidate.column(), reason(candidate));
        score += candidate.score() >= EXACT / 2 ? 2 : 1;
      }
    }
    if (columns.containsKey(Field.SECOND_COLOUR) && !columns.containsKey(Field.COLOUR)) {
      // There is no second without a first: a list of tails tells their one colour.
      columns.put(Field.COLOUR, columns.remove(Field.SECOND_COLOUR));
    }
    boolean counted =
        !across.isEmpty()
            || columns.containsKey(Field.LOST_SO_FAR)
            || COUNTS.stream().anyMatch(f -> f != Field.BOUGHT_SINCE && columns.containsKey(f));
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

  private static String reason(Candidate candidate) {
    if (candidate.score() >= EXACT / 2) {
      return "a usual word for it";
    }
    if (candidate.score() == DATED_COUNT) {
      return "the newest of the dated counts";
    }
    return candidate.score() >= WITHIN ? "holds a usual word for it" : "nearly a usual word for it";
  }

  private static List<Candidate> candidates(List<ColumnHeader> headers, ListKind kind) {
    List<Candidate> candidates = new ArrayList<>();
    boolean leaves = headers.stream().anyMatch(h -> LEFT.contains(h.folded()));
    boolean out = headers.stream().anyMatch(h -> OUT.contains(h.folded()));
    int newest = CountsOverTime.newestFirst(headers).stream().findFirst().orElse(-1);
    for (int column = 0; column < headers.size(); column++) {
      String header = headers.get(column).folded();
      if (header.isEmpty() || header.length() > LONGEST_HEADER) {
        continue;
      }
      boolean ignored = isPassedOver(header);
      for (Field field : Field.values()) {
        int score = field.isIn(kind) ? score(header, field, kind) : 0;
        if (kind == ListKind.BOX && field == Field.DATE && leaves && DAY.contains(header)) {
          // What was left is counted on a day; what came may be of any.
          score = EXACT / 2;
        }
        if (kind == ListKind.BOX && field == Field.PIECES && CountsOverTime.isDated(header)) {
          score = column == newest ? DATED_COUNT : 0;
        }
        boolean sized =
            headers.get(column).lengthUnit().isPresent() && isUsual(header, Field.BODY, kind);
        if (sized && field == Field.LENGTH) {
          // The millimetres of a lure are its length.
          score = Math.max(score, EXACT / 2);
        }
        if (field == Field.MINUTES
            && headers.get(column).unit().filter(u -> u.startsWith("min")).isPresent()) {
          // What is told in minutes is how long.
          score = Math.max(score, EXACT / 2);
        }
        boolean otherwise =
            (sized && field == Field.BODY)
                || (kind == ListKind.TRIPS
                    && field == Field.DATE
                    && score < EXACT / 2
                    && isUsual(header, Field.DATE, ListKind.BOX))
                || (COUNTS.contains(field) && headers.get(column).tellsMoney())
                || (TIMES.contains(field) && headers.get(column).lengthUnit().isPresent())
                || (field == Field.PACK_SIZE && CountsOverTime.isDated(header))
                || (field == Field.LENGTH && out && IN.contains(header));
        if (otherwise) {
          continue;
        }
        if (field == Field.MAKER && namesMakerAndBody(header, kind)) {
          continue;
        }
        if (score > 0 && (!ignored || score >= EXACT / 2)) {
          candidates.add(new Candidate(column, field, score));
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

  /** Whether {@code header} is a word for what no list asks for. */
  static boolean isPassedOver(String header) {
    return WORDS.words("ignored").contains(header) || FishOff.is(header);
  }

  /** Whether {@code header} is a usual word for {@code field}. */
  static boolean isUsual(String header, Field field, ListKind kind) {
    return score(header, field, kind) >= EXACT / 2;
  }

  /** Whether {@code header} names the maker and the body style at once: {@code Maker & style}. */
  static boolean namesMakerAndBody(String header, ListKind kind) {
    int maker = score(header, Field.MAKER, kind);
    int body = score(header, Field.BODY, kind);
    return maker >= WITHIN && maker < EXACT / 2 && body >= WITHIN && body < EXACT / 2;
  }

  /** What people call a pack; a bag may be one to keep lures in. */
  private static final java.util.regex.Pattern PACKET =
      java.util.regex.Pattern.compile("\\b(?:packet|pkt|pck|pkg)(s?)\\b");

  /** The number of a value that has its unit behind it, such as {@code 40 min}: no header. */
  private static final java.util.regex.Pattern VALUE =
      java.util.regex.Pattern.compile("^\\d+(?: \\d+)? (?=\\p{L})");

  private static int score(String header, Field field, ListKind kind) {
    if (kind == ListKind.BOX
        && field == Field.PACKS
        && header.matches("(?:packs|bags|packets) (?:of )?\\d+s?")) {
      return EXACT / 2;
    }
    HeaderWords known = HEADERS.getOrDefault(kind, Map.of()).getOrDefault(field, NONE);
    int place = known.whole().indexOf(header);
    if (place >= 0) {
      return EXACT - place;
    }
    if (PACKET.matcher(header).find()) {
      return score(PACKET.matcher(header).replaceAll("pack$1"), field, kind);
    }
    if (header.indexOf(' ') > 0
        && Arrays.stream(header.split(" ", -1)).allMatch(known.whole()::contains)) {
      return EXACT - SAME_TWICE;
    }
    List<String> words = known.whole().subList(0, known.within());
    if (words.contains(VALUE.matcher(header).replaceFirst(""))) {
      return 0;
    }
    int best = 0;
    String padded = " " + header + " ";
    for (String word : words) {
      if (word.length() > 2 && header.contains(word) && padded.contains(" " + word + " ")) {
        best = Math.max(best, WITHIN + 10 * word.length());
      } else if (best == 0
          && header.length() > 4
          && word.length() > 3
          && !USUAL.contains(header)
          && Spelling.isOneSlip(header, word)) {
        best = SLIP;
      }
    }
    return best;
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
        && (isUnder(Field.PACK_SIZE, WORDS.words("prices.pack size"), headers)
            || isUnder(Field.PACK_PRICE, NOW, headers)
            || isUnder(Field.IN_STOCK, HELD, headers))
        && of(headers, ListKind.BOX, Map.of()).isComplete();
  }

  private boolean isUnder(Field field, List<String> words, List<ColumnHeader> headers) {
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
