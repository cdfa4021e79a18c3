package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.simulation.SimulatedAngler;
import traytally.trip.Fish;
import traytally.trip.Season;
import traytally.trip.Stint;
import traytally.trip.Trip;

/** What must not matter to trust does not: labels of days, a stint noted in two parts, names. */
class InvarianceTest {
  private static List<Stint> log(long seed) {
    SimulatedAngler angler = SimulatedAngler.ordinary(seed);
    angler.fish(40);
    return angler.log();
  }

  private static Map<Name, Trust> trusts(List<Stint> log) {
    Map<Name, Trust> trusts = new TreeMap<>();
    Performance.of(log, LogReading.plain(1), Measure.TAKES, new StandingRule(0.8, 0.65, 0.1))
        .by(Grain.COLOUR)
        .forEach(trust -> trusts.put(trust.colour().orElseThrow(), trust));
    return trusts;
  }

  private static void same(
      Map<Name, Trust> expected, Map<Name, Trust> actual, UnaryOperator<Name> renamed) {
    assertEquals(expected.size(), actual.size());
    expected.forEach(
        (name, trust) -> {
          Trust other = actual.get(renamed.apply(name));
          assertEquals(trust.trust(), other.trust(), 1e-4, name.text());
          assertEquals(trust.rateRatio(), other.rateRatio(), 1e-4, name.text());
          assertEquals(trust.standing(), other.standing());
        });
  }

  private static Stint with(Stint stint, Trip trip, Plastic plastic, double minutes, Fish fish) {
    return new Stint(
        trip,
        stint.species(),
        stint.clarity(),
        plastic,
        OptionalDouble.of(minutes),
        OptionalInt.empty(),
        fish,
        stint.lost(),
        stint.lostHow(),
        stint.worn(),
        stint.rods(),
        stint.note());
  }

  /** The dates are dealt anew within a season, so that only the labels change. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void labelsOfDaysDoNotMatter(long seed) {
    List<Stint> log = log(seed);
    List<Trip> trips = new ArrayList<>(log.stream().map(Stint::trip).distinct().toList());
    Map<String, List<Trip>> bySeason = new TreeMap<>();
    trips.forEach(
        trip ->
            bySeason
                .computeIfAbsent(
                    Season.of(trip.date().getMonth(), false).word(), s -> new ArrayList<>())
                .add(trip));
    Map<Trip, Trip> dealt = new TreeMap<>();
    bySeason
        .values()
        .forEach(
            some -> {
              List<Trip> other = new ArrayList<>(some);
              Collections.shuffle(other, new Random(seed));
              for (int i = 0; i < some.size(); i++) {
                dealt.put(some.get(i), other.get(i));
              }
            });
    List<Stint> relabelled =
        log.stream()
            .map(
                s ->
                    with(
                        s,
                        dealt.getOrDefault(s.trip(), s.trip()),
                        s.plastic(),
                        s.minutes().orElseThrow(),
                        s.fish()))
            .toList();
    same(trusts(log), trusts(relabelled), name -> name);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void aStintInTwoPartsIsOne(long seed) {
    List<Stint> parts = new ArrayList<>();
    for (Stint s : log(seed)) {
      double minutes = s.minutes().orElseThrow();
      int first = s.fish().takes() / 2;
      int rest = s.fish().takes() - first;
      parts.add(with(s, s.trip(), s.plastic(), minutes * 0.3, new Fish(first, first, 0, 0)));
      parts.add(with(s, s.trip(), s.plastic(), minutes * 0.7, new Fish(rest, rest, 0, 0)));
    }
    same(trusts(log(seed)), trusts(parts), name -> name);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void namesOfColoursDoNotMatter(long seed) {
    UnaryOperator<Name> renamed = name -> Name.of(new StringBuilder(name.text()).reverse() + "ish");
    List<Stint> other =
        log(seed).stream()
            .map(
                s ->
                    with(
                        s,
                        s.trip(),
                        new Plastic(
                            s.plastic().maker(),
                            s.plastic().body(),
                            renamed.apply(s.plastic().colour()),
                            s.plastic().lengthMm()),
                        s.minutes().orElseThrow(),
                        s.fish()))
            .toList();
    same(trusts(log(seed)), trusts(other), renamed);
  }

  /** The test above can fail: another take is another trust. */
  @Test
  void whatWasCaughtMatters() {
    List<Stint> log = log(1);
    List<Stint> other = new ArrayList<>(log);
    Stint first = log.get(0);
    other.set(0, with(first, first.trip(), first.plastic(), 30, new Fish(9, 9, 0, 0)));
    Name colour = first.plastic().colour();
    double before = trusts(log).get(colour).trust();
    double after = trusts(other).get(colour).trust();
    assertNotEquals(before, after, 1e-3);
  }
}
