package traytally.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Described;
import traytally.ledger.Recorded;
import traytally.plastic.Colour;
import traytally.plastic.Finish;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Swatch;

/** A list of what is in the box: its rows read, and what they change in the book. */
final class BoxList {
  /** Larger bags are not sold (an assumption). */
  static final int LARGEST_PACK = 1000;

  /** One row as read, before its plastic is looked up. */
  private record Line(
      ListRow row,
      Plastic words,
      int pieces,
      boolean blankPieces,
      OptionalInt packSize,
      Optional<Money> packPrice,
      String tray,
      String note,
      Optional<Swatch> base,
      Optional<Swatch> flake,
      Optional<Finish> finish,
      Optional<Boolean> kept) {}

  /** All that the list says of one plastic. */
  private static final class Total {
    private final List<Line> lines = new ArrayList<>();

    int pieces() {
      return lines.stream().mapToInt(Line::pieces).sum();
    }

    Line first() {
      return lines.get(0);
    }
  }

  private final Table table;
  private final Book book;
  private final ImportOptions options;
  private final LocalDate countDate;
  private final KnownPlastics known;
  private final RowReader reader;
  private final Map<Plastic, Total> totals = new LinkedHashMap<>();

  BoxList(Table table, Book book, ImportOptions options, LocalDate today) {
    this.table = table;
    this.book = book;
    this.options = options;
    this.countDate = options.countDate().orElse(today);
    this.known = new KnownPlastics(book);
    this.reader = new RowReader(table, ColumnHabits.of(table, options, today), today);
  }

  /** Reads every row; what cannot be taken is among the table's problems. */
  void read() {
    List<Line> lines = new ArrayList<>();
    for (ListRow row : table.rows()) {
      reader.begin(row);
      line(row).ifPresent(lines::add);
    }
    Map<Plastic, Plastic> resolved = resolve(lines);
    for (Line line : lines) {
      reader.begin(line.row());
      Plastic plastic = resolved.getOrDefault(line.words(), line.words());
      if (mayTake(line, plastic)) {
        totals.computeIfAbsent(plastic, p -> new Total()).lines.add(line);
      }
    }
    sayNames();
  }

  /** The plastics the list names. */
  Set<Plastic> plastics() {
    return totals.keySet();
  }

  int taken() {
    return totals.values().stream().mapToInt(t -> t.lines.size()).sum();
  }

  private Optional<Line> line(ListRow row) {
    Name body = known.agreed(reader.nameNeeded(Field.BODY));
    Name colour = known.agreed(reader.nameNeeded(Field.COLOUR));
    Name maker = known.agreed(reader.name(Field.MAKER));
    int lengthMm = reader.lengthMm();
    OptionalInt packSize = reader.countLightly(Field.PACK_SIZE, LARGEST_PACK);
    packSize = packSize.isPresent() && packSize.getAsInt() > 0 ? packSize : OptionalInt.empty();
    OptionalInt pieces = pieces(packSize);
    if (reader.failed()) {
      return Optional.empty();
    }
    if (lengthMm == 0 && table.guess().has(Field.LENGTH)) {
      reader.note(Field.LENGTH, "No length: the plastic was taken without one.");
    }
    return Optional.of(
        new Line(
            row,
            new Plastic(maker, body, colour, lengthMm),
            pieces.orElse(0),
            pieces.isEmpty(),
            packSize,
            reader.amountLightly(Field.PACK_PRICE, book.settings().currency()),
            reader.text(Field.TRAY),
            reader.text(Field.NOTE),
            reader.word(Field.BASE, BoxList::swatch),
            reader.word(Field.FLAKE, BoxList::swatch),
            reader.word(Field.FINISH, Words::finish),
            reader.word(Field.KEPT, Words::yesNo)));
  }

  private OptionalInt pieces(OptionalInt packSize) {
    if (table.guess().has(Field.PIECES)) {
      return reader.pieces(Field.PIECES, packSize);
    }
    if (table.guess().has(Field.HAD) && table.guess().has(Field.LOST_SO_FAR)) {
      int had = reader.pieces(Field.HAD, packSize).orElse(0);
      int lost = reader.pieces(Field.LOST_SO_FAR, packSize).orElse(0);
      if (lost > had) {
        reader.problem(Field.LOST_SO_FAR, "is more than there were. Write the pieces left.");
      }
      table.assume("The count was worked out as what there was less what was lost.");
      return OptionalInt.of(Math.max(0, had - lost));
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

  private static Told<Swatch> swatch(String text) {
    if (text.isEmpty()) {
      return Told.nothing();
    }
    return Swatch.parse(text)
        .map(Told::of)
        .orElseGet(() -> Told.wrong("is not a swatch. Write it as #1a2b3c."));
  }

  /** Each plastic in the list's words, as the book knows it; one wanted twice stays as written. */
  private Map<Plastic, Plastic> resolve(List<Line> lines) {
    Set<Plastic> words = new HashSet<>();
    lines.forEach(line -> words.add(line.words()));
    Map<Plastic, Plastic> resolved = new HashMap<>();
    Map<Plastic, Integer> wanted = new HashMap<>();
    for (Plastic word : words) {
      List<Plastic> fitting = known.fitting(word);
      if (fitting.size() == 1) {
        resolved.put(word, fitting.get(0));
        wanted.merge(fitting.get(0), 1, Integer::sum);
      }
    }
    resolved.entrySet().removeIf(e -> wanted.getOrDefault(e.getValue(), 0) > 1);
    return resolved;
  }

  private boolean mayTake(Line line, Plastic plastic) {
    List<Plastic> fitting = known.fitting(plastic);
    if (fitting.size() > 1) {
      reader.problem(
          Field.BODY,
          "may be any of " + RowReader.several(fitting) + ". Write the maker and the length.");
      return false;
    }
    if (line.blankPieces() && book.ledger().stock(plastic, countDate).count() > 0) {
      reader.problem(
          Field.PIECES,
          "The pieces are blank, and the box holds some. Write 0 if none are left, or the count.");
      return false;
    }
    if (line.blankPieces()) {
      reader.note(Field.PIECES, "The pieces are blank: taken as 0.");
    }
    if (!plastic.equals(line.words())) {
      reader.note(Field.BODY, "was taken for the known " + plastic + ".");
    }
    return true;
  }

  /** Says which new names look like slips of known ones, or of one another. */
  private void sayNames() {
    KnownPlastics names = new KnownPlastics(book);
    for (Map.Entry<Plastic, Total> entry : totals.entrySet()) {
      if (!names.has(entry.getKey())) {
        reader.begin(entry.getValue().first().row());
        names
            .didYouMean(entry.getKey())
            .ifPresent(question -> reader.note(Field.COLOUR, "is new and was taken. " + question));
        names.add(entry.getKey());
      }
    }
  }

  /** What the list changes in the book. */
  void apply(Changes changes) {
    for (Map.Entry<Plastic, Total> entry : totals.entrySet()) {
      Total total = entry.getValue();
      if (total.lines.size() > 1) {
        reader.begin(total.lines.get(total.lines.size() - 1).row());
        reader.note(
            Field.BODY,
            "stands in "
                + total.lines.size()
                + " rows of this list: "
                + total.pieces()
                + " pieces in all.");
      }
    }
    int counted = options.add() ? 0 : count(changes);
    describe(changes);
    colour(changes);
    keep(changes);
    if (counted > 0) {
      changes.summarise(
          table.sheet().source()
              + ": "
              + counted
              + (counted == 1 ? " plastic" : " plastics")
              + " counted");
    }
  }

  private int count(Changes changes) {
    Map<Plastic, Counted> lastListed = new HashMap<>();
    Set<Counted> listed = new HashSet<>();
    for (Counted count : book.facts(Counted.class)) {
      if (count.listed()) {
        lastListed.put(count.plastic(), count);
        listed.add(count);
      }
    }
    int counted = 0;
    for (Map.Entry<Plastic, Total> entry : totals.entrySet()) {
      int pieces = entry.getValue().pieces();
      Counted count = new Counted(entry.getKey(), countDate, pieces, true);
      Optional<Counted> last = Optional.ofNullable(lastListed.get(entry.getKey()));
      boolean later =
          options.countDate().isPresent()
              && last.filter(l -> countDate.isAfter(l.date())).isPresent();
      boolean unedited = last.filter(l -> l.pieces() == pieces).isPresent() && !later;
      if (!unedited && !listed.contains(count)) {
        changes.count(count);
        counted++;
      }
    }
    return counted;
  }

  /** The pieces of each plastic, in the list's order. */
  Map<Plastic, Integer> pieces() {
    Map<Plastic, Integer> pieces = new LinkedHashMap<>();
    totals.forEach((plastic, total) -> pieces.put(plastic, total.pieces()));
    return pieces;
  }

  private void describe(Changes changes) {
    Map<Plastic, List<Recorded<Described>>> before = new HashMap<>();
    for (Recorded<Described> described : book.recorded(Described.class)) {
      before.computeIfAbsent(described.what().plastic(), p -> new ArrayList<>()).add(described);
    }
    for (Map.Entry<Plastic, Total> entry : totals.entrySet()) {
      Plastic plastic = entry.getKey();
      List<Recorded<Described>> old = before.getOrDefault(plastic, List.of());
      Described was =
          old.isEmpty()
              ? new Described(plastic, "", OptionalInt.empty(), Optional.empty(), "")
              : old.get(old.size() - 1).what();
      Described now = described(plastic, entry.getValue(), was);
      if (!now.equals(was)) {
        old.forEach(changes::withdraw);
        changes.add(now);
      }
    }
  }

  /** What the list says; what it has no column for stays as it was. */
  private Described described(Plastic plastic, Total total, Described was) {
    String tray = joined(total.lines.stream().map(Line::tray).toList());
    String note = joined(total.lines.stream().map(Line::note).toList());
    OptionalInt packSize =
        total.lines.stream()
            .filter(l -> l.packSize().isPresent())
            .mapToInt(l -> l.packSize().getAsInt())
            .findFirst();
    Optional<Money> price = total.lines.stream().flatMap(l -> l.packPrice().stream()).findFirst();
    return new Described(
        plastic,
        table.guess().has(Field.TRAY) ? tray : was.tray(),
        table.guess().has(Field.PACK_SIZE) ? packSize : was.packSize(),
        table.guess().has(Field.PACK_PRICE) ? price : was.packPrice(),
        table.guess().has(Field.NOTE) ? note : was.note());
  }

  private static String joined(List<String> texts) {
    return String.join(" / ", texts.stream().filter(t -> !t.isEmpty()).distinct().toList());
  }

  private void colour(Changes changes) {
    if (!table.guess().has(Field.BASE)
        && !table.guess().has(Field.FLAKE)
        && !table.guess().has(Field.FINISH)) {
      return;
    }
    Map<Name, Recorded<Fact.Coloured>> before = new HashMap<>();
    book.recorded(Fact.Coloured.class).forEach(c -> before.put(c.what().colour().name(), c));
    for (Map.Entry<Name, Colour> entry : listedColours().entrySet()) {
      Optional<Recorded<Fact.Coloured>> old = Optional.ofNullable(before.get(entry.getKey()));
      Colour nothing =
          new Colour(entry.getKey(), Optional.empty(), Optional.empty(), Optional.empty());
      Colour was = old.map(o -> o.what().colour()).orElse(nothing);
      Colour now =
          new Colour(
              entry.getKey(),
              table.guess().has(Field.BASE) ? entry.getValue().base() : was.base(),
              table.guess().has(Field.FLAKE) ? entry.getValue().flake() : was.flake(),
              table.guess().has(Field.FINISH) ? entry.getValue().finish() : was.finish());
      if (!now.equals(was)) {
        old.ifPresent(changes::withdraw);
        changes.add(new Fact.Coloured(now));
      }
    }
  }

  /** Each colour as the list shows it; of two looks of one name the first wins, and it is said. */
  private Map<Name, Colour> listedColours() {
    Map<Name, Colour> colours = new LinkedHashMap<>();
    totals.forEach(
        (plastic, total) -> {
          for (Line line : total.lines) {
            Colour here = new Colour(plastic.colour(), line.base(), line.flake(), line.finish());
            Colour first = colours.getOrDefault(plastic.colour(), here);
            if (differ(first.base(), here.base())
                || differ(first.flake(), here.flake())
                || differ(first.finish(), here.finish())) {
              reader.begin(line.row());
              reader.note(
                  Field.COLOUR,
                  "has another swatch or finish further up in this list, which was kept.");
            }
            colours.put(
                plastic.colour(),
                new Colour(
                    plastic.colour(),
                    first.base().or(here::base),
                    first.flake().or(here::flake),
                    first.finish().or(here::finish)));
          }
        });
    return colours;
  }

  private static <T> boolean differ(Optional<T> one, Optional<T> other) {
    return one.isPresent() && other.isPresent() && !one.equals(other);
  }

  /** Yes vouches for a plastic, no ends that; a blank says nothing. */
  private void keep(Changes changes) {
    Map<Plastic, List<Recorded<Fact.Kept>>> kept = new HashMap<>();
    for (Recorded<Fact.Kept> fact : book.recorded(Fact.Kept.class)) {
      kept.computeIfAbsent(fact.what().plastic(), p -> new ArrayList<>()).add(fact);
    }
    totals.forEach(
        (plastic, total) -> {
          List<Boolean> said = total.lines.stream().flatMap(l -> l.kept().stream()).toList();
          List<Recorded<Fact.Kept>> before = kept.getOrDefault(plastic, List.of());
          if (said.contains(true) && before.isEmpty()) {
            changes.add(new Fact.Kept(plastic));
          } else if (said.contains(false) && !said.contains(true)) {
            before.forEach(changes::withdraw);
          }
        });
  }
}
