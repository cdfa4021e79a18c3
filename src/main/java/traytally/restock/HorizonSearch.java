package traytally.restock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import traytally.trip.PlannedTrip;

/**
 * Settles which trips a purchase must last for.
 *
 * @param asOf today
 * @param plan the trips to come, soonest first
 * @param pace the angler's usual pace, if a log tells
 * @param orderEvery days from one order to the next
 * @param delivery days from order to tray
 */
record HorizonSearch(
    LocalDate asOf, List<PlannedTrip> plan, Optional<Pace> pace, int orderEvery, int delivery) {
  HorizonSearch {
    plan = plan.stream().filter(trip -> !trip.date().isBefore(asOf)).sorted().toList();
  }

  Horizon find(Asked asked) {
    if (asked.trips().isPresent()) {
      return forTrips(asked.trips().getAsInt());
    }
    if (asked.until().isPresent()) {
      LocalDate until = asked.until().get();
      return asked(until, "until " + Words.day(until, asOf));
    }
    LocalDate next = asOf.plusDays((long) orderEvery + delivery);
    return until(
        next,
        String.format(
            Locale.ROOT,
            "until %s, when an order made in %d days would be here (%d days' delivery)",
            Words.day(next, asOf),
            orderEvery,
            delivery));
  }

  /** A day the angler named: where the plan ends before it, the usual pace goes on. */
  private Horizon asked(LocalDate to, String why) {
    Horizon planned = until(to, why);
    if (planned.planned() == 0 || pace.isEmpty()) {
      return planned;
    }
    LocalDate last = planned.trips().get(planned.planned() - 1).date();
    List<PlannedTrip> more = pace.get().tripsWithin(last, to);
    if (more.isEmpty()) {
      return planned;
    }
    List<PlannedTrip> trips = new ArrayList<>(planned.trips());
    trips.addAll(more);
    String words =
        Words.plural(planned.planned(), "planned trip")
            + " and "
            + Words.plural(more.size(), "trip")
            + atUsualPace(pace.get())
            + " "
            + why;
    return new Horizon(asOf, to, trips, planned.planned(), words);
  }

  private Horizon until(LocalDate to, String why) {
    List<PlannedTrip> planned = plan.stream().filter(trip -> !trip.date().isAfter(to)).toList();
    if (!planned.isEmpty()) {
      return new Horizon(
          asOf,
          to,
          planned,
          planned.size(),
          Words.plural(planned.size(), "planned trip") + " " + why);
    }
    if (pace.isEmpty()) {
      return new Horizon(asOf, to, List.of(), 0, "no trip planned and none logged, " + why);
    }
    List<PlannedTrip> usual = pace.get().tripsBetween(asOf, to);
    return new Horizon(
        asOf,
        to,
        usual,
        0,
        "no trip planned: "
            + Words.plural(usual.size(), "trip")
            + atUsualPace(pace.get())
            + ", "
            + why);
  }

  private Horizon forTrips(int count) {
    List<PlannedTrip> trips = new ArrayList<>(plan.subList(0, Math.min(count, plan.size())));
    int planned = trips.size();
    String words = Words.plural(planned, "planned trip");
    if (planned < count && pace.isPresent()) {
      LocalDate from = planned == 0 ? asOf : trips.get(planned - 1).date();
      trips.addAll(pace.get().trips(from, count - planned));
      String more = Words.plural(count - planned, "trip") + atUsualPace(pace.get());
      words = planned == 0 ? more : words + " and " + more;
    } else if (planned < count) {
      words += String.format(Locale.ROOT, " of the %d asked for; no log tells of a pace", count);
    }
    LocalDate to = trips.isEmpty() ? asOf : trips.get(trips.size() - 1).date();
    return new Horizon(asOf, to, trips, planned, words);
  }

  private static String atUsualPace(Pace pace) {
    return String.format(
        Locale.ROOT,
        " at your usual pace (one every %s, %.1f rod-hours each)",
        Words.plural(Math.max(1, (int) Math.round(pace.gapDays())), "day"),
        pace.rodHours());
  }
}
