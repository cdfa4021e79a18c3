package traytally.performance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import traytally.numeric.Gaussian;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Tone;
import traytally.plastic.Worded;

/**
 * What to tie on, on one trip: first, next, and one to try.
 *
 * @param picks in the order to tie them on; what would be among them but is gone comes last
 */
public record LineUp(List<Pick> picks) {
  /** Changes of tone after the first: more than an angler makes on one day (assumption). */
  private static final int MOST_NEXT = 3;

  /** One to try needs a spare: the first cast may cost it. */
  private static final int LEAST_TO_TRY = 2;

  private static final int DRAWS = 2000;
  private static final long SEED = 20_260_501;

  /** Chances of being the best are told apart to a hundredth; below that the guide decides. */
  private static final double HUNDREDTH = 0.01;

  /** What a plastic is taken along for. */
  public enum Role implements Worded {
    FIRST,
    NEXT,
    TRY,
    /** It would be first or next, but the tray is empty. */
    GONE;
  }

  /**
   * A plastic that could be taken.
   *
   * @param pieces in the tray
   * @param kept whether the angler vouches for it by hand
   * @param tone of its colour, if its look is known
   * @param leaning of the starting guide towards that tone; it settles ties only
   */
  public record Candidate(
      Plastic plastic, int pieces, boolean kept, Optional<Tone> tone, int leaning) {}

  /**
   * A choice.
   *
   * @param trust of the colour under the trip's conditions
   * @param advantage θ of the whole plastic, body and length too
   * @param best for one to try, the chance that it is the best of all of its kind
   */
  public record Pick(
      Role role, Candidate candidate, Trust trust, Gaussian advantage, OptionalDouble best) {

    /** How many times the mean's fish the whole plastic has in the same time. */
    public double rateRatio() {
      return Math.exp(advantage.mean());
    }

    /** Whether the log or the angler's word speaks for it. */
    public boolean proven() {
      return candidate.kept()
          || trust.standing() == Standing.TRUSTED
          || trust.standing() == Standing.PROMISING;
    }

    private Pick as(Role other, OptionalDouble chance) {
      return new Pick(other, candidate, trust, advantage, chance);
    }
  }

  private static final Comparator<Pick> BEST_FIRST =
      Comparator.comparingDouble((Pick pick) -> pick.advantage().mean())
          .thenComparingInt(pick -> pick.candidate().leaning())
          .thenComparingInt(pick -> pick.candidate().pieces())
          .reversed()
          .thenComparing(pick -> pick.candidate().plastic());

  public LineUp {
    picks = List.copyOf(picks);
  }

  /** Lines up the candidates by what a log says under the conditions of the trip. */
  public static LineUp of(Performance performance, List<Candidate> candidates) {
    Map<Plastic, Gaussian> advantages =
        performance.advantages(candidates.stream().map(Candidate::plastic).toList());
    List<Pick> all = new ArrayList<>();
    for (Candidate candidate : candidates) {
      Trust trust = performance.colour(candidate.plastic().colour());
      Gaussian own = advantages.getOrDefault(candidate.plastic(), trust.advantage());
      all.add(new Pick(Role.NEXT, candidate, trust, own, OptionalDouble.empty()));
    }
    all.sort(BEST_FIRST);
    List<Pick> inTray = all.stream().filter(pick -> pick.candidate().pieces() > 0).toList();
    List<Pick> picks = new ArrayList<>(firstAndNext(inTray));
    toTry(performance, inTray, picks).ifPresent(picks::add);
    for (Pick wanted : firstAndNext(all)) {
      if (wanted.candidate().pieces() == 0 && wanted.proven()) {
        picks.add(wanted.as(Role.GONE, OptionalDouble.empty()));
      }
    }
    return new LineUp(picks);
  }

  /** The best, proven if any is; then the proven, each a real change of tone. */
  private static List<Pick> firstAndNext(List<Pick> bestFirst) {
    List<Pick> picks = new ArrayList<>();
    bestFirst.stream()
        .filter(Pick::proven)
        .findFirst()
        .or(() -> bestFirst.stream().findFirst())
        .ifPresent(first -> picks.add(first.as(Role.FIRST, OptionalDouble.empty())));
    Set<Object> tones = new HashSet<>();
    picks.forEach(first -> tones.add(tone(first)));
    for (Pick pick : bestFirst) {
      if (pick.proven() && picks.size() <= MOST_NEXT && tones.add(tone(pick))) {
        picks.add(pick);
      }
    }
    return picks;
  }

  /** A colour whose look nobody knows is a tone of its own. */
  private static Object tone(Pick pick) {
    Name colour = pick.candidate().plastic().colour();
    return pick.candidate().tone().<Object>map(tone -> tone).orElse(colour);
  }

  /** Of the unproven with a spare, the one most likely to be the best of them. */
  private static Optional<Pick> toTry(
      Performance performance, List<Pick> inTray, List<Pick> taken) {
    Set<Name> colours = new HashSet<>();
    taken.forEach(pick -> colours.add(pick.candidate().plastic().colour()));
    List<Pick> unproven =
        inTray.stream()
            .filter(pick -> !pick.proven() && pick.trust().standing() == Standing.UNPROVEN)
            .filter(pick -> pick.candidate().pieces() >= LEAST_TO_TRY)
            .filter(pick -> !colours.contains(pick.candidate().plastic().colour()))
            .toList();
    List<Plastic> plastics = unproven.stream().map(pick -> pick.candidate().plastic()).toList();
    double[] best = new double[unproven.size()];
    if (!unproven.isEmpty()) {
      double[][] draws = performance.drawRates(plastics, DRAWS, SEED);
      for (double[] rates : draws) {
        int highest = 0;
        for (int p = 1; p < rates.length; p++) {
          highest = rates[p] > rates[highest] ? p : highest;
        }
        best[highest] += 1.0 / draws.length;
      }
    }
    List<Pick> drawn = new ArrayList<>();
    for (int p = 0; p < best.length; p++) {
      drawn.add(unproven.get(p).as(Role.TRY, OptionalDouble.of(best[p])));
    }
    return drawn.stream()
        .max(
            Comparator.comparingLong((Pick pick) -> Math.round(pick.best().orElse(0) / HUNDREDTH))
                .thenComparingInt(pick -> pick.candidate().leaning())
                .thenComparing(BEST_FIRST.reversed()));
  }
}
