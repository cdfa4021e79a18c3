package traytally.report;

import java.time.LocalDate;
import java.util.List;

/**
 * The answer of one command, in no format yet.
 *
 * @param command names the JSON schema: {@code traytally/<command>/1}
 * @param asOf the day it holds for
 * @param facts single values beside the rows: top-level keys of the JSON
 * @param columns of the rows
 * @param rows cells in the columns' order
 * @param sections runs of rows under a heading of their own, for people; empty for one plain table
 * @param notes sentences under the rows: what was assumed, totals in words, cautions
 */
public record Report(
    String command,
    String title,
    LocalDate asOf,
    List<Single> facts,
    List<Column> columns,
    List<List<Value>> rows,
    List<Section> sections,
    List<String> notes) {

  /**
   * One value beside the rows.
   *
   * @param column its key and label
   */
  public record Single(Column column, Value value) {}

  /**
   * Rows {@code from} (inclusive) to {@code to} (exclusive) under a heading.
   *
   * @param summary a line below them, such as the shop's total; may be empty
   */
  public record Section(String heading, int from, int to, String summary) {}

  public Report {
    facts = List.copyOf(facts);
    columns = List.copyOf(columns);
    rows = rows.stream().map(List::copyOf).toList();
    sections = List.copyOf(sections);
    notes = List.copyOf(notes);
    for (List<Value> row : rows) {
      if (row.size() != columns.size()) {
        throw new IllegalArgumentException(
            "a row of " + row.size() + " cells under " + columns.size() + " columns");
      }
    }
  }
}
