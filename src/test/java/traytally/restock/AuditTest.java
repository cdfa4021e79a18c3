package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Ledger;
import traytally.plastic.Plastic;
import traytally.simulation.SimulatedAngler;

class AuditTest {
  private static final Audit.Watcher NOBODY = (done, of) -> {};

  private static Book logOf(int trips, long seed) {
    SimulatedAngler angler = SimulatedAngler.ordinary(seed);
    angler.fish(trips / 2);
    angler.countBox();
    angler.fish(trips - trips / 2);
    return angler.book(List.of());
  }

  private static LocalDate lastDay(Book book) {
    return book.facts(Fact.Fished.class).stream()
        .map(fished -> fished.stint().trip().date())
        .max(LocalDate::compareTo)
        .orElseThrow();
  }

  @Test
  void forecastsBeatThoseThatOnlySeePastUse() {
    double half = 0;
    double nineTenths = 0;
    double[] others = new double[4];
    double held = 0;
    double said = 0;
    for (long seed = 1; seed <= 5; seed++) {
      Book book = logOf(36, seed);
      Audit.UseScore use = Audit.of(book, lastDay(book), 15, NOBODY).use();
      half += use.own().half();
      nineTenths += use.own().nineTenths();
      others[0] += use.croston().half();
      others[1] += use.croston().nineTenths();
      others[2] += use.average().half();
      others[3] += use.average().nineTenths();
      held += use.held() / 5;
      said += use.heldBySaying() / 5;
    }
    assertTrue(half < others[0] && half < others[2], half + " " + List.of(others[0], others[2]));
    assertTrue(
        nineTenths < others[1] && nineTenths < others[3],
        nineTenths + " " + List.of(others[1], others[3]));
    assertEquals(said, held, 0.06);
  }

  /** Over many anglers, seeds kept back: {@code mvn test -Dslow=true -Dtest=AuditTest}. */
  @Test
  @Tag("slow")
  @EnabledIfSystemProperty(named = "slow", matches = "true")
  void forecastsComeTrueOverManyAnglers() {
    double forecasts = 0;
    double held = 0;
    double[] losses = new double[6]; // own, Croston's, the average's; at 0.5 and 0.9
    double[][] bins = new double[10][3]; // trays, said, came
    for (long seed = 800_001; seed <= 800_016; seed++) {
      Book book = logOf(40, seed);
      Audit audit = Audit.of(book, lastDay(book), 12, NOBODY);
      Audit.UseScore use = audit.use();
      forecasts += use.forecasts();
      held += use.forecasts() * use.held();
      List<Audit.Pinball> all = List.of(use.own(), use.croston(), use.average());
      for (int i = 0; i < all.size(); i++) {
        losses[2 * i] += use.forecasts() * all.get(i).half();
        losses[2 * i + 1] += use.forecasts() * all.get(i).nineTenths();
      }
      for (Audit.Bin bin : audit.runOuts()) {
        double[] sums = bins[(int) Math.round(10 * bin.from())];
        sums[0] += bin.trays();
        sums[1] += bin.trays() * bin.said();
        sums[2] += bin.trays() * bin.came();
      }
    }
    String found = held / forecasts + " " + Arrays.toString(losses) + Arrays.deepToString(bins);
    assertEquals(0.92, held / forecasts, 0.04, found);
    assertTrue(losses[0] < losses[2] && losses[0] < losses[4], found);
    assertTrue(losses[1] < losses[3] && losses[1] < losses[5], found);
    for (double[] bin : bins) {
      if (bin[0] > 100) {
        assertEquals(bin[1] / bin[0], bin[2] / bin[0], 0.08, found);
      }
    }
  }

  @Test
  void runOutChancesComeAboutAsOftenAsTheySay() {
    double said = 0;
    double came = 0;
    for (long seed = 1; seed <= 5; seed++) {
      Book book = logOf(36, seed);
      for (Audit.Bin bin : Audit.of(book, lastDay(book), 12, NOBODY).runOuts()) {
        said += bin.trays() * bin.said();
        came += bin.trays() * bin.came();
      }
    }
    assertTrue(came > 10, said + " and " + came);
    assertEquals(1, said / came, 0.35, said + " and " + came);
  }

  @Test
  void whatCameLaterDoesNotChangeWhatWasForetold() {
    Book whole = logOf(40, 7);
    LocalDate end = lastDay(whole).minusDays(60);
    Book early =
        new Book(
            whole.batches(),
            new Ledger(
                whole.ledger().movements().stream()
                    .filter(m -> !m.what().date().isAfter(end))
                    .toList()),
            whole.facts().stream()
                .filter(
                    f ->
                        !(f.what() instanceof Fact.Fished fished)
                            || !fished.stint().trip().date().isAfter(end))
                .collect(Collectors.toList()),
            whole.settings(),
            whole.nextStint());
    assertEquals(Audit.of(early, end, 10, NOBODY).use(), Audit.of(whole, end, 10, NOBODY).use());
  }

  @Test
  void everyTripIsReplayedAndSaid() {
    Book book = logOf(30, 3);
    List<String> heard = new ArrayList<>();
    Audit audit = Audit.of(book, lastDay(book), 8, (done, of) -> heard.add(done + "/" + of));
    assertEquals(8, audit.trips());
    assertEquals("1/8", heard.get(0));
    assertEquals("8/8", heard.get(7));
    assertEquals(8, heard.size());
  }

  @Test
  void aLogTooShortIsNotReplayed() {
    Book book = logOf(4, 3);
    Audit audit = Audit.of(book, lastDay(book), 8, NOBODY);
    assertEquals(0, audit.trips());
    assertEquals(0, audit.use().forecasts());
  }

  /** By hand: 3 after 3 trips, then 2 after 2: sizes 3 and 3 + 0.1 (2 − 3), intervals alike. */
  @Test
  void crostonSmoothsSizesAndIntervalsByThemselves() {
    assertEquals(1.0, Croston.perTrip(List.of(0, 0, 3, 0, 2)), 1e-12);
    assertEquals(3.0 / 4, Croston.perTrip(List.of(0, 0, 0, 3)), 1e-12);
    assertEquals((4 + 0.1 * 2) / (1 + 0.1 * 3), Croston.perTrip(List.of(4, 0, 0, 0, 6)), 1e-12);
    assertEquals(0, Croston.perTrip(List.of(0, 0)), 1e-12);
  }

  /** By hand: each of the last trips fishes a new plastic, and two trips lie in each horizon. */
  @Test
  void whatWasNewThenIsCountedBesideTheForecasts() {
    BoxBuilder box = new BoxBuilder();
    Plastic old = Plastic.of("", "craw", "ink", 75);
    for (int trip = 0; trip < 8; trip++) {
      LocalDate date = BoxBuilder.daysAgo(20 * (8 - trip));
      box.fished(date, old, 60, 1, 1);
      if (trip >= 5) {
        box.fished(date, Plastic.of("", "craw", "new " + trip, 75), 60, 1, 2);
      }
    }
    Audit audit = Audit.of(box.book(), BoxBuilder.TODAY, 10, NOBODY);
    assertEquals(2, audit.trips());
    assertEquals(2 * 2 * 2, audit.use().newcomers());
  }
}
