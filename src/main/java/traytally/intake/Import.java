package traytally.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import traytally.intake.TripLog.Strangers;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Recorded;
import traytally.plastic.Plastic;

/** Reads people's lists against the book, and says what is to be recorded. */
public final class Import {
  private final Book book;
  private final ImportOptions options;
  private final LocalDate today;
  private final Changes changes;
  private final KnownPlastics known;
  private final List<String> notices = new ArrayList<>();
  private final Map<Table, Integer> taken = new LinkedHashMap<>();
  private boolean boxListed;

  private Import(Book book, ImportOptions options, LocalDate today) {
    this.book = book;
    this.options = options;
    this.today = today;
    this.changes = new Changes(book);
    this.known = new KnownPlastics(book);
  }

  /**
   * Reads {@code sheets} of one or several files in one go; nothing is recorded here.
   *
   * @throws ListRefusedException if a file holds no list, or one that may be read in two ways
   */
  public static Imported read(
      List<GivenSheet> sheets, Book book, ImportOptions options, LocalDate today) {
    if (options.countDate().filter(d -> d.isAfter(today)).isPresent()) {
      throw new ListRefusedException("The count date is after today. Give the day of the count.");
    }
    return new Import(book, options, today).read(sheets);
  }

  private Imported read(List<GivenSheet> sheets) {
    Map<GivenSheet, List<Table>> found = new ListSearch(sheets, book, options, today).lists();
    Map<Table, String> passed = passedOver(found);
    List<Table> tables =
        found.values().stream()
            .flatMap(List::stream)
            .filter(table -> !passed.containsKey(table))
            .toList();
    // The box says what is owned, so it is read before the log that names it.
    takeBox(of(ListKind.BOX, tables));
    of(ListKind.PRICES, tables).forEach(this::takePrices);
    bySource(of(ListKind.PLAN, tables)).values().forEach(this::takePlan);
    takeTrips(bySource(of(ListKind.TRIPS, tables)));
    if (options.add() && of(ListKind.BOX, tables).isEmpty()) {
      notices.add("--add says that a box list is new purchases; it does not apply to these lists.");
    }
    List<SheetReading> readings = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    found.forEach((sheet, list) -> report(sheet, list, passed, readings, problems));
    return imported(tables, readings, problems);
  }

  /** Lists of the box that are not what is there now, unless the person chose the tabs. */
  private Map<Table, String> passedOver(Map<GivenSheet, List<Table>> found) {
    List<Table> box = of(ListKind.BOX, found.values().stream().flatMap(List::stream).toList());
    return options.sheets().isEmpty() ? new InStock(box, options, today).passed() : Map.of();
  }

  private static List<Table> of(ListKind kind, List<Table> tables) {
    return tables.stream().filter(table -> table.kind() == kind).toList();
  }

  private static Map<String, List<Table>> bySource(List<Table> tables) {
    Map<String, List<Table>> bySource = new LinkedHashMap<>();
    tables.forEach(
        t -> bySource.computeIfAbsent(t.sheet().source(), s -> new ArrayList<>()).add(t));
    return bySource;
  }

  private Imported imported(
      List<Table> tables, List<SheetReading> readings, List<Problem> problems) {
    boolean stopped =
        options.strict()
            && problems.stream().anyMatch(p -> p.severity() == Problem.Severity.PROBLEM);
    if (stopped) {
      notices.add("Nothing was taken: a row has a problem, and --strict was passed.");
      return new Imported(
          readings.stream().map(SheetReading::untaken).toList(),
          problems,
          Changes.nothing(),
          notices);
    }
    if (!changes.isEmpty() || !options.map().isEmpty()) {
      tables.stream().filter(Mapping::canRemember).forEach(this::remember);
    }
    if (changes.isEmpty()) {
      return new Imported(readings, problems, Changes.nothing(), notices);
    }
    Changes.Outcome outcome = changes.outcome();
    sayFound(outcome.found());
    if (outcome.history() > 0) {
      notices.add(
          "Stints older than the last count of their plastic lower no count, but teach trust and"
              + " use: "
              + outcome.history()
              + " that used pieces.");
    }
    return new Imported(readings, problems, outcome.entry(), notices);
  }

  private void takePrices(Table table) {
    PriceList prices = new PriceList(table, book, options, known, today);
    prices.read();
    prices.apply(changes);
    taken.put(table, prices.taken());
  }

  private void takePlan(List<Table> tables) {
    List<PlanList> lists = new ArrayList<>();
    for (Table table : tables) {
      PlanList plan = new PlanList(table, book, options, known, today);
      plan.read();
      taken.put(table, plan.taken());
      lists.add(plan);
    }
    PlanList.apply(lists, changes);
  }

  private void takeTrips(Map<String, List<Table>> bySource) {
    LogMerge merge = new LogMerge(book, changes);
    bySource.forEach(
        (source, tables) -> {
          List<TripLog> logs = new ArrayList<>();
          for (Table table : tables) {
            TripLog log = new TripLog(table, options, known, today);
            log.read(strangers());
            table.letGo();
            taken.put(table, log.taken());
            logs.add(log);
          }
          merge.merge(
              logs.stream().flatMap(log -> log.stints().stream()).toList(),
              source,
              trip -> logs.stream().anyMatch(log -> log.mayHold(trip)));
        });
    if (!merge.summary().isEmpty()) {
      changes.summarise(merge.summary());
    }
  }

  private Strangers strangers() {
    if (!boxListed && book.facts(Fact.Counted.class).isEmpty()) {
      return Strangers.WELCOME;
    }
    return options.onceOwned() ? Strangers.USED_UP : Strangers.REFUSED;
  }

  private void takeBox(List<Table> tables) {
    if (tables.isEmpty()) {
      return;
    }
    BoxList box = new BoxList(book, options, today);
    box.read(tables, today);
    boxListed = true;
    taken.putAll(box.taken());
    known.addAll(box.plastics());
    String sources = String.join(" and ", bySource(tables).keySet());
    if (!options.add()) {
      box.apply(changes, sources);
      return;
    }
    Map<Plastic, Integer> pieces = new LinkedHashMap<>(box.pieces());
    pieces.values().removeIf(count -> count == 0);
    Purchases purchases = new Purchases(book, sources);
    Map<Plastic, Integer> fresh = options.again() ? pieces : purchases.unadded(pieces, notices);
    if (!pieces.isEmpty() && fresh.isEmpty()) {
      return;
    }
    box.apply(changes, sources);
    if (!fresh.isEmpty()) {
      purchases.apply(fresh, options.countDate().orElse(today), changes);
    }
  }

  private void report(
      GivenSheet sheet,
      List<Table> tables,
      Map<Table, String> passed,
      List<SheetReading> readings,
      List<Problem> problems) {
    if (tables.isEmpty()) {
      readings.add(
          SheetReading.passedOver(
              sheet,
              Printed.is(sheet)
                  ? Printed.SENTENCE + ": passed over."
                  : "No list was found in it: passed over."));
      return;
    }
    for (Table table : tables) {
      if (passed.containsKey(table)) {
        readings.add(SheetReading.passedOver(sheet, passed.get(table) + ": passed over."));
        continue;
      }
      if (sheet.hidden()) {
        table.assume("The sheet is hidden and was read like the others.");
      }
      if (table.rowsRead() == 0) {
        table.assume("It has headers and no rows.");
      }
      readings.add(table.reading(taken.getOrDefault(table, 0)));
      List<Problem> own = new ArrayList<>(table.problems());
      own.sort(Comparator.comparingInt(Problem::row));
      problems.addAll(own);
    }
  }

  private void sayFound(SortedMap<Plastic, Integer> found) {
    if (!boxListed && book.facts(Fact.Counted.class).isEmpty() && !found.isEmpty()) {
      notices.add(
          "The box was never counted: what this log used was entered as found ("
              + found.values().stream().mapToInt(n -> n).sum()
              + " in all). Import a box list to count it.");
      return;
    }
    SortedMap<Plastic, Fact.Described> described = book.described();
    found.forEach(
        (plastic, pieces) -> {
          String tray =
              Optional.ofNullable(described.get(plastic))
                  .map(Fact.Described::tray)
                  .filter(t -> !t.isEmpty())
                  .map(t -> " in tray " + t)
                  .orElse("");
          notices.add(
              "More of "
                  + plastic
                  + " were used than the book held: "
                  + pieces
                  + " entered as found. Recount them"
                  + tray
                  + ".");
        });
  }

  private void remember(Table table) {
    Fact.Mapped now = Mapping.of(table);
    List<Recorded<Fact.Mapped>> before =
        book.recorded(Fact.Mapped.class).stream()
            .filter(m -> m.what().headers().equals(now.headers()))
            .toList();
    if (before.stream().noneMatch(m -> m.what().equals(now))) {
      before.forEach(changes::withdraw);
      changes.add(now);
    }
  }
}
