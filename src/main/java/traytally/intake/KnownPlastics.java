package traytally.intake;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiPredicate;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/** The plastics and names a list's words are matched with. */
final class KnownPlastics {
  /** 3 inches is 76 mm and sold as 75: lengths this near are one length (common practice). */
  private static final int SAME_LENGTH_MM = 2;

  private record Look(Name body, Name colour) {}

  private final Map<Name, Name> agreed = new HashMap<>();
  private final Map<Look, Set<Plastic>> byLook = new HashMap<>();
  private final Set<Name> bodies = new LinkedHashSet<>();
  private final Set<Name> colours = new LinkedHashSet<>();

  KnownPlastics(Book book) {
    book.facts(Fact.Agreed.class).forEach(a -> agreed.put(a.spelling(), a.name()));
    addAll(book.plastics());
  }

  void addAll(Collection<Plastic> plastics) {
    plastics.forEach(this::add);
  }

  void add(Plastic plastic) {
    byLook
        .computeIfAbsent(new Look(plastic.body(), plastic.colour()), l -> new TreeSet<>())
        .add(plastic);
    bodies.add(plastic.body());
    colours.add(plastic.colour());
  }

  /** The name {@code spelling} was agreed to stand for, or itself. */
  Name agreed(Name spelling) {
    return agreed.getOrDefault(spelling, spelling);
  }

  boolean has(Plastic plastic) {
    return look(plastic).contains(plastic);
  }

  boolean hasBody(Name body) {
    return bodies.contains(body);
  }

  /** The plastics whose colour, or whose body style, {@code name} is. */
  List<Plastic> called(Name name) {
    return byLook.entrySet().stream()
        .filter(e -> e.getKey().body().equals(name) || e.getKey().colour().equals(name))
        .flatMap(e -> e.getValue().stream())
        .sorted()
        .toList();
  }

  private Set<Plastic> look(Plastic plastic) {
    return byLook.getOrDefault(new Look(plastic.body(), plastic.colour()), Set.of());
  }

  /** {@code words} itself if known, else the known plastics that differ only in what one lacks. */
  List<Plastic> fitting(Plastic words) {
    return fitting(words, 0);
  }

  /** The same, where lengths may differ by the rounding of inches as well. */
  List<Plastic> fittingRoughly(Plastic words) {
    List<Plastic> strictly = fitting(words, 0);
    return strictly.isEmpty() ? fitting(words, SAME_LENGTH_MM) : strictly;
  }

  private List<Plastic> fitting(Plastic words, int slackMm) {
    if (has(words)) {
      return List.of(words);
    }
    List<Plastic> fitting = new ArrayList<>();
    for (Plastic known : look(words)) {
      boolean maker =
          words.maker().isBlank() || known.maker().isBlank() || words.maker().equals(known.maker());
      boolean length =
          !words.hasLength()
              || !known.hasLength()
              || Math.abs(words.lengthMm() - known.lengthMm()) <= slackMm;
      if (maker && length) {
        fitting.add(known);
      }
    }
    return fitting;
  }

  /**
   * A name that may have been meant.
   *
   * @param field where the other was written
   */
  record Slip(Field field, Name wrote, Name known) {
    /** The question, and the command that answers it with yes. */
    String question() {
      return "Did you mean \""
          + known
          + "\"? If so: traytally agree '"
          + wrote
          + "' = '"
          + known
          + "'";
    }
  }

  /** A known spelling that the plastic's unknown body or colour may be a slip of. */
  Optional<Slip> slip(Plastic words) {
    return like(words, Spelling::near);
  }

  /** A known name that has the words of an unknown one among its own. */
  Optional<Slip> part(Plastic words) {
    return like(words, Spelling::partOf);
  }

  private Optional<Slip> like(Plastic words, BiPredicate<Name, Name> alike) {
    return like(Field.BODY, words.body(), bodies, alike)
        .or(() -> like(Field.COLOUR, words.colour(), colours, alike));
  }

  private static Optional<Slip> like(
      Field field, Name name, Set<Name> known, BiPredicate<Name, Name> alike) {
    return known.contains(name)
        ? Optional.empty()
        : known.stream()
            .filter(k -> alike.test(name, k))
            .findFirst()
            .map(k -> new Slip(field, name, k));
  }

  /** What of an unknown plastic is not known by itself; the colour if both are. */
  Field stranger(Plastic words) {
    return bodies.contains(words.body()) ? Field.COLOUR : Field.BODY;
  }

  /** The words for a plastic that several fit. */
  static String several(List<Plastic> fitting) {
    List<String> words = fitting.stream().map(Plastic::toString).sorted().toList();
    return String.join("; ", words);
  }
}
