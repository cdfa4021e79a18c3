package traytally.restock;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import traytally.ledger.Book;
import traytally.ledger.Palette;
import traytally.ledger.Setting;
import traytally.performance.StartingGuide;
import traytally.performance.Turn;
import traytally.plastic.Name;
import traytally.plastic.Tone;
import traytally.trip.Clarity;
import traytally.trip.Leaning;

/** Who might want a colour: where it did best by the log, else where common practice tries it. */
final class Takers {
  /** Takes from which a record is more than an accident (assumption). */
  private static final int FEWEST_TAKES = 2;

  /** Rod-hours from which it is more than a lucky cast (assumption). */
  private static final double FEWEST_HOURS = 0.5;

  /** Fish sought and water, either of which may not be said. */
  private record Place(Name species, Optional<Clarity> clarity) implements Comparable<Place> {
    private static final Comparator<Place> ORDER =
        Comparator.comparing(Place::species)
            .thenComparing(place -> place.clarity().map(Clarity::word).orElse(""));

    @Override
    public int compareTo(Place other) {
      return ORDER.compare(this, other);
    }

    boolean isSaid() {
      return !species.isBlank() || clarity.isPresent();
    }

    String words() {
      String water = clarity.map(c -> c.word() + " water").orElse("");
      String between = species.isBlank() || water.isEmpty() ? "" : " in ";
      return species + between + water;
    }
  }

  /** What was caught in how many rod-hours. */
  private record Catch(int takes, double hours) {
    Catch plus(Catch other) {
      return new Catch(takes + other.takes, hours + other.hours);
    }

    double perHour() {
      return takes / hours;
    }
  }

  private final Map<Name, Map<Place, Catch>> records = new TreeMap<>();
  private final Map<Name, Tone> tones;
  private final List<Leaning> leanings;

  Takers(Book book, Collection<Turn> turns) {
    tones = Palette.of(book).tones();
    leanings =
        StartingGuide.usual(book.settings().get(Setting.HEMISPHERE).equals("south")).leanings();
    for (Turn turn : turns) {
      records
          .computeIfAbsent(turn.plastic().colour(), c -> new TreeMap<>())
          .merge(
              new Place(turn.species(), turn.clarity()),
              new Catch(turn.fish().takes(), turn.rodHours()),
              Catch::plus);
    }
  }

  /** In words; blank if nothing tells. */
  String of(Name colour) {
    return records.getOrDefault(colour, Map.of()).entrySet().stream()
        .filter(each -> each.getKey().isSaid())
        .filter(each -> each.getValue().takes() >= FEWEST_TAKES)
        .filter(each -> each.getValue().hours() >= FEWEST_HOURS)
        .max(Comparator.comparingDouble(each -> each.getValue().perHour()))
        .map(Takers::byTheLog)
        .orElseGet(() -> byPractice(colour));
  }

  private static String byTheLog(Map.Entry<Place, Catch> best) {
    return String.format(
        Locale.ROOT,
        "%s: %d takes in %.1f h",
        best.getKey().words(),
        best.getValue().takes(),
        best.getValue().hours());
  }

  private String byPractice(Name colour) {
    return Optional.ofNullable(tones.get(colour)).stream()
        .flatMap(tone -> leanings.stream().filter(leaning -> leaning.tone() == tone))
        .filter(leaning -> leaning.strength() > 0 && leaning.months().isEmpty())
        .max(Comparator.comparingInt(Leaning::strength))
        .map(leaning -> new Place(leaning.species(), leaning.clarity()).words())
        .map(words -> words + " (common practice)")
        .orElse("");
  }
}
