package traytally.performance;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Fish;
import traytally.trip.Stint;
import traytally.trip.Trip;

/** A log written down stint by stint. */
final class Stints {
  static final LocalDate FIRST_DAY = LocalDate.of(2025, 5, 1);

  private final List<Stint> log = new ArrayList<>();

  /** A stint on day {@code day}, with the paddle in one length. */
  Stints on(int day, String colour, double minutes, int takes) {
    return add(day, Plastic.of("", "paddle", colour, 75), OptionalDouble.of(minutes), takes);
  }

  /** Two stints of one day, the first named first on every other day. */
  Stints inTurn(
      int day, String one, double its, int takes, String other, double itsMinutes, int itsTakes) {
    return day % 2 == 0
        ? on(day, one, its, takes).on(day, other, itsMinutes, itsTakes)
        : on(day, other, itsMinutes, itsTakes).on(day, one, its, takes);
  }

  Stints add(int day, Plastic plastic, OptionalDouble minutes, int takes) {
    log.add(
        new Stint(
            new Trip(FIRST_DAY.plusDays(day), Name.of("Gull Rocks")),
            Name.BLANK,
            Optional.empty(),
            plastic,
            minutes,
            OptionalInt.empty(),
            new Fish(takes + 1, takes, takes / 2, takes / 4),
            1,
            Optional.empty(),
            0,
            1,
            ""));
    return this;
  }

  List<Stint> log() {
    return List.copyOf(log);
  }

  Performance performance() {
    return Performance.of(
        log, LogReading.plain(1), Measure.TAKES, new StandingRule(0.8, 0.65, 0.1));
  }
}
