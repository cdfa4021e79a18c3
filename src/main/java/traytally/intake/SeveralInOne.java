package traytally.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
import traytally.intake.ListRow.Place;
import traytally.sheet.Cell;

/**
 * Splits a log's row that names several plastics in one cell: {@code Slim shad copper 85mm 2 takes;
 * ball tail olive 65mm lost 1}.
 *
 * <p>The trip's minutes and casts are shared out evenly, and it is said. Its fish and losses are
 * never shared out: the cell must tell whose they are, unless there were none.
 */
final class SeveralInOne {
  static final String BESIDE_ITS_NAME =
      "What a cell tells of its plastic beside the name was read as its stint.";

  private static final Pattern PARTS = Pattern.compile("\\s*(?:;|\\n|\\|| \\+ | then )\\s*");

  /** No comma within a number; behind a blank a length may begin the next plastic. */
  private static final Pattern COMMAS =
      Pattern.compile(
          "\\s*,\\s*+(?=\\D)|\\s*,\\s++(?=\\d[\\d.,/ ]*(?:\"|''|mm|cm|in|inch|inches)[\\s-])");

  private static final Pattern LOST_IN_BRACKETS = Pattern.compile("\\((\\d{1,2})\\)");

  private static final Pattern LOST_BEHIND =
      Pattern.compile("\\s*(?:\\bx ?|\\(x? ?|: ?)(\\d{1,2})\\b\\)?(?! ?(?:mm|cm|in\\b|\"))");

  private static final Pattern SHAPES =
      Pattern.compile("\\s*(?:[,;&|\n]|\\s\\+\\s|\\band\\b|\\bthen\\b)\\s*");

  /** Between numbers that stand in the order of the plastics. */
  private static final Pattern BESIDE = Pattern.compile("\\s*[,;/|&+\\n]\\s*");

  private static final Pattern ALL_NUMBERS =
      Pattern.compile("\\d{1,3}(?:\\s*[,;/|&+\\n]\\s*\\d{1,3})+");

  /** What is of one plastic alone and stands once for all of them. */
  static final List<Field> COUNTS =
      List.of(
          Field.FOLLOWS,
          Field.TAKES,
          Field.HOOKED,
          Field.LANDED,
          Field.SPECIES,
          Field.LOST,
          Field.SNAGGED,
          Field.BITTEN_OFF,
          Field.TORN,
          Field.CAST_OFF,
          Field.WORN);

  /** What the words of a cell may tell where nothing else does. */
  private static final Set<Field> TOLD =
      Set.of(Field.TAKES, Field.HOOKED, Field.LANDED, Field.LOST, Field.MINUTES);

  private final Table table;

  /** Decided from all rows when the first is split. */
  private Optional<Durations.Bare> bareTime = Optional.empty();

  SeveralInOne(Table table) {
    this.table = table;
  }

  /** Whether {@code body} names several body styles: {@code Paddle, Grub}. */
  static boolean namesSeveral(String body) {
    String[] shapes = SHAPES.split(body.strip());
    return shapes.length > 1 && Arrays.stream(shapes).allMatch(Anatomy::namesShape);
  }

  /** One plastic of the cell and what is told of it. */
  private record Part(Anatomy plastic, Map<Field, String> told) {
    int number(Field field) {
      return Integer.parseInt(told.getOrDefault(field, "0"));
    }
  }

  void run() {
    List<ListRow> rows = new ArrayList<>();
    for (ListRow row : table.rows()) {
      List<Part> parts = row.isBlank(Field.COLOUR) ? parts(lures(row)) : List.of();
      boolean tells = parts.stream().anyMatch(part -> !part.told().isEmpty());
      if (parts.size() > 1 || tells) {
        rows.addAll(split(row, parts));
      } else {
        rows.add(row);
      }
    }
    table.rows().clear();
    table.rows().addAll(rows);
  }

  /** The cell of lures, with the losses that stand behind each as a number told in words. */
  private String lures(ListRow row) {
    String text = row.place(Field.BODY).cell().shown();
    Optional<ColumnHeader> header = table.header(Field.BODY);
    if (header
        .filter(h -> HeaderWords.isUsual(h.folded(), Field.LOST, ListKind.TRIPS))
        .isPresent()) {
      return LOST_BEHIND.matcher(text).replaceAll(" lost $1");
    }
    return header.filter(ColumnHeader::saysLost).isPresent()
        ? LOST_IN_BRACKETS.matcher(text).replaceAll(" lost $1")
        : text;
  }

  /** Whether {@code text} names plastics and tells what each did. */
  static boolean tellsStints(String text) {
    List<Part> parts = parts(text);
    return !parts.isEmpty() && parts.stream().noneMatch(part -> part.told().isEmpty());
  }

  /** The same of several plastics. */
  static boolean tellsSeveral(String text) {
    return parts(text).size() > 1 && tellsStints(text);
  }

  /** The parts of the cell, if every one of them names a plastic. */
  private static List<Part> parts(String text) {
    String[] pieces = PARTS.split(text.strip());
    List<Part> parts = whole(pieces.length > 1 ? pieces : COMMAS.split(text));
    return parts.isEmpty() && pieces.length == 1 ? alone(text) : parts;
  }

  /**
   * The one plastic of a cell that says in words how long it was fished, or that it caught none.
   */
  private static List<Part> alone(String text) {
    StintLine line = StintLine.of(text);
    return line.isStint() && line.left().isEmpty() && line.fishLost().isEmpty()
        ? List.of(new Part(line.plastic(), line.told()))
        : List.of();
  }

  /** The numbers that {@code text} tells with their words: {@code 3 takes, lost 1}. */
  static Map<Field, String> numbersIn(String text) {
    Map<Field, String> told = StintCounts.of(text).told();
    told.keySet().retainAll(TOLD);
    return told;
  }

  private static List<Part> whole(String[] pieces) {
    List<Part> parts = new ArrayList<>();
    for (String piece : pieces) {
      StintCounts counts = StintCounts.of(TimeWithin.inMinutes(Numbers.plain(piece)));
      String rest = counts.rest().replace(StintCounts.TAKEN, ' ').toLowerCase(Locale.ROOT);
      Anatomy plastic =
          Anatomy.of(rest.replaceAll("\\(\\s*[,;]*\\s*\\)", " ").replaceAll("[\\s,:(\\-]+$", ""));
      if (!plastic.isWhole() || !plastic.quantity().isEmpty()) {
        return List.of();
      }
      parts.add(new Part(plastic, counts.told()));
    }
    return parts;
  }

  private List<ListRow> split(ListRow row, List<Part> parts) {
    List<ListRow> rows = new ArrayList<>();
    Optional<String> share = share(row, parts);
    int column = row.place(Field.BODY).column();
    for (int i = 0; i < parts.size(); i++) {
      Part part = parts.get(i);
      ListRow one = row.copy();
      one.put(Field.BODY, Cell.text(part.plastic().body()), column);
      one.put(Field.COLOUR, Cell.text(part.plastic().colour()), column);
      if (!part.plastic().length().isEmpty()) {
        one.put(Field.LENGTH, Cell.text(part.plastic().length()), column);
      }
      Optional.ofNullable(part.told().get(Field.CASTS))
          .ifPresent(casts -> one.put(Field.CASTS, Cell.text(casts), column));
      int place = i;
      COUNTS.forEach(field -> settle(field, one, parts, place, column));
      share.ifPresent(
          minutes ->
              one.put(
                  Field.MINUTES,
                  Cell.text(part.told().getOrDefault(Field.MINUTES, minutes) + " min"),
                  row.place(Field.MINUTES).column()));
      rows.add(one);
    }
    shareCasts(row.place(Field.CASTS), rows);
    table.assume(
        parts.size() == 1
            ? BESIDE_ITS_NAME
            : "Rows that name several plastics were split, one stint a plastic.");
    return rows;
  }

  /** The number of one plastic where a cell has one for each of them: {@code 3, 0}. */
  private static Optional<String> own(String text, int place, int among) {
    String[] numbers = BESIDE.split(text, -1);
    return numbers.length == among && ALL_NUMBERS.matcher(text).matches()
        ? Optional.of(numbers[place].strip())
        : Optional.empty();
  }

  /** Gives one plastic what the cell tells of it; what may be any one's is doubted. */
  private static void settle(Field field, ListRow one, List<Part> parts, int place, int column) {
    Part part = parts.get(place);
    Place whole = one.place(field);
    Optional<String> own = own(one.text(field), place, parts.size());
    if (own.isPresent()) {
      one.put(field, Cell.text(own.get()), whole.column());
      return;
    }
    Optional<Integer> named =
        LostByName.of(one.text(field), parts.stream().map(Part::plastic).toList(), place);
    if (named.isPresent()) {
      one.put(field, Cell.text(Integer.toString(named.get())), whole.column());
      return;
    }
    Field told = field;
    if (field == Field.SPECIES) {
      if (!one.text(field).matches("\\d{1,3}")) {
        return;
      }
      told = Field.LANDED;
    }
    Field key = told;
    if (parts.stream().anyMatch(p -> p.told().containsKey(key))) {
      int all = parts.stream().mapToInt(p -> p.number(key)).sum();
      if (!isNone(whole) && !Integer.toString(all).equals(one.text(field))) {
        // What each tells does not come to the whole: no share of it is to be had.
        one.doubt(field, one);
      } else {
        one.put(field, Cell.text(Integer.toString(part.number(key))), column);
      }
    } else if (!isNone(whole)) {
      one.doubt(field, parts);
    }
  }

  /**
   * Shares out time and casts that stand once among the plastics of a row; counts that do may be
   * any one's, unless they are none.
   *
   * @param own what each plastic tells of its own
   */
  void shareOut(ListRow row, List<ListRow> plastics, Set<Field> own) {
    Place minutes = row.place(Field.MINUTES);
    if (!own.contains(Field.MINUTES)) {
      shareOfMinutes(row, plastics.size())
          .map(share -> Cell.text(share + " min"))
          .ifPresent(share -> plastics.forEach(p -> p.put(Field.MINUTES, share, minutes.column())));
    }
    if (!own.contains(Field.CASTS)) {
      shareCasts(row.place(Field.CASTS), plastics);
    }
    for (Field field : COUNTS) {
      boolean number = field != Field.SPECIES || row.text(field).matches("\\d{1,3}");
      if (!own.contains(field) && number && !isNone(row.place(field))) {
        plastics.forEach(plastic -> plastic.doubt(field, row));
      }
    }
  }

  /** Shares out the casts of a row among its plastics. */
  private void shareCasts(Place casts, List<ListRow> rows) {
    Optional<Integer> all =
        Quantities.parse(casts.cell().shown(), OptionalInt.empty()).value().filter(n -> n > 0);
    if (all.isEmpty()) {
      return;
    }
    SharedCells.dealOut(all.get(), Field.CASTS, casts.column(), rows);
    table.assume("The casts of such a row were shared out evenly.");
  }

  /** Whether a count is told as none, or not at all. */
  static boolean isNone(Place place) {
    return place.cell().isBlank()
        || Quantities.parse(place.cell().shown(), OptionalInt.empty())
            .value()
            .filter(n -> n == 0)
            .isPresent();
  }

  /** The minutes of each plastic that tells none of its own, as text without a unit. */
  private Optional<String> share(ListRow row, List<Part> parts) {
    if (parts.stream().allMatch(p -> p.told().containsKey(Field.MINUTES))) {
      return Optional.of("0");
    }
    return shareOfMinutes(row, parts.size());
  }

  /** The even share of a row's minutes among its plastics, as text without a unit. */
  private Optional<String> shareOfMinutes(ListRow row, int among) {
    Optional<Double> whole = minutes(row);
    whole.ifPresent(m -> table.assume("The minutes of such a row were shared out evenly."));
    return whole.map(minutes -> String.format(Locale.ROOT, "%.2f", minutes / among));
  }

  private Optional<Double> minutes(ListRow row) {
    if (row.place(Field.MINUTES).cell() instanceof Cell.Time time) {
      return Optional.of(time.length().toSeconds() / 60.0);
    }
    String text = row.text(Field.MINUTES);
    if (text.isEmpty() && !row.isBlank(Field.START) && !row.isBlank(Field.END)) {
      return Durations.between(row.text(Field.START), row.text(Field.END)).value();
    }
    bareTime = bareTime.or(() -> Optional.of(ColumnHabits.bareTime(table)));
    return Durations.minutes(text, bareTime.get()).value();
  }
}
