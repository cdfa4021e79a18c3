package traytally.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import traytally.intake.Pairs.Pair;
import traytally.sheet.Address;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * A sheet of words with what they tell beside them, and of nothing else.
 *
 * @param runs its lines from top to bottom: those of each column where cards stand side by side
 * @param titles what stands alone above the first line
 * @param remarks what stands alone between the lines and below them, or is struck out
 * @param severalInRow whether a row has several words, each with what it tells
 */
record CardLines(List<List<Line>> runs, List<Row> titles, List<Row> remarks, boolean severalInRow) {
  /** Nobody fills in so many cards (an assumption). */
  private static final int MOST = 2_000;

  /** With more words that no list has over its columns, and few that one has, they are no cards. */
  private static final int MOST_UNKNOWN = 20;

  /** A longer text before another is a remark, and no word for it (an assumption). */
  private static final int LONGEST_WORD = 40;

  CardLines {
    runs = List.copyOf(runs);
    titles = List.copyOf(titles);
    remarks = List.copyOf(remarks);
  }

  /** A word, what it tells and where that stands. */
  record Line(Word word, Cell value, Address at) {}

  /**
   * A word of a card, looked up once.
   *
   * @param text as typed
   * @param stem without capitals, and without the number that tells it from its like
   * @param number that number, if it has one
   * @param field what a log tells under it, if it does
   */
  record Word(String text, String stem, OptionalInt number, Optional<Field> field) {
    static Word of(String text) {
      ColumnHeader header = ColumnHeader.of(text);
      String stem = LuresAcross.stem(header);
      Optional<Field> field =
          ColumnGuess.of(List.of(ColumnHeader.of(stem)), ListKind.TRIPS, Map.of())
              .columns()
              .keySet()
              .stream()
              .findFirst();
      return new Word(text, stem, LuresAcross.number(header), field);
    }
  }

  /** The lines of cards one below the other, or side by side; empty if {@code sheet} is no such. */
  static Optional<CardLines> stacked(GivenSheet sheet) {
    if (sheet.rows().size() > MOST) {
      return Optional.empty();
    }
    List<Row> titles = new ArrayList<>();
    List<Row> remarks = new ArrayList<>();
    Map<Row, List<Pair>> told = new LinkedHashMap<>();
    int unknown = 0;
    for (Row row : sheet.rows()) {
      List<Pair> pairs = row.struck() ? List.of() : pairs(row);
      if (!pairs.isEmpty()) {
        told.put(row, pairs);
      } else if (Pairs.filled(row).size() > 1 && !row.struck()) {
        return Optional.empty();
      } else {
        (told.isEmpty() ? titles : remarks).add(row);
      }
      unknown += pairs.stream().anyMatch(pair -> !Pairs.isWord(pair.word())) ? 1 : 0;
      if (unknown > MOST_UNKNOWN && unknown * 2 > told.size()) {
        return Optional.empty();
      }
    }
    boolean several = told.values().stream().anyMatch(pairs -> pairs.size() > 1);
    return Optional.of(new CardLines(runs(told), titles, remarks, several));
  }

  /** The lines, apart for each column in which the first word of a row stands again. */
  private static List<List<Line>> runs(Map<Row, List<Pair>> told) {
    NavigableMap<Integer, List<Line>> runs = new TreeMap<>(Map.of(0, new ArrayList<>()));
    for (List<Pair> pairs : told.values()) {
      pairs.stream()
          .skip(1)
          .filter(pair -> pair.word().equalsIgnoreCase(pairs.get(0).word()))
          .forEach(pair -> runs.put(pair.column(), new ArrayList<>()));
    }
    Map<String, Word> known = new HashMap<>();
    told.forEach(
        (row, pairs) -> {
          for (Pair pair : pairs) {
            Word word = known.computeIfAbsent(pair.word(), Word::of);
            Address at = new Address(row.number(), pair.at());
            runs.headMap(pair.column(), true)
                .lastEntry()
                .getValue()
                .add(new Line(word, pair.value(), at));
          }
        });
    return List.copyOf(runs.values());
  }

  private static List<Pair> pairs(Row row) {
    List<Integer> filled = Pairs.filled(row);
    List<Pair> pairs = Pairs.in(row);
    if (!pairs.isEmpty() || filled.size() != 2) {
      return pairs;
    }
    Cell first = row.cell(filled.get(0));
    return first instanceof Cell.Text text && text.text().length() <= LONGEST_WORD
        ? List.of(
            new Pair(text.text().strip(), row.cell(filled.get(1)), filled.get(0), filled.get(1)))
        : List.of();
  }

  /** The lines of each column beside the words down the left side of {@code sheet}. */
  static Optional<CardLines> across(GivenSheet sheet) {
    int words = sheet.rows().size() > MOST ? -1 : wordsIn(sheet);
    if (words < 0) {
      return Optional.empty();
    }
    int units = unitsIn(sheet, words + 1);
    Map<String, Word> known = new HashMap<>();
    Map<Integer, List<Line>> runs = new TreeMap<>();
    List<Row> titles = new ArrayList<>();
    List<Row> remarks = new ArrayList<>();
    for (Row row : sheet.rows()) {
      Cell word = row.cell(words);
      if (Pairs.filled(row).size() < 2 || row.struck()) {
        (runs.isEmpty() ? titles : remarks).add(row);
      } else if (!(word instanceof Cell.Text) || row.cells().size() > MOST) {
        return Optional.empty();
      } else {
        String unit =
            units < 0 || row.cell(units).isBlank()
                ? ""
                : " (" + row.cell(units).shown().strip() + ")";
        Word told = known.computeIfAbsent(word.shown().strip() + unit, Word::of);
        for (int column = Math.max(words, units) + 1; column < row.cells().size(); column++) {
          Line line = line(sheet, row, column, told);
          runs.computeIfAbsent(column, c -> new ArrayList<>()).add(line);
        }
      }
    }
    return Optional.of(new CardLines(List.copyOf(runs.values()), titles, remarks, false));
  }

  private static Line line(GivenSheet sheet, Row row, int column, Word word) {
    Cell own = row.cell(column);
    // A day over the columns of all that was fished on it.
    Cell value = own.isBlank() ? sheet.merged(row.number(), column).orElse(own) : own;
    return new Line(word, value, new Address(row.number(), column));
  }

  /** The column whose words begin the rows, most of them words of lists; below 0 if none is. */
  private static int wordsIn(GivenSheet sheet) {
    List<Row> rows = sheet.rows().stream().filter(row -> Pairs.filled(row).size() > 1).toList();
    int column = rows.stream().mapToInt(row -> Pairs.filled(row).get(0)).min().orElse(-1);
    long known = rows.stream().filter(row -> Pairs.isWord(row.cell(column).shown())).count();
    return known * 2 >= rows.size() ? column : -1;
  }

  /** The column beside the words if it holds nothing but units; below 0 if it holds others. */
  private static int unitsIn(GivenSheet sheet, int column) {
    List<String> cells =
        sheet.rows().stream()
            .map(row -> row.cell(column).shown().strip())
            .filter(cell -> !cell.isEmpty())
            .toList();
    boolean units = !cells.isEmpty() && cells.stream().allMatch(HeaderSearch::isUnit);
    return units ? column : -1;
  }
}
