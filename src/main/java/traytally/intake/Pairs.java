package traytally.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/** Words of a row with what each tells beside it: {@code Date:|31/08/2025||Venue:|Harrow Point}. */
final class Pairs {
  /** A word, and behind a mark in the same cell what it tells. */
  private static final Pattern LINE =
      Pattern.compile("(\\p{L}[\\p{L}\\d .()/]{0,30}?)\\s*[:=]\\s*(\\S.*)");

  private static final Pattern MARKED = Pattern.compile("(\\p{L}.{0,30}?)\\s*[:=]");

  private Pairs() {}

  /**
   * One of them.
   *
   * @param column where its word stands, counted from 0
   * @param at where the value stands
   */
  record Pair(String word, Cell value, int column, int at) {}

  /** What the row tells in pairs from its first cell to its last; none if it has anything else. */
  static List<Pair> in(Row row) {
    List<Integer> filled = filled(row);
    List<Pair> pairs = new ArrayList<>();
    for (int i = 0; i < filled.size(); ) {
      int column = filled.get(i);
      Optional<Pair> within = within(row.cell(column), column);
      Optional<String> marked = marked(row.cell(column));
      if (within.isPresent()) {
        pairs.add(within.get());
        i++;
      } else if (marked.isPresent()) {
        boolean told = i + 1 < filled.size() && marked(row.cell(filled.get(i + 1))).isEmpty();
        int at = told ? filled.get(i + 1) : column;
        Cell value = told ? row.cell(at) : Cell.blank();
        pairs.add(new Pair(marked.get(), value, column, at));
        i += told ? 2 : 1;
      } else if (isWord(row.cell(column))
          && i + 1 < filled.size()
          && (filled.size() == 2 || !isWord(row.cell(filled.get(i + 1))))) {
        int at = filled.get(i + 1);
        pairs.add(new Pair(row.cell(column).shown().strip(), row.cell(at), column, at));
        i += 2;
      } else {
        return List.of();
      }
    }
    return pairs;
  }

  /** Whether a row is of such pairs alone, and its first word stands before a mark. */
  static boolean areMarked(Row row) {
    List<Pair> pairs = in(row);
    return !pairs.isEmpty() && row.cell(pairs.get(0).column()).shown().matches(".*[:=].*");
  }

  static List<Integer> filled(Row row) {
    List<Integer> filled = new ArrayList<>();
    for (int column = 0; column < row.cells().size(); column++) {
      if (!row.cell(column).isBlank()) {
        filled.add(column);
      }
    }
    return filled;
  }

  private static Optional<Pair> within(Cell cell, int column) {
    Matcher line = LINE.matcher(cell instanceof Cell.Text text ? text.text().strip() : "");
    return line.matches()
        ? Optional.of(new Pair(line.group(1), Cell.text(line.group(2)), column, column))
        : Optional.empty();
  }

  private static Optional<String> marked(Cell cell) {
    Matcher marked = MARKED.matcher(cell instanceof Cell.Text text ? text.text().strip() : "");
    return marked.matches() ? Optional.of(marked.group(1)) : Optional.empty();
  }

  /** Whether a cell is a word that some list has over a column, or that lists pass over. */
  private static boolean isWord(Cell cell) {
    return cell instanceof Cell.Text text && isWord(text.text());
  }

  static boolean isWord(String text) {
    return HeaderWords.isKnown(ColumnHeader.of(text).folded());
  }
}
