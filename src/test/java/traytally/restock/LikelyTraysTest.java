package traytally.restock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.restock.BoxBuilder.TODAY;
import static traytally.restock.BoxBuilder.daysAgo;

import java.util.List;
import org.junit.jupiter.api.Test;
import traytally.ledger.Book;
import traytally.ledger.MovementKind;
import traytally.performance.Levels;
import traytally.performance.Turn;
import traytally.plastic.Plastic;
import traytally.simulation.SimulatedAngler;
import traytally.trip.Stint;

class LikelyTraysTest {
  private static final Plastic A = Plastic.of("", "craw", "ink", 75);
  private static final Plastic B = Plastic.of("", "paddle", "olive", 75);
  private static final Plastic C = Plastic.of("", "shrimp", "rust", 75);

  private record Past(Levels<Plastic> plastics, List<Outing> outings, LikelyTrays trays) {
    static Past of(Book book, List<Plastic> plastics) {
      List<Stint> log = book.log(TODAY.plusYears(9));
      List<Turn> turns = Turn.of(log, 1);
      Levels<Plastic> levels = new Levels<>(plastics);
      List<Outing> outings = Outing.of(turns, log);
      TrayHistory history = new TrayHistory(book, turns, plastics, TODAY.plusYears(9));
      return new Past(levels, outings, new LikelyTrays(levels, outings, turns, history));
    }

    double had(int outing, Plastic plastic) {
      return trays.parts(outings)[outing][plastics.of(plastic)];
    }
  }

  /** By hand: one turn, ended by its last piece, would have gone on all day. */
  @Test
  void aTurnThatTookTheLastPieceIsCountedAsIfItHadGoneOn() {
    BoxBuilder box =
        new BoxBuilder()
            .counted(daysAgo(5), A, 1)
            .counted(daysAgo(5), B, 9)
            .fished(TODAY, A, 60, 0, 1)
            .moved(TODAY, MovementKind.LOST, A, -1)
            .fished(TODAY, B, 60, 0, 0);
    Past past = Past.of(box.book(), List.of(A, B));
    assertEquals(0.5, past.had(0, A));
    Outing longer = past.trays().goneOn().get(0);
    assertEquals(1 / 1.5, longer.share().get(A), 1e-12);
    assertEquals(0.5 / 1.5, longer.share().get(B), 1e-12);
    assertEquals(1 / 1.5, past.trays().parts(List.of(longer))[0][0], 1e-12);
  }

  /**
   * By hand: of three turns the first took the last piece and the last was ended by the day; one
   * turn to a trip ended by choice. Two thirds of the day were left: 1 − exp(−2/3) of a turn more.
   */
  @Test
  void aTurnGoesOnForAsLongAsTurnsLast() {
    BoxBuilder box = new BoxBuilder().counted(daysAgo(5), A, 1).counted(daysAgo(5), B, 9);
    box.counted(daysAgo(5), C, 9).fished(TODAY, A, 60, 0, 1);
    box.moved(TODAY, MovementKind.LOST, A, -1);
    box.fished(TODAY, B, 60, 0, 0).fished(TODAY, C, 60, 0, 0);
    Outing longer = Past.of(box.book(), List.of(A, B, C)).trays().goneOn().get(0);
    double more = 1 - Math.exp(-2 / 3.0);
    assertEquals((1 / 3.0 + more) / (1 + more), longer.share().get(A), 1e-12);
    assertEquals(1 / 3.0 / (1 + more), longer.share().get(C), 1e-12);
  }

  @Test
  void beforeTheFirstCountATrayIsGuessedFromWhenItWasFished() {
    BoxBuilder box = new BoxBuilder().counted(TODAY, A, 0).counted(TODAY, B, 50);
    for (int trip = 0; trip < 24; trip++) {
      box.fished(daysAgo(100 - trip), B, 60, 0, 0);
      if (trip < 12 && trip % 3 < 2) {
        box.fished(daysAgo(100 - trip), A, 60, 0, trip == 10 ? 3 : 0);
      }
    }
    Past past = Past.of(box.counted(TODAY, C, 0).book(), List.of(A, B, C));
    assertEquals(1, past.had(0, A), 1e-9);
    assertTrue(past.had(2, A) > 0.95, "left alone for a day: " + past.had(2, A));
    assertTrue(past.had(14, A) < 0.1, "gone with the last losses: " + past.had(14, A));
    assertTrue(past.had(14, C) < 0.3, "never fished, empty when counted: " + past.had(14, C));
    assertEquals(1, past.had(23, B), 1e-9);
  }

  /**
   * Eight anglers of 60 trips, seeds 61 to 68: what the ledger would have known, had the box been
   * counted on the first day, must have come about as often as is guessed without it.
   */
  @Test
  void guessesComeTrueAsOftenAsTheySay() {
    double said = 0;
    double came = 0;
    double trays = 0;
    double miss = 0;
    double missOfFull = 0;
    for (long seed = 61; seed <= 68; seed++) {
      SimulatedAngler counted = SimulatedAngler.ordinary(seed);
      counted.countBox();
      counted.fish(60);
      SimulatedAngler blind = SimulatedAngler.ordinary(seed);
      blind.fish(60);
      blind.countBox();
      Past truth = Past.of(counted.book(List.of()), counted.plastics());
      Past guess = Past.of(blind.book(List.of()), blind.plastics());
      for (int t = 0; t < truth.outings().size(); t++) {
        for (Plastic plastic : counted.plastics()) {
          if (!truth.outings().get(t).share().containsKey(plastic)) {
            double chance = guess.had(t, plastic);
            double had = truth.had(t, plastic);
            said += chance;
            came += had;
            trays++;
            miss += (chance - had) * (chance - had);
            missOfFull += (1 - had) * (1 - had);
          }
        }
      }
    }
    String found =
        said / trays + " " + came / trays + " " + miss / trays + " " + missOfFull / trays;
    assertEquals(came / trays, said / trays, 0.03, found);
    assertTrue(miss < 0.65 * missOfFull, found);
  }
}
