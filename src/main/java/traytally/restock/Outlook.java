package traytally.restock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Palette;
import traytally.ledger.Setting;
import traytally.ledger.Settings;
import traytally.performance.Levels;
import traytally.performance.LogReading;
import traytally.performance.Measure;
import traytally.performance.Performance;
import traytally.performance.StandingRule;
import traytally.performance.Trust;
import traytally.performance.Turn;
import traytally.plastic.Pieces;
import traytally.plastic.Plastic;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;

/** What the coming trips will do to every tray of a box. */
public final class Outlook {
  /** Enough for 95 trips of 100 (method, section 5). */
  private static final double CARRIED = 0.95;

  /**
   * Outings times plastics that are gone through for habits, which memory and patience allow: the
   * last 10,000 outings of somebody with 200 plastics. Older ones weigh nothing by then.
   */
  private static final int MOST_CHOICES = 2_000_000;

  /** Outings gone through in any case: a year of daily ones. */
  private static final int FEWEST_OUTINGS = 365;

  private final Horizon horizon;
  private final Performance performance;
  private final LossModel losses;
  private final Levels<Plastic> plastics;
  private final Demand demand;
  private final int[] pieces;
  private final SortedMap<Plastic, Prospect> prospects = new TreeMap<>();
  private final SortedMap<Plastic, Prospect> newcomers = new TreeMap<>();

  private Outlook(
      Book book,
      LocalDate asOf,
      Function<HorizonSearch, Horizon> asked,
      int deliveryDays,
      Set<Plastic> onSale) {
    Settings settings = book.settings();
    List<Stint> log = book.log(asOf);
    Performance logged = performance(book, asOf, Measure.TAKES);
    List<Turn> turns = logged.turns();
    this.losses = new LossModel(turns, settings.number(Setting.ASSUMED_USE_PER_HOUR));
    Set<Plastic> all = new TreeSet<>(book.plastics());
    turns.forEach(turn -> all.add(turn.plastic()));
    this.plastics = new Levels<>(all);
    this.horizon = asked.apply(search(book, asOf, log, turns, deliveryDays));
    this.performance = logged.under(horizon.trips());
    TrayHistory history = new TrayHistory(book, turns, all, asOf);
    List<Outing> outings = latest(Outing.of(turns, log));
    LikelyTrays trays = new LikelyTrays(plastics, outings, turns, history);
    Choice choice = new Choice(plastics, trays, asOf);
    this.demand = new Demand(plastics, horizon.trips(), choice, losses);
    this.pieces = new int[plastics.size()];
    for (int p = 0; p < pieces.length; p++) {
      pieces[p] = book.ledger().stock(plastics.values().get(p), asOf).count();
    }
    prospects(book.kept(), onSale);
  }

  /** The outings that habits are learnt from; of any but the largest boxes, all of them. */
  private List<Outing> latest(List<Outing> outings) {
    int most = Math.max(FEWEST_OUTINGS, MOST_CHOICES / Math.max(1, plastics.size()));
    return outings.subList(Math.max(0, outings.size() - most), outings.size());
  }

  /** Looks ahead for what is in the box and for what shops sell that was never in it. */
  static Outlook of(Book book, LocalDate asOf, Asked asked, Market market) {
    return new Outlook(
        book, asOf, search -> search.find(asked), market.deliveryDays(book), market.plastics());
  }

  /**
   * Looks ahead from the end of {@code asOf}; whatever is dated later is not known yet.
   *
   * @param deliveryDays days from order to tray, for the end of the horizon
   */
  public static Outlook of(Book book, LocalDate asOf, Asked asked, int deliveryDays) {
    return new Outlook(book, asOf, search -> search.find(asked), deliveryDays, Set.of());
  }

  /** Looks ahead to one trip alone, on {@code asOf} or later. */
  public static Outlook of(Book book, LocalDate asOf, PlannedTrip trip) {
    Horizon day = new Horizon(asOf, trip.date(), List.of(trip), 1, "one trip");
    return new Outlook(book, asOf, search -> day, 1, Set.of());
  }

  /** Looks ahead as the shopping list does when nothing in particular is asked of it. */
  public static Outlook of(Book book, LocalDate asOf) {
    return of(book, asOf, Asked.NOTHING, deliveryDays(book));
  }

  /** The horizon of {@link #of(Book, LocalDate)}, without weighing the log for it. */
  public static Horizon horizon(Book book, LocalDate asOf) {
    List<Stint> log = book.log(asOf);
    List<Turn> turns = Turn.of(log, book.settings().number(Setting.MINUTES_PER_CAST));
    return search(book, asOf, log, turns, deliveryDays(book)).find(Asked.NOTHING);
  }

  private static HorizonSearch search(
      Book book, LocalDate asOf, List<Stint> log, List<Turn> turns, int deliveryDays) {
    return new HorizonSearch(
        asOf,
        plan(book, log),
        Pace.of(turns, asOf),
        book.settings().days(Setting.ORDER_EVERY_DAYS),
        deliveryDays);
  }

  private static int deliveryDays(Book book) {
    return Market.of(book, Set.of()).deliveryDays(book);
  }

  /** What the log of a book says of its colours, read as the angler's settings ask. */
  public static Performance performance(Book book, LocalDate asOf, Measure measure) {
    Settings settings = book.settings();
    LogReading reading =
        new LogReading(
            settings.number(Setting.MINUTES_PER_CAST),
            settings.get(Setting.HEMISPHERE).equals("south"),
            Palette.of(book).tones());
    return Performance.of(book.log(asOf), reading, measure, rule(settings));
  }

  /** The rule of standings that the angler's settings ask for. */
  private static StandingRule rule(Settings settings) {
    return new StandingRule(
        settings.number(Setting.TRUSTED_FROM),
        settings.number(Setting.PROMISING_FROM),
        settings.number(Setting.DOUBTFUL_TO));
  }

  /** The planned trips that are not in the log yet. */
  private static List<PlannedTrip> plan(Book book, List<Stint> log) {
    return book.facts(Fact.Planned.class).stream()
        .map(Fact.Planned::trip)
        .filter(plan -> log.stream().noneMatch(stint -> fulfils(stint, plan)))
        .toList();
  }

  private static boolean fulfils(Stint stint, PlannedTrip plan) {
    return stint.trip().date().equals(plan.date())
        && (stint.trip().water().equals(plan.water())
            || stint.trip().water().isBlank()
            || plan.water().isBlank());
  }

  private void prospects(Set<Plastic> kept, Set<Plastic> onSale) {
    List<Use> asItIs = demand.asItIs(pieces);
    boolean[] inPlay = new boolean[pieces.length];
    List<Prospect> draft = new ArrayList<>();
    for (int p = 0; p < pieces.length; p++) {
      draft.add(draw(p, kept, asItIs.get(p), asItIs.get(p)));
      inPlay[p] = pieces[p] > 0 || draft.get(p).wanted();
    }
    List<Use> endless = demand.endless(inPlay);
    for (int p = 0; p < pieces.length; p++) {
      prospects.put(plastics.values().get(p), draw(p, kept, endless.get(p), asItIs.get(p)));
    }
    Set<Plastic> unowned = new TreeSet<>(onSale);
    unowned.removeAll(prospects.keySet());
    for (Plastic plastic : unowned) {
      Use use = demand.newcomer(plastic, inPlay, unowned.size() - 1);
      Trust trust = performance.colour(plastic.colour());
      newcomers.put(plastic, new Prospect(plastic, new Pieces(0), trust, false, use, use));
    }
  }

  /** What shops sell and neither the book nor the log speaks of, forecast from colour and body. */
  SortedMap<Plastic, Prospect> newcomers() {
    return Collections.unmodifiableSortedMap(newcomers);
  }

  private Prospect draw(int p, Set<Plastic> kept, Use endless, Use asItIs) {
    Plastic plastic = plastics.values().get(p);
    return new Prospect(
        plastic,
        new Pieces(pieces[p]),
        performance.colour(plastic.colour()),
        kept.contains(plastic),
        endless,
        asItIs);
  }

  public Horizon horizon() {
    return horizon;
  }

  /**
   * The pieces of a plastic that 95 trips of 100 like these need no more than, its tray being
   * endless; 0 where nothing is known of it.
   */
  public int carry(Plastic plastic) {
    return prospect(plastic).map(p -> p.endless().distribution().quantile(CARRIED)).orElse(0);
  }

  /** What the log says of the colours. */
  public Performance performance() {
    return performance;
  }

  /** Whether there was no log, and pieces a rod-hour are the setting's. */
  public boolean useAssumed() {
    return losses.assumed();
  }

  /** Every plastic the book or the log speaks of. */
  public SortedMap<Plastic, Prospect> prospects() {
    return Collections.unmodifiableSortedMap(prospects);
  }

  /** What is ahead of {@code plastic}; empty if neither the book nor the log speaks of it. */
  public Optional<Prospect> prospect(Plastic plastic) {
    return Optional.ofNullable(prospects.get(plastic));
  }

  /**
   * The use of each plastic if more pieces had been bought.
   *
   * @param bought pieces more in the tray
   */
  Map<Plastic, Use> after(Map<Plastic, Integer> bought) {
    int[] more = pieces.clone();
    bought.forEach(
        (plastic, extra) -> {
          OptionalInt p = plastics.find(plastic);
          p.ifPresent(i -> more[i] += extra);
        });
    List<Use> uses = demand.asItIs(more);
    Map<Plastic, Use> after = new HashMap<>();
    for (int p = 0; p < more.length; p++) {
      after.put(plastics.values().get(p), uses.get(p));
    }
    return after;
  }
}
