package traytally.intake;

import java.util.HashMap;
import java.util.Map;
import traytally.plastic.Plastic;
import traytally.trip.Trip;

/** Keeps equal values once: a long log repeats trips, plastics and numbers over and over. */
final class Repeats {
  private final Map<Trip, Trip> trips = new HashMap<>();
  private final Map<Plastic, Plastic> plastics = new HashMap<>();
  private final Map<Object, Object> met = new HashMap<>();

  /** The trip itself, or one met before that is equal and spelt alike. */
  Trip once(Trip trip) {
    Trip before = trips.computeIfAbsent(trip, t -> t);
    return before.water().text().equals(trip.water().text()) ? before : trip;
  }

  /** The plastic itself, or one met before that is equal and spelt alike. */
  Plastic once(Plastic words) {
    Plastic before = plastics.computeIfAbsent(words, w -> w);
    boolean alike =
        before.body().text().equals(words.body().text())
            && before.colour().text().equals(words.colour().text())
            && before.maker().text().equals(words.maker().text());
    return alike ? before : words;
  }

  /** The value itself, or one equal to it that was met before. */
  @SuppressWarnings("unchecked") // what is equal is of one class
  <T> T once(T value) {
    return (T) met.computeIfAbsent(value, v -> v);
  }
}
