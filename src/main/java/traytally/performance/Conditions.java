package traytally.performance;

import java.time.Month;
import java.util.Optional;
import traytally.plastic.Name;
import traytally.trip.Clarity;
import traytally.trip.PlannedTrip;
import traytally.trip.Season;

/**
 * The conditions that trust is asked for; what is left open is taken as the log's hours had it.
 *
 * @param species the fish; blank if left open
 * @param clarity of the water
 * @param month of the year
 */
public record Conditions(Name species, Optional<Clarity> clarity, Optional<Month> month) {
  /** Nothing in particular. */
  public static final Conditions ANY =
      new Conditions(Name.BLANK, Optional.empty(), Optional.empty());

  /** What a planned trip says of itself. */
  public static Conditions of(PlannedTrip plan) {
    return new Conditions(plan.species(), plan.clarity(), Optional.of(plan.date().getMonth()));
  }

  /** Whether nothing is asked for. */
  public boolean isAny() {
    return equals(ANY);
  }

  /** Whether a turn was fished under them. */
  boolean fit(Turn turn, boolean southern) {
    return (species.isBlank() || turn.species().equals(species))
        && (clarity.isEmpty() || turn.clarity().equals(clarity))
        && month
            .map(m -> Season.of(m, southern))
            .filter(season -> season != Season.of(turn.trip().date().getMonth(), southern))
            .isEmpty();
  }

  /** The level asked for of one side of the conditions. */
  Optional<String> level(Context context, boolean southern) {
    return switch (context) {
      case SPECIES -> Optional.of(species).filter(s -> !s.isBlank()).map(Name::key);
      case CLARITY -> clarity.map(Clarity::word);
      case SEASON -> month.map(m -> Season.of(m, southern).word());
    };
  }
}
