package traytally.bench;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Random;
import java.util.TreeSet;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.simulation.LongLog;
import traytally.store.Box;
import traytally.trip.Clarity;
import traytally.trip.LossCause;
import traytally.trip.PlannedTrip;
import traytally.trip.Stint;

/**
 * A box far fuller than a life fills: a long log of {@code 200 x size} stints with {@code 5 x size}
 * plastics, every second stint losing a piece, and purchases that make it {@code 1,000 x size}
 * movements.
 */
final class LargeBox {
  private static final int STINTS = 200;
  private static final int MOVEMENTS = 1000;
  private static final int PLASTICS_A_COLOUR = 20;
  private static final int PLASTICS = 5;
  private static final long SEED = 20260501;

  private final Random random = new Random(SEED);
  private final List<Movement> movements = new ArrayList<>();
  private final List<Fact> facts = new ArrayList<>();
  private final List<Stint> log;
  private final int size;

  private LargeBox(int size) {
    this.size = size;
    this.log =
        LongLog.of(STINTS * size, Math.max(2, PLASTICS * size / PLASTICS_A_COLOUR), SEED);
  }

  /** Writes one of {@code size} to a file that is not there yet, and returns the day after it. */
  static LocalDate write(Path file, int size) {
    LargeBox large = new LargeBox(size);
    large.buy();
    large.fish();
    LocalDate today = large.last().plusDays(1);
    large.facts.add(
        new Fact.Planned(
            new PlannedTrip(
                today.plusDays(3),
                Name.of("Gull Rocks"),
                Name.of("pollack"),
                Optional.of(Clarity.CLEAR),
                5,
                1,
                ""),
            ""));
    try (Box box = Box.open(file, Clock.fixed(Instant.EPOCH, ZoneOffset.UTC))) {
      box.record(
          new Entry(
              "import", "all", OptionalLong.empty(), large.movements, large.facts, List.of()));
    }
    return today;
  }

  private LocalDate last() {
    return log.get(log.size() - 1).trip().date();
  }

  private void buy() {
    List<Plastic> plastics =
        List.copyOf(new TreeSet<>(log.stream().map(Stint::plastic).toList()));
    LocalDate first = log.get(0).trip().date();
    int days = (int) ChronoUnit.DAYS.between(first, last());
    for (int m = 0; m < (MOVEMENTS - STINTS / 2) * size; m++) {
      boolean opening = m < plastics.size();
      movements.add(
          Movement.of(
              opening ? first : first.plusDays(random.nextInt(days)),
              MovementKind.BOUGHT,
              plastics.get(m % plastics.size()),
              // What is bought first outlasts the log, so that no balance is ever below zero.
              opening ? 10 + STINTS * size / plastics.size() : 1));
    }
  }

  private void fish() {
    int ordinal = 0;
    for (int n = 1; n <= log.size(); n++) {
      Stint stint = log.get(n - 1);
      boolean newTrip = n == 1 || !log.get(n - 2).trip().equals(stint.trip());
      ordinal = newTrip ? 1 : ordinal + 1;
      int lost = n % 2;
      facts.add(new Fact.Fished(losing(stint, lost), n, ordinal, "trips.csv"));
      if (lost > 0) {
        movements.add(
            new Movement(
                stint.trip().date(),
                MovementKind.LOST,
                Optional.of(LossCause.SNAGGED),
                stint.plastic(),
                -lost,
                OptionalLong.of(n),
                false,
                stint.trip().water().text()));
      }
    }
  }

  private static Stint losing(Stint stint, int lost) {
    return new Stint(
        stint.trip(),
        stint.species(),
        stint.clarity(),
        stint.plastic(),
        stint.minutes(),
        stint.casts(),
        stint.fish(),
        lost,
        lost > 0 ? Optional.of(LossCause.SNAGGED) : Optional.empty(),
        0,
        stint.rods(),
        "");
  }
}
