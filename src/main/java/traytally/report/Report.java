package traytally.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

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
  public record Section(String heading, int from, int to, String summary) {
    public Section {
      if (from < 0 || to < from) {
        throw new IllegalArgumentException("no rows run from " + from + " to " + to);
      }
    }
  }

  /** Keys of the JSON that are not facts. */
  private static final Set<String> RESERVED = Set.of("schema", "as_of", "rows");

  public Report {
    facts = List.copyOf(facts);
    columns = List.copyOf(columns);
    // Rows made as they are looked at are alike: one tells the width of all.
    boolean madeLater = rows instanceof Mapped;
    rows = madeLater ? rows : rows.stream().map(List::copyOf).toList();
    sections = List.copyOf(sections);
    notes = List.copyOf(notes);
    for (List<Value> row : madeLater ? rows.subList(0, Math.min(1, rows.size())) : rows) {
      if (row.size() != columns.size()) {
        throw new IllegalArgumentException(
            "a row of " + row.size() + " cells under " + columns.size() + " columns");
      }
    }
    requireOwnKeys(columns, Set.of());
    requireOwnKeys(facts.stream().map(Single::column).toList(), RESERVED);
    requireInOrder(sections, rows.size());
  }

  /** This report with one more note. */
  public Report with(String note) {
    List<String> more = new ArrayList<>(notes);
    more.add(note);
    return new Report(command, title, asOf, facts, columns, rows, sections, more);
  }

  /** Something of each row; made each time it is looked at if the rows are. */
  public <T> List<T> mapped(Function<List<Value>, T> something) {
    return rows instanceof Mapped
        ? new Mapped<>(rows, something)
        : rows.stream().map(something).toList();
  }

  private static void requireOwnKeys(List<Column> columns, Set<String> taken) {
    Set<String> keys = new HashSet<>(taken);
    for (Column column : columns) {
      if (column.forMachines() && !keys.add(column.key())) {
        throw new IllegalArgumentException("two values under one key: " + column.key());
      }
    }
  }

  private static void requireInOrder(List<Section> sections, int rows) {
    int done = 0;
    for (Section section : sections) {
      if (section.from() < done || section.to() > rows) {
        throw new IllegalArgumentException(
            "sections must follow one another within " + rows + " rows: " + section);
      }
      done = section.to();
    }
  }
}
