package traytally.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Several plastics of one outing side by side in a log, each with columns of its own: {@code Lure
 * 1}, {@code Takes 1}, {@code Lure 2}, {@code Takes 2}. What stands once is of the outing.
 */
final class LuresAcross {
  private static final Pattern NUMBER =
      Pattern.compile("^(?:\\d|1st|2nd|3rd|4th|first|second|third|fourth) | (?:\\d|[a-d])$");
  private static final Set<Field> LURE = Set.of(Field.BODY, Field.COLOUR);

  private final Table table;

  LuresAcross(Table table) {
    this.table = table;
  }

  /** Numbers under the "Fish" of each plastic are fish landed, and no kinds of fish. */
  static ColumnGuess withCounts(ColumnGuess guess, List<ColumnHeader> headers, Under under) {
    int fish = guess.columns().getOrDefault(Field.SPECIES, -1);
    if (fish < 0
        || guess.has(Field.LANDED)
        || under.filled(fish).isEmpty()
        || !under.numbers(fish)
        || headers.stream().filter(h -> stem(h).equals(stem(headers.get(fish)))).count() < 2) {
      return guess;
    }
    return guess.moving(Field.SPECIES, Field.LANDED, "counts of fish");
  }

  /** The same guess of a log, with the columns of its further plastics if it has any. */
  static ColumnGuess in(ColumnGuess guess, List<ColumnHeader> headers) {
    if (guess.kind() != ListKind.TRIPS || FishByKind.areIn(guess)) {
      return guess;
    }
    Map<String, Field> stems = new HashMap<>();
    new TreeMap<>(guess.columns())
        .forEach((field, column) -> stems.putIfAbsent(stem(headers.get(column)), field));
    Map<Integer, Field> across = new HashMap<>();
    for (int column = 0; column < headers.size(); column++) {
      Field field = stems.get(stem(headers.get(column)));
      boolean second = guess.columns().getOrDefault(Field.SECOND_COLOUR, -1) == column;
      if (field != null
          && !headers.get(column).folded().isEmpty()
          && (guess.leaves(column) || second)) {
        across.put(column, second ? Field.COLOUR : field);
      }
    }
    if (across.values().stream().noneMatch(LURE::contains) || !across.containsValue(lure(guess))) {
      return guess;
    }
    Map<Field, Integer> columns = new EnumMap<>(Field.class);
    columns.putAll(guess.columns());
    columns.values().removeIf(across::containsKey);
    Map<Integer, String> why = new HashMap<>(guess.why());
    across.keySet().forEach(column -> why.put(column, "of another plastic in the row"));
    across.putAll(guess.across());
    return new ColumnGuess(guess.kind(), columns, across, why, guess.score());
  }

  /** The field that a plastic cannot do without here. */
  private static Field lure(ColumnGuess guess) {
    return guess.has(Field.BODY) ? Field.BODY : Field.COLOUR;
  }

  /** A header without the number that tells it from its like. */
  static String stem(ColumnHeader header) {
    return NUMBER.matcher(header.folded()).replaceAll("");
  }

  /** The number that tells a header from its like, if it has one. */
  static OptionalInt number(ColumnHeader header) {
    Matcher number = NUMBER.matcher(header.folded());
    if (!number.find()) {
      return OptionalInt.empty();
    }
    char first = number.group().strip().charAt(0);
    int word = List.of("first", "second", "third", "fourth").indexOf(number.group().strip());
    return OptionalInt.of(
        word >= 0 ? word + 1 : Character.isDigit(first) ? first - '0' : first - 'a' + 1);
  }

  /** Whether a guess has several plastics in a row. */
  static boolean areIn(ColumnGuess guess) {
    return guess.kind() == ListKind.TRIPS && guess.across().containsValue(lure(guess));
  }

  /** Makes a row of each plastic; what stands once and may be any one's is doubted. */
  void run() {
    if (!areIn(table.guess())) {
      return;
    }
    List<Map<Field, Integer>> groups = groups();
    List<ListRow> rows = new ArrayList<>();
    for (ListRow row : table.rows()) {
      List<ListRow> plastics = plastics(row, groups);
      if (plastics.size() > 1) {
        Set<Field> own = new HashSet<>();
        groups.forEach(group -> own.addAll(group.keySet()));
        new SeveralInOne(table).shareOut(row, plastics, own);
        table.assume("Rows with several plastics side by side were split, one stint a plastic.");
      }
      rows.addAll(plastics.isEmpty() ? List.of(row) : plastics);
    }
    table.rows().clear();
    table.rows().addAll(rows);
  }

  /** The columns of each further plastic: of a field's columns the n-th is the n-th one's. */
  private List<Map<Field, Integer>> groups() {
    List<Map<Field, Integer>> groups = new ArrayList<>();
    Map<Field, Integer> seen = new EnumMap<>(Field.class);
    new TreeMap<>(table.guess().across())
        .forEach(
            (column, field) -> {
              int group = seen.merge(field, 1, Integer::sum) - 1;
              while (groups.size() <= group) {
                groups.add(new EnumMap<>(Field.class));
              }
              groups.get(group).put(field, column);
            });
    return groups;
  }

  private List<ListRow> plastics(ListRow row, List<Map<Field, Integer>> groups) {
    Field lure = lure(table.guess());
    List<ListRow> plastics = new ArrayList<>();
    if (!row.isBlank(lure)) {
      plastics.add(row);
    }
    for (Map<Field, Integer> group : groups) {
      ListRow one = row.copy();
      group.forEach((field, column) -> one.put(field, row.at(column), column));
      if (!one.isBlank(lure) && group.containsKey(lure)) {
        plastics.add(one);
      }
    }
    return plastics;
  }
}
