package traytally.performance;

import java.time.Month;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
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

  /** Each fish, clarity and season of a log by itself, where it has two of the kind at least. */
  static List<Conditions> each(List<Turn> fished, boolean southern) {
    Set<Conditions> species = new LinkedHashSet<>();
    Set<Conditions> clarities = new LinkedHashSet<>();
    Map<Season, Conditions> seasons = new TreeMap<>();
    for (Turn turn : fished) {
      if (!turn.species().isBlank()) {
        species.add(new Conditions(turn.species(), Optional.empty(), Optional.empty()));
      }
      turn.clarity()
          .ifPresent(
              c -> clarities.add(new Conditions(Name.BLANK, Optional.of(c), Optional.empty())));
      Month month = turn.trip().date().getMonth();
      seasons.putIfAbsent(
          Season.of(month, southern),
          new Conditions(Name.BLANK, Optional.empty(), Optional.of(month)));
    }
    List<Conditions> all = new ArrayList<>();
    for (Collection<Conditions> kind : List.of(species, clarities, seasons.values())) {
      kind.stream()
          .filter(each -> kind.size() > 1)
          .sorted(Comparator.comparing(each -> each.words(southern)))
          .forEach(all::add);
    }
    return all;
  }

  /** In words: {@code pollack, cloudy, spring}. */
  String words(boolean southern) {
    List<String> words = new ArrayList<>();
    if (!species.isBlank()) {
      words.add(species.text());
    }
    clarity.ifPresent(c -> words.add(c.word()));
    month.ifPresent(m -> words.add(Season.of(m, southern).word()));
    return String.join(", ", words);
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
