package traytally.performance;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashSet;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What was seen of a colour, plastic or body.
 *
 * @param days dates it was fished
 * @param daysWithTakes dates it had a take
 * @param minutes rod-minutes
 * @param counted fish by the measure asked for
 * @param lost pieces lost
 */
public record Evidence(
    int days,
    int daysWithTakes,
    double minutes,
    long follows,
    long takes,
    long hooked,
    long landed,
    long counted,
    long lost) {
  public static final Evidence NONE = new Evidence(0, 0, 0, 0, 0, 0, 0, 0, 0);

  static Evidence of(Collection<Turn> turns, Measure measure) {
    Set<LocalDate> days = new HashSet<>();
    Set<LocalDate> withTakes = new HashSet<>();
    double minutes = 0;
    long[] sums = new long[6];
    for (Turn turn : turns) {
      days.add(turn.trip().date());
      if (turn.fish().takes() > 0) {
        withTakes.add(turn.trip().date());
      }
      minutes += turn.rodMinutes();
      sums[0] += turn.fish().follows();
      sums[1] += turn.fish().takes();
      sums[2] += turn.fish().hooked();
      sums[3] += turn.fish().landed();
      sums[4] += measure.of(turn.fish());
      sums[5] += turn.lost();
    }
    return new Evidence(
        days.size(),
        withTakes.size(),
        minutes,
        sums[0],
        sums[1],
        sums[2],
        sums[3],
        sums[4],
        sums[5]);
  }

  /** Fish by the measure in a rod-hour; empty where no time was fished. */
  public OptionalDouble rawPerHour() {
    return minutes > 0 ? OptionalDouble.of(counted / (minutes / 60)) : OptionalDouble.empty();
  }
}
