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
import traytally.ledger.MovementKind;
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

  private static final Plastic CRAW = Plastic.of("", "craw", "ink", 75);

  /** Two pieces are lost on every other of the eight trips, three weeks apart; two are replayed. */
  private static BoxBuilder everyOtherTrip(double lateMinutes) {
    BoxBuilder box = new BoxBuilder();
    for (int days = 160; days > 0; days -= 20) {
      double minutes = days <= 40 ? lateMinutes : 60;
      box.fished(BoxBuilder.daysAgo(days), CRAW, minutes, 1, days % 40 == 0 ? 2 : 0);
    }
    return box;
  }

  private static BoxBuilder lost(BoxBuilder box, int pieces, int... daysAgo) {
    for (int days : daysAgo) {
      box.moved(BoxBuilder.daysAgo(days), MovementKind.LOST, CRAW, -pieces);
    }
    return box;
  }

  private static Audit audit(BoxBuilder box) {
    return Audit.of(box.book(), BoxBuilder.TODAY, 9, NOBODY);
  }

  /**
   * By hand: in each horizon lie two trips that use 2. The mean of the trips before is 1.2, then 1:
   * 2.4 and 2 for two, of which a Poisson count has the quantiles 2 and 4. Croston's sizes are 2,
   * his intervals 1 + 0.1 and 1.1 + 0.09: 2 / 1.19 a trip, 3.36 for two, with quantiles 3 and 6.
   */
  @Test
  void forecastsOfOneTrayAreScoredTripByTrip() {
    BoxBuilder box = everyOtherTrip(60).counted(BoxBuilder.daysAgo(200), CRAW, 20);
    Audit audit = audit(lost(box, 2, 160, 120, 80, 40));
    Audit.UseScore use = audit.use();
    assertEquals(2, use.forecasts());
    assertEquals(4, use.used());
    assertEquals(0, use.newcomers());
    assertEquals(0, use.average().half(), 1e-12);
    assertEquals(0.2, use.average().nineTenths(), 1e-12);
    assertEquals(0.5, use.croston().half(), 1e-12);
    assertEquals(0.4, use.croston().nineTenths(), 1e-12);
    assertEquals(2, audit.runOuts().stream().mapToInt(Audit.Bin::trays).sum());
    assertEquals(0, audit.runOuts().stream().mapToDouble(Audit.Bin::came).sum());
  }

  /** One piece is left before the replay, and it goes: more cannot, whatever the log says. */
  @Test
  void trayThatEmptiedIsScoredByWhatItHeld() {
    BoxBuilder box = everyOtherTrip(60).counted(BoxBuilder.daysAgo(200), CRAW, 7);
    Audit audit = audit(lost(lost(box, 2, 160, 120, 80), 1, 40));
    assertEquals(2, audit.use().used());
    assertEquals(new Audit.Pinball(0, 0), audit.use().average());
    assertEquals(2, audit.runOuts().stream().mapToDouble(b -> b.trays() * b.came()).sum(), 1e-9);
  }

  /** Six pieces could go in each horizon; whether the tray would have emptied nobody can tell. */
  @Test
  void whatWasBoughtMeanwhileCouldGoToo() {
    BoxBuilder box = everyOtherTrip(60).counted(BoxBuilder.daysAgo(200), CRAW, 7);
    box.moved(BoxBuilder.daysAgo(30), MovementKind.BOUGHT, CRAW, 5);
    Audit audit = audit(lost(lost(box, 2, 160, 120, 80), 1, 40));
    assertEquals(4, audit.use().used());
    assertEquals(0.4, audit.use().croston().nineTenths(), 1e-12);
    assertEquals(List.of(), audit.runOuts());
  }

  @Test
  void trayNobodyCountedNeverEmpties() {
    Audit audit = audit(everyOtherTrip(60));
    assertEquals(2, audit.use().forecasts());
    assertEquals(4, audit.use().used());
    assertEquals(List.of(), audit.runOuts());
  }

  @Test
  void whatNobodyCountedAndNobodyFishedForAYearIsNotInUse() {
    BoxBuilder box = everyOtherTrip(60);
    box.fished(BoxBuilder.daysAgo(500), Plastic.of("", "eel", "rust", 150), 60, 1, 1);
    Audit audit = audit(box);
    assertEquals(3, audit.trips());
    assertEquals(3, audit.use().forecasts());
  }

  /** The trips after the eve are four times as long, and nothing else differs. */
  @Test
  void tripsThenMadeAreThePlan() {
    double usual =
        Audit.of(everyOtherTrip(60).book(), BoxBuilder.TODAY, 1, NOBODY).use().forecast();
    double longer =
        Audit.of(everyOtherTrip(240).book(), BoxBuilder.TODAY, 1, NOBODY).use().forecast();
    assertTrue(usual > 0.5, "forecast " + usual);
    assertEquals(4 * usual, longer, 1e-9);
  }

  /** Ink is trusted by the first eve, and had thrice the takes in its hours on all days after. */
  @Test
  void colourCalledTrustedIsFollowed() {
    BoxBuilder box = new BoxBuilder();
    for (int days = 200; days > 0; days -= 10) {
      box.fished(BoxBuilder.daysAgo(days), CRAW, 60, 6, 0);
      box.fished(BoxBuilder.daysAgo(days), Plastic.of("", "craw", "sand", 75), 60, 2, 0);
    }
    Audit.Calls calls = Audit.of(box.book(), BoxBuilder.TODAY, 3, NOBODY).calls();
    assertEquals(1, calls.colours());
    assertEquals(1, calls.held());
    assertEquals(1, calls.trustedNow());
    assertEquals(3, calls.ratio().orElseThrow(), 1e-9);
  }
}
