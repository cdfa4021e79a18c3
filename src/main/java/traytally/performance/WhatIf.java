package traytally.performance;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.trip.Fish;
import traytally.trip.Trip;

/**
 * The days that would change what a log says of a colour, found by fitting the log with them added.
 *
 * <p>Each such day fishes the colour and the most fished other one for an hour each.
 *
 * @param days how many of them
 * @param takes the colour's takes on each
 * @param other the other colour
 * @param othersTakes its takes on each: its usual number, one at least
 * @param now the standing without them
 * @param then the standing with them
 */
public record WhatIf(
    int days, int takes, Name other, int othersTakes, Standing now, Standing then) {
  /** Numbers of days tried; with more, anything could be said. */
  private static final int[] TRIED = {1, 2, 3, 4, 6, 8};

  /**
   * Days with twice the other colour's takes that would make a colour trusted, or days without a
   * take that would end its being so; empty where eight such days would not.
   */
  public static Optional<WhatIf> of(Performance performance, Name colour) {
    Standing now = performance.colour(colour).standing();
    boolean up = now != Standing.TRUSTED;
    Optional<Turn> own = latest(performance, colour);
    Optional<Name> other = mostFished(performance, colour);
    if (own.isEmpty() || other.isEmpty()) {
      return Optional.empty();
    }
    Turn beside = latest(performance, other.get()).orElseThrow();
    double rate = performance.colour(other.get()).evidence().rawPerHour().orElse(0);
    int usual = Math.max(1, (int) Math.round(rate));
    int takes = up ? 2 * usual : 0;
    for (int days : TRIED) {
      List<Turn> added = new ArrayList<>();
      for (int day = 1; day <= days; day++) {
        int place = day % 2 == 1 ? 1 : 2; // first in turn, so that the order tells nothing
        added.add(hour(performance, own.get(), own.get(), day, place, takes));
        added.add(hour(performance, beside, own.get(), day, 3 - place, usual));
      }
      Standing then = performance.supposing(added).colour(colour).standing();
      if (up == (then == Standing.TRUSTED)) {
        return Optional.of(new WhatIf(days, takes, other.get(), usual, now, then));
      }
    }
    return Optional.empty();
  }

  /** An hour with a plastic, after the log's last day, under the conditions it was last fished. */
  private static Turn hour(
      Performance performance, Turn what, Turn like, int day, int place, int takes) {
    LocalDate after = lastDay(performance).plusDays(day);
    return new Turn(
        new Trip(after, like.trip().water()),
        what.plastic(),
        like.species(),
        like.clarity(),
        place,
        60,
        new Fish(takes, takes, takes, takes),
        0,
        0);
  }

  private static LocalDate lastDay(Performance performance) {
    return performance.turns().stream()
        .map(turn -> turn.trip().date())
        .max(Comparator.naturalOrder())
        .orElseThrow();
  }

  private static Optional<Turn> latest(Performance performance, Name colour) {
    return performance.turns().stream()
        .filter(turn -> turn.plastic().colour().equals(colour) && turn.rodMinutes() > 0)
        .reduce((a, b) -> b);
  }

  private static Optional<Name> mostFished(Performance performance, Name but) {
    Map<Name, Double> minutes = new HashMap<>();
    for (Turn turn : performance.turns()) {
      Plastic plastic = turn.plastic();
      if (!plastic.colour().equals(but) && turn.rodMinutes() > 0) {
        minutes.merge(plastic.colour(), turn.rodMinutes(), Double::sum);
      }
    }
    return minutes.entrySet().stream()
        .max(
            Map.Entry.<Name, Double>comparingByValue()
                .thenComparing(Map.Entry.<Name, Double>comparingByKey().reversed()))
        .map(Map.Entry::getKey);
  }
}
