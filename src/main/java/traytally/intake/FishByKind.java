package traytally.intake;

import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/** A log's catch with a column for each kind of fish: {@code Bass}, {@code Pollack}. */
final class FishByKind {
  private static final WordList WORDS = WordList.read("words.txt");
  private static final Set<String> KINDS = Set.copyOf(WORDS.words("fish.kind"));
  private static final Set<String> BESIDE = Set.copyOf(WORDS.words("fish.beside"));

  private static final Set<String> FISH =
      Set.of("fish", "no fish", "no of fish", "number of fish", "how many fish", "fish total");

  private final List<ColumnHeader> headers;
  private final Under under;
  private final Set<String> settled;

  /**
   * The columns under {@code headers}.
   *
   * @param settled the folded headers that the person spoke of
   */
  FishByKind(List<ColumnHeader> headers, Under under, Set<String> settled) {
    this.headers = headers;
    this.under = under;
    this.settled = settled;
  }

  /** The same guess of a log, with its fish by kind if no one column tells the fish landed. */
  ColumnGuess in(ColumnGuess guess) {
    if (guess.kind() != ListKind.TRIPS || guess.has(Field.LANDED) || areIn(guess)) {
      return guess;
    }
    Set<Integer> kinds = new HashSet<>();
    for (int column = 0; column < headers.size(); column++) {
      if (namesKind(headers.get(column).folded()) && isUnreadCount(guess, column)) {
        kinds.add(column);
      }
    }
    if (kinds.isEmpty()) {
      return withFish(guess);
    }
    Map<Integer, Field> across = new HashMap<>();
    Map<Integer, String> why = new HashMap<>(guess.why());
    kinds.forEach(column -> across.put(column, Field.LANDED));
    kinds.forEach(column -> why.put(column, "fish of one kind"));
    return new ColumnGuess(guess.kind(), guess.columns(), across, why, guess.score());
  }

  /** A count under "Fish" beside a column that tells what was fished for is of fish landed. */
  private ColumnGuess withFish(ColumnGuess guess) {
    for (int column = 0; column < headers.size(); column++) {
      if (FISH.contains(headers.get(column).folded()) && isUnreadCount(guess, column)) {
        return guess.taking(Field.LANDED, column, "counts of fish");
      }
    }
    return guess;
  }

  private boolean isUnreadCount(ColumnGuess guess, int column) {
    return guess.leaves(column)
        && !settled.contains(headers.get(column).folded())
        && under.counts(column);
  }

  static boolean namesKind(String header) {
    List<String> words = Arrays.asList(header.split(" ", -1));
    return words.stream().anyMatch(KINDS::contains)
        && words.stream().allMatch(word -> KINDS.contains(word) || BESIDE.contains(word));
  }

  /** Whether a guess has its fish by kind. */
  static boolean areIn(ColumnGuess guess) {
    return guess.across().containsValue(Field.LANDED) && !LuresAcross.areIn(guess);
  }

  /** Puts the fish of one row together in {@code list}: {@code 2 bass, 1 pollack}. */
  static void addUp(Table table, Row row, ListRow list) {
    StringBuilder fish = new StringBuilder();
    int first = -1;
    for (int column : new TreeMap<>(table.guess().across()).keySet()) {
      Cell cell = row.cell(column);
      String count = Numbers.plain(cell.shown());
      if (cell.isBlank() || Quantities.isNone(count) || count.equals("0")) {
        continue;
      }
      first = first < 0 ? column : first;
      if (!count.matches("\\d{1,3}")) {
        // The whole catch is in doubt, whatever stands beside it.
        list.put(Field.LANDED, cell, column);
        return;
      }
      String kind = table.headers().get(column).folded();
      fish.append(fish.length() == 0 ? "" : ", ").append(count).append(' ').append(bare(kind));
    }
    if (first >= 0) {
      list.put(Field.LANDED, Cell.text(fish.toString()), first);
    }
  }

  private static String bare(String header) {
    return header.replaceAll("\\b(?:no|nr|number|of|landed|caught)\\b", "").strip();
  }
}
