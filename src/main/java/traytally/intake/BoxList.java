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
import java.util.stream.Collectors;
import traytally.intake.BoxRows.Line;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Fact.Counted;
import traytally.ledger.Fact.Described;
import traytally.ledger.Recorded;
import traytally.plastic.Colour;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/** A list of what is in the box: its rows read, and what they change in the book. */
final class BoxList {
  /** All that the list says of one plastic. */
  private static final class Total {
    private final List<Line> lines = new ArrayList<>();

    int pieces() {
      return counts().stream().mapToInt(Line::pieces).sum();
    }

    /** The day of its newest count, if the list tells days. */
    Optional<LocalDate> counted() {
      return lines.stream().flatMap(line -> line.counted().stream()).max(LocalDate::compareTo);
    }

    /** The lines of its newest count. */
    List<Line> counts() {
      return byAge().getOrDefault(true, List.of());
    }

    /** The lines of counts before its newest. */
    List<Line> older() {
      return byAge().getOrDefault(false, List.of());
    }

    private Map<Boolean, List<Line>> byAge() {
      Optional<LocalDate> newest = counted();
      return lines.stream()
          .collect(
              Collectors.partitioningBy(
                  line -> line.counted().isEmpty() || line.counted().equals(newest)));
    }

    /** What the book held when it wrote the list, if it wrote every line. */
    OptionalInt booked() {
      return lines.stream().allMatch(line -> line.booked().isPresent())
          ? OptionalInt.of(lines.stream().mapToInt(line -> line.booked().getAsInt()).sum())
          : OptionalInt.empty();
    }

    boolean tells(Field field) {
      return lines.stream().anyMatch(line -> line.told().contains(field));
    }

    Line first() {
      return lines.get(0);
    }
  }

  private final Book book;
  private final ImportOptions options;
  private final LocalDate countDate;
  private final KnownPlastics known;
  private final Map<Plastic, Total> totals = new LinkedHashMap<>();
  private final Map<Table, Integer> taken = new HashMap<>();

  BoxList(Book book, ImportOptions options, LocalDate today) {
    this.book = book;
    this.options = options;
    this.countDate = options.countDate().orElse(today);
    this.known = new KnownPlastics(book);
  }

  /** Reads every row of {@code tables}; what cannot be taken is among their problems. */
  void read(List<Table> tables, LocalDate today) {
    List<Line> lines = new ArrayList<>();
    Map<Plastic, OptionalInt> packSizes = new HashMap<>();
    book.described().forEach((plastic, said) -> packSizes.put(plastic, said.packSize()));
    for (Table table : tables) {
      taken.put(table, 0);
      RowReader reader = new RowReader(table, ColumnHabits.of(table, options, today), today);
      lines.addAll(
          new BoxRows(table, reader, known, book.settings().currency(), packSizes, today).lines());
    }
    Map<Plastic, Plastic> resolved = resolve(lines);
    for (Line line : lines) {
      Plastic plastic = resolved.getOrDefault(line.words(), line.words());
      if (mayTake(line, plastic)) {
        totals.computeIfAbsent(plastic, p -> new Total()).lines.add(line);
        taken.merge(line.reader().table(), 1, Integer::sum);
      }
    }
    sayNames();
  }

  /** The plastics the list names. */
  Set<Plastic> plastics() {
    return totals.keySet();
  }

  /** The rows taken of each table. */
  Map<Table, Integer> taken() {
    return taken;
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
      line.refuse(
          Field.BODY,
          "may be any of " + KnownPlastics.several(fitting) + ". Write the maker and the length.");
      return false;
    }
    if (line.blankPieces() && book.ledger().stock(plastic, countDate).count() > 0) {
      line.refuse(
          Field.PIECES,
          "The pieces are blank, and the box holds some. Write 0 if none are left, or the count.");
      return false;
    }
    if (line.blankPieces()) {
      line.say(Field.PIECES, "The pieces are blank: taken as 0.");
    }
    if (!plastic.equals(line.words())) {
      line.say(Field.BODY, "was taken for the known " + plastic + ".");
    }
    return true;
  }

  /** Says which new names look like slips of known ones, or of one another. */
  private void sayNames() {
    KnownPlastics names = new KnownPlastics(book);
    for (Map.Entry<Plastic, Total> entry : totals.entrySet()) {
      if (!names.has(entry.getKey())) {
        Line first = entry.getValue().first();
        names
            .slip(entry.getKey())
            .ifPresent(slip -> first.say(slip.field(), "is new and was taken. " + slip.question()));
        names.add(entry.getKey());
      }
    }
  }

  /**
   * What the list changes in the book.
   *
   * @param sources the lists it stands in, in words
   */
  void apply(Changes changes, String sources) {
    for (Map.Entry<Plastic, Total> entry : totals.entrySet()) {
      Total total = entry.getValue();
      List<Line> counts = total.counts();
      Optional<LocalDate> newest = total.counted();
      for (Line line : total.older()) {
        line.say(Field.PIECES, "was counted again on " + newest.orElseThrow() + ".");
      }
      if (counts.size() > 1) {
        counts
            .get(counts.size() - 1)
            .say(
                Field.BODY,
                "stands in " + counts.size() + " rows: " + total.pieces() + " pieces in all.");
      }
    }
    int counted = options.add() ? 0 : count(changes);
    describe(changes);
    colour(changes);
    keep(changes);
    if (counted > 0) {
      changes.summarise(sources, counted, "plastic", "counted");
    }
  }

  private int count(Changes changes) {
    Map<Plastic, Counted> lastListed = new HashMap<>();
    // A day may have been listed again: its last word holds.
    Map<Map.Entry<Plastic, LocalDate>, Counted> listed = new HashMap<>();
    for (Counted count : book.facts(Counted.class)) {
      if (count.listed()) {
        lastListed.put(count.plastic(), count);
        listed.put(Map.entry(count.plastic(), count.date()), count);
      }
    }
    int counted = 0;
    for (Map.Entry<Plastic, Total> entry : totals.entrySet()) {
      int pieces = entry.getValue().pieces();
      Optional<LocalDate> told = options.countDate().or(entry.getValue()::counted);
      LocalDate date = told.orElse(countDate);
      Counted count = new Counted(entry.getKey(), date, pieces, true);
      Optional<Counted> last = Optional.ofNullable(lastListed.get(entry.getKey()));
      boolean later = told.isPresent() && last.filter(l -> date.isAfter(l.date())).isPresent();
      boolean unedited = last.filter(l -> l.pieces() == pieces).isPresent() && !later;
      OptionalInt booked = entry.getValue().booked();
      if (booked.isPresent()) {
        // Only what was changed since the book wrote it; back to an older list's number, too.
        int now = book.ledger().stock(entry.getKey(), date).count();
        unedited = booked.getAsInt() == pieces || (unedited && booked.getAsInt() != now);
      }
      if (!unedited && !count.equals(listed.get(Map.entry(entry.getKey(), date)))) {
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
        total.tells(Field.TRAY) ? tray : was.tray(),
        total.tells(Field.PACK_SIZE) ? packSize : was.packSize(),
        total.tells(Field.PACK_PRICE) ? price : was.packPrice(),
        total.tells(Field.NOTE) ? note : was.note());
  }

  private static String joined(List<String> texts) {
    return String.join(" / ", texts.stream().filter(t -> !t.isEmpty()).distinct().toList());
  }

  private boolean tells(Field field) {
    return totals.values().stream().anyMatch(total -> total.tells(field));
  }

  private void colour(Changes changes) {
    if (!tells(Field.BASE) && !tells(Field.FLAKE) && !tells(Field.FINISH)) {
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
              tells(Field.BASE) ? entry.getValue().base() : was.base(),
              tells(Field.FLAKE) ? entry.getValue().flake() : was.flake(),
              tells(Field.FINISH) ? entry.getValue().finish() : was.finish());
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
              line.say(Field.COLOUR, "has another swatch or finish further up, which was kept.");
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
