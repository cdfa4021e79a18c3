package traytally.intake;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import traytally.plastic.Finish;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Swatch;

/** The rows of one table of a box list, read. */
final class BoxRows {
  /** Titles that tell when the list was counted. */
  private static final Pattern COUNTED =
      Pattern.compile(
          "(?i).*\\b(?:count(?:ed)?|re-?count(?:ed)?|stock ?take|stock|checked|updated|as (?:of|at|on)"
              + ")\\b.*");

  private static final int DOZEN = 12;

  /** Larger bags are not sold (an assumption). */
  private static final int LARGEST_PACK = 1000;

  /**
   * One row as read, before its plastic is looked up.
   *
   * @param reader through which more can be said of the row
   * @param told what its table has columns for
   * @param counted the day of the count, if the row tells it
   * @param booked what the book held when it wrote the list, if it did
   */
  record Line(
      ListRow row,
      RowReader reader,
      Set<Field> told,
      Plastic words,
      int pieces,
      boolean blankPieces,
      Optional<LocalDate> counted,
      OptionalInt booked,
      OptionalInt packSize,
      Optional<Money> packPrice,
      String tray,
      String note,
      Optional<Swatch> base,
      Optional<Swatch> flake,
      Optional<Finish> finish,
      Optional<Boolean> kept) {

    void say(Field field, String what) {
      reader.begin(row);
      reader.note(field, what);
    }

    void refuse(Field field, String why) {
      reader.begin(row);
      reader.problem(field, why);
    }
  }

  private static final Pattern PACKS_OF = Pattern.compile("(?:\\bof |\\()(\\d{1,2})(?:s|\\)|$)");

  private static final Pattern CAME_OR_WENT =
      Pattern.compile(
          "(?i).*\\b(?:lost|losses|used|gone|went|broken?|torn|worn|binned|out|in|came|bought|new|added"
              + "|given|gave|sold|jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)\\b.*");

  /** What is said of a whole purchase, and not of a pack. */
  private static final Set<String> PAID =
      Set.of("paid", "what i paid", "total paid", "total cost", "total price");

  private final Table table;
  private final KnownPlastics known;
  private final Currency own;
  private final LocalDate today;
  private final RowReader reader;
  private final Map<Plastic, OptionalInt> packSizes;
  private final Optional<LocalDate> titleDay;
  private final Map<Integer, Optional<LocalDate>> headerDays = new HashMap<>();
  private final Set<Field> told = EnumSet.noneOf(Field.class);

  /**
   * The rows of {@code table}.
   *
   * @param packSizes what a pack of each plastic holds, as the book has it
   */
  BoxRows(
      Table table,
      RowReader reader,
      KnownPlastics known,
      Currency own,
      Map<Plastic, OptionalInt> packSizes,
      LocalDate today) {
    this.table = table;
    this.packSizes = Map.copyOf(packSizes);
    this.known = known;
    this.own = own;
    this.today = today;
    this.reader = reader;
    this.titleDay =
        table.titles().stream()
            .filter(BoxRows::tellsCount)
            .flatMap(title -> Dates.within(title, today).stream())
            .filter(day -> !day.isAfter(today))
            .findFirst();
    for (Field field : Field.values()) {
      if (table.tells(field)) {
        told.add(field);
      }
    }
  }

  /** Whether a title says that something was counted. */
  static boolean tellsCount(String title) {
    return COUNTED.matcher(title).matches();
  }

  /** Every row that can be taken; the others are among the table's problems. */
  List<Line> lines() {
    List<Line> lines = new ArrayList<>();
    for (ListRow row : table.rows()) {
      reader.begin(row);
      line(row).ifPresent(lines::add);
    }
    sayUntold(lines.isEmpty());
    return lines;
  }

  /** Says once what no row can tell, as the list has no column for it. */
  private void sayUntold(boolean nothing) {
    if (!told.contains(Field.LENGTH) && !nothing) {
      table.assume("No lengths are told: the plastics were taken without one.");
    }
    for (Field field : List.of(Field.BODY, Field.COLOUR)) {
      List<String> passedOver = table.passedOver();
      if (!told.contains(field) && !passedOver.isEmpty() && !table.rows().isEmpty()) {
        table.assume(
            "No column tells the "
                + field.word()
                + ". Passed over: "
                + String.join(", ", passedOver)
                + ". If one of them tells it, pass --map '"
                + passedOver.get(0)
                + "="
                + field.word()
                + "'.");
      }
    }
  }

  private Optional<Line> line(ListRow row) {
    Name body = known.agreed(reader.nameNeeded(Field.BODY));
    Name colour = known.agreed(reader.nameNeeded(Field.COLOUR));
    Name maker = known.agreed(reader.name(Field.MAKER));
    int lengthMm = reader.lengthMm();
    OptionalInt packSize = reader.countLightly(Field.PACK_SIZE, LARGEST_PACK);
    packSize = packSize.isPresent() && packSize.getAsInt() > 0 ? packSize : OptionalInt.empty();
    if (packSize.isEmpty()) {
      packSize = headerPackSize();
    }
    if (packSize.isEmpty()) {
      packSize = bookPackSize(row, maker, lengthMm);
    }
    OptionalInt pieces = pieces(row, packSize);
    Optional<LocalDate> counted = counted(row);
    if (reader.failed()) {
      return Optional.empty();
    }
    if (lengthMm == 0 && told.contains(Field.LENGTH)) {
      reader.note(Field.LENGTH, "No length: the plastic was taken without one.");
    }
    return Optional.of(
        new Line(
            row,
            reader,
            told,
            new Plastic(maker, body, colour, lengthMm),
            pieces.orElse(0),
            pieces.isEmpty(),
            counted,
            reader.countLightly(Field.BOOK_SAYS, Quantities.MOST_PIECES),
            packSize,
            packPrice(),
            reader.text(Field.TRAY),
            reader.text(Field.NOTE),
            reader.word(Field.BASE, BoxRows::swatch),
            reader.word(Field.FLAKE, BoxRows::swatch),
            reader.word(Field.FINISH, Words::finish),
            reader.word(Field.KEPT, Words::yesNo)));
  }

  /** The price of one pack; what was paid in all is divided by the packs. */
  private Optional<Money> packPrice() {
    Optional<Money> price = reader.amountLightly(Field.PACK_PRICE, own);
    boolean paid =
        table.header(Field.PACK_PRICE).filter(header -> PAID.contains(header.folded())).isPresent();
    int packs = paid ? reader.countLightly(Field.PACKS, Quantities.MOST_PIECES).orElse(1) : 1;
    if (packs < 2 || price.isEmpty()) {
      return price;
    }
    table.assume("What was paid for several packs was divided by them.");
    return price.map(
        all ->
            Money.of(
                new BigDecimal(all.amount())
                    .divide(BigDecimal.valueOf(packs), 2, RoundingMode.HALF_UP),
                all.currency()));
  }

  private Optional<LocalDate> counted(ListRow row) {
    if (row.isBlank(Field.DATE)) {
      Optional<LocalDate> told = titleDay.or(() -> headerDay(row.place(Field.PIECES).column()));
      told.ifPresent(
          day -> table.assumeOnce("Counted on " + day + ", as the title or the header says."));
      return told;
    }
    Optional<LocalDate> counted = reader.date(Field.DATE);
    if (counted.filter(date -> date.isAfter(today)).isPresent()) {
      reader.problem(Field.DATE, "is after today. Write the day of the count.");
    }
    return counted;
  }

  /** The day that the header over a count tells. */
  private Optional<LocalDate> headerDay(int column) {
    return headerDays.computeIfAbsent(
        column,
        c ->
            c < 0 || c >= table.headers().size()
                ? Optional.empty()
                : Dates.within(table.headers().get(c).text(), today)
                    .filter(day -> !day.isAfter(today)));
  }

  /** What a pack holds as the header over their number says: {@code Packs of 6}. */
  private OptionalInt headerPackSize() {
    String header = table.header(Field.PACKS).map(ColumnHeader::text).orElse("");
    if (header.toLowerCase(Locale.ROOT).startsWith("doz")) {
      return OptionalInt.of(DOZEN);
    }
    Matcher size = PACKS_OF.matcher(header);
    return size.find() ? OptionalInt.of(Integer.parseInt(size.group(1))) : OptionalInt.empty();
  }

  /** What a pack of the row's plastic holds as the book has it, where the row counts packs. */
  private OptionalInt bookPackSize(ListRow row, Name maker, int lengthMm) {
    boolean packs =
        told.contains(Field.PIECES)
            ? Quantities.countsPacks(row.text(Field.PIECES))
            : !row.isBlank(Field.PACKS);
    if (!packs || reader.failed()) {
      return OptionalInt.empty();
    }
    Name body = known.agreed(reader.name(Field.BODY));
    Name colour = known.agreed(reader.name(Field.COLOUR));
    List<Plastic> fitting = known.fitting(new Plastic(maker, body, colour, lengthMm));
    OptionalInt size =
        fitting.size() == 1
            ? packSizes.getOrDefault(fitting.get(0), OptionalInt.empty())
            : OptionalInt.empty();
    if (size.isPresent()) {
      table.assume("Where no pack size stands, that of the last list was taken.");
    }
    return size;
  }

  private OptionalInt pieces(ListRow row, OptionalInt packSize) {
    boolean had = !row.isBlank(Field.HAD) && told.contains(Field.LOST_SO_FAR);
    boolean came = !row.isBlank(Field.BOUGHT_SINCE) && !row.isBlank(Field.LOST_SO_FAR);
    if (told.contains(Field.PIECES) && !(row.isBlank(Field.PIECES) && (had || came))) {
      OptionalInt pieces = reader.pieces(Field.PIECES, packSize);
      sayTally(pieces, packSize);
      return pieces;
    }
    if ((told.contains(Field.HAD) || told.contains(Field.BOUGHT_SINCE))
        && told.contains(Field.LOST_SO_FAR)) {
      return tally(packSize);
    }
    String words = reader.text(Field.PACKS);
    if (Quantities.countsPacks(words) || words.contains("loose")) {
      return reader.pieces(Field.PACKS, packSize);
    }
    OptionalInt packs = reader.count(Field.PACKS, Quantities.MOST_PIECES);
    OptionalInt loose = reader.pieces(Field.LOOSE, packSize);
    if (packs.isPresent() && packs.getAsInt() > 0 && packSize.isEmpty()) {
      reader.problem(
          Field.PACKS,
          "counts packs, and nothing says how many pieces a pack holds. Add a column \"Pack"
              + " size\", or count pieces.");
      return OptionalInt.empty();
    }
    long sum = (long) packs.orElse(0) * packSize.orElse(0) + loose.orElse(0);
    if (sum > Quantities.MOST_PIECES) {
      reader.problem(Field.PACKS, "comes to more pieces than any box holds. Check the row.");
      return OptionalInt.empty();
    }
    table.assume("Pieces were worked out as packs times pack size, and loose pieces.");
    return packs.isEmpty() && loose.isEmpty() ? OptionalInt.empty() : OptionalInt.of((int) sum);
  }

  /** Says where the pieces left are not what was there less what was lost. */
  private void sayTally(OptionalInt pieces, OptionalInt packSize) {
    boolean counted =
        Stream.of(Field.HAD, Field.BOUGHT_SINCE, Field.LOST_SO_FAR, Field.GIVEN_AWAY)
            .map(reader::text)
            .allMatch(text -> text.matches("\\d{0,5}"));
    boolean whole = !reader.text(Field.HAD).isEmpty() && !reader.text(Field.LOST_SO_FAR).isEmpty();
    if (!counted || !whole || pieces.isEmpty() || reader.failed() || passesOverLosses()) {
      return;
    }
    int left = came(packSize) - went(packSize);
    if (left != pieces.getAsInt()) {
      reader.note(
          Field.PIECES,
          "is not what there was less what was lost, which comes to "
              + left
              + ". The pieces were"
              + " taken as written.");
    }
  }

  /** Whether some column more may tell what came or went, so that the sum is not whole. */
  private boolean passesOverLosses() {
    return table.passedOver().stream().anyMatch(header -> CAME_OR_WENT.matcher(header).matches());
  }

  private int came(OptionalInt packSize) {
    return reader.pieces(Field.HAD, packSize).orElse(0)
        + reader.pieces(Field.BOUGHT_SINCE, packSize).orElse(0);
  }

  private int went(OptionalInt packSize) {
    return reader.pieces(Field.LOST_SO_FAR, packSize).orElse(0)
        + reader.pieces(Field.GIVEN_AWAY, packSize).orElse(0);
  }

  /** What there was, and came, less what went. */
  private OptionalInt tally(OptionalInt packSize) {
    int came = came(packSize);
    int went = went(packSize);
    if (went > came) {
      reader.problem(Field.LOST_SO_FAR, "is more than there were. Write the pieces left.");
    }
    table.assume(
        told.contains(Field.PIECES)
            ? "Blank counts were worked out as what there was less what was lost."
            : told.contains(Field.GIVEN_AWAY)
                ? "The count was worked out as what there was less what was lost or given away."
                : "The count was worked out as what there was less what was lost.");
    return OptionalInt.of(Math.max(0, came - went));
  }

  private static Told<Swatch> swatch(String text) {
    if (text.isEmpty()) {
      return Told.nothing();
    }
    return Swatch.parse(text)
        .map(Told::of)
        .orElseGet(() -> Told.wrong("is not a swatch. Write it as #1a2b3c."));
  }
}
