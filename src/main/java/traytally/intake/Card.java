package traytally.intake;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import traytally.intake.CardLines.Line;
import traytally.intake.CardLines.Word;
import traytally.sheet.Address;

/** What one card of an outing tells: of the day, and of each plastic that was fished on it. */
final class Card {
  /** What is told of a day, and of all that was fished on it. */
  private static final Set<Field> OF_DAY =
      EnumSet.of(Field.DATE, Field.WATER, Field.SPECIES, Field.CLARITY, Field.RODS);

  private static final Set<Field> OF_LURE =
      EnumSet.of(Field.MAKER, Field.BODY, Field.COLOUR, Field.LENGTH);

  private static final Set<Field> OUTING = EnumSet.of(Field.DATE, Field.BODY, Field.COLOUR);

  /** What may be told of all plastics of a day together. */
  private static final Set<Field> COUNTED =
      EnumSet.of(
          Field.MINUTES,
          Field.CASTS,
          Field.FOLLOWS,
          Field.TAKES,
          Field.HOOKED,
          Field.LANDED,
          Field.LOST,
          Field.WORN);

  /**
   * A word without the number that tells it from its like, and of which plastic of the card it is.
   *
   * @param plastic from 1; 1 also before the first of them
   */
  record Key(String word, int plastic) {}

  private final Map<Key, Line> lines = new LinkedHashMap<>();
  private final Set<String> head = new HashSet<>();
  private final Set<String> numbered = new HashSet<>();
  private Optional<String> lure = Optional.empty();
  private Optional<Line> doubt = Optional.empty();
  private int plastic = 1;

  private Card() {}

  Map<Key, Line> lines() {
    return lines;
  }

  /** Whether it tells a day or a plastic. */
  boolean tellsOuting() {
    return lines.values().stream()
        .filter(line -> !line.value().isBlank())
        .anyMatch(line -> line.word().field().filter(OUTING::contains).isPresent());
  }

  /** Where its first line stands. */
  Address first() {
    return lines.values().iterator().next().at();
  }

  /** The cards of {@code run}, one below the other. */
  static List<Card> in(List<Line> run) {
    List<Card> cards = new ArrayList<>();
    Card card = new Card();
    for (Line line : run) {
      if (card.endsBefore(line.word())) {
        cards.add(card);
        card = new Card();
      }
      card.take(line);
    }
    if (!card.lines.isEmpty()) {
      cards.add(card);
    }
    return cards;
  }

  /** Whether {@code word} tells again what a card tells once: the next card begins with it. */
  private boolean endsBefore(Word word) {
    if (lines.isEmpty()) {
      return false;
    }
    boolean again = lines.containsKey(new Key(word.stem(), word.number().orElse(plastic)));
    Key first = lines.keySet().iterator().next();
    boolean ofDay = word.field().filter(OF_DAY::contains).isPresent();
    return first.equals(new Key(word.stem(), word.number().orElse(1)))
        || (word.number().isPresent() && again)
        || (ofDay && (again || head.contains(word.stem())));
  }

  private void take(Line line) {
    Word word = line.word();
    if (lure.isEmpty() && word.field().filter(OF_LURE::contains).isPresent()) {
      lure = Optional.of(word.stem());
    } else if (lure.filter(word.stem()::equals).isPresent()) {
      plastic = word.number().orElse(plastic + 1);
    }
    if (lure.isEmpty()) {
      head.add(word.stem());
    }
    word.number().ifPresent(n -> numbered.add(word.stem()));
    boolean ofAll = lure.isPresent() && word.number().isEmpty() && head.contains(word.stem());
    Key key = new Key(word.stem(), ofAll ? 1 : word.number().orElse(plastic));
    boolean again = lines.putIfAbsent(key, line) != null;
    if (again && word.field().filter(f -> f != Field.NOTE).isPresent()) {
      doubt = doubt.or(() -> Optional.of(line));
    }
  }

  /** The words that it tells of several plastics, each of its own. */
  Set<String> repeated() {
    Set<String> repeated = new HashSet<>();
    for (Key key : lines.keySet()) {
      if (key.plastic() > 1
          && (numbered.contains(key.word()) || lines.containsKey(new Key(key.word(), 1)))) {
        repeated.add(key.word());
      }
    }
    return repeated;
  }

  /**
   * A line that may be of one of its plastics or of all: one told twice of the same, or a count
   * that stands over the first plastic or under the last alone, while other cards tell it of each.
   */
  Optional<Line> doubt(Set<String> repeated) {
    Map<Integer, Line> told = new TreeMap<>();
    int last = lines.keySet().stream().mapToInt(Key::plastic).max().orElse(1);
    lines.forEach(
        (key, line) -> {
          boolean counted = line.word().field().filter(COUNTED::contains).isPresent();
          if (counted && repeated.contains(key.word()) && !numbered.contains(key.word())) {
            told.putIfAbsent(head.contains(key.word()) ? 0 : key.plastic(), line);
          }
        });
    boolean unclear = told.keySet().equals(Set.of(0)) || told.keySet().equals(Set.of(last));
    return last > 1 && unclear ? told.values().stream().findFirst() : doubt;
  }
}
