package traytally.intake;

import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import traytally.intake.ListRow.Place;
import traytally.sheet.Cell;

/**
 * Takes the maker out of a column of body styles whose header names both, as {@code Maker & style}:
 * the words before those of a body, where they stand before several bodies, and else the first.
 */
final class MakersWithin {
  private final Table table;
  private final Map<String, Set<String>> bodies = new HashMap<>(); // by the words before them

  MakersWithin(Table table) {
    this.table = table;
  }

  void run() {
    Optional<Integer> column = Optional.ofNullable(table.guess().columns().get(Field.BODY));
    if (column.isEmpty()
        || table.guess().has(Field.MAKER)
        || !HeaderWords.namesMakerAndBody(
            table.headers().get(column.get()).folded(), table.kind())) {
      return;
    }
    for (ListRow row : table.rows()) {
      List<String> words = words(row);
      int lead = words.size() - Anatomy.trail(words);
      bodies
          .computeIfAbsent(joined(words, 0, lead), l -> new HashSet<>())
          .add(joined(words, lead, words.size()));
    }
    Optional<String> example = Optional.empty();
    for (ListRow row : table.rows()) {
      Optional<String> said = takeApart(row);
      example = example.or(() -> said);
    }
    example.ifPresent(table::assume);
  }

  /** Takes one row's maker out, if it tells one; says how. */
  private Optional<String> takeApart(ListRow row) {
    List<String> words = words(row);
    int lead = words.size() - Anatomy.trail(words);
    if (words.size() < 2 || lead == 0) {
      return Optional.empty();
    }
    Set<String> behind = bodies.getOrDefault(joined(words, 0, lead), Set.of());
    int makers = lead < words.size() && behind.size() > 1 ? lead : 1;
    String maker = joined(words, 0, makers);
    String body = joined(words, makers, words.size());
    Place place = row.place(Field.BODY);
    row.put(Field.MAKER, Cell.text(maker), place.column());
    row.put(Field.BODY, Cell.text(body), place.column());
    return Optional.of(
        "One column tells maker and body style: \""
            + maker
            + " "
            + body
            + "\" was read as \""
            + body
            + "\" by "
            + maker
            + ", and the others alike.");
  }

  private static List<String> words(ListRow row) {
    return Arrays.asList(row.text(Field.BODY).split("\\s+", -1));
  }

  private static String joined(List<String> words, int from, int to) {
    return String.join(" ", words.subList(from, to));
  }
}
