package traytally.report;

import java.util.regex.Pattern;

/**
 * A column of a report.
 *
 * @param key its name in json and csv, snake case; empty if it is for people only
 * @param label its heading for people; empty if it is for machines only
 */
public record Column(String key, String label, Kind kind) {
  private static final Pattern SNAKE_CASE = Pattern.compile("([a-z][a-z0-9]*(_[a-z0-9]+)*)?");

  public Column {
    if (!SNAKE_CASE.matcher(key).matches()) {
      throw new IllegalArgumentException("a key must be in snake case: " + key);
    }
    if (key.isEmpty() && label.isEmpty()) {
      throw new IllegalArgumentException("a column without key and label is for nobody");
    }
  }

  /** What a column's cells hold, and so how they are aligned and written. */
  public enum Kind {
    TEXT,
    WHOLE,
    /** A number shown to people with one decimal. */
    DECIMAL,
    /** A probability, shown to people as a percentage. */
    CHANCE,
    /** Money with two decimals; the currency stands in the report. */
    MONEY,
    /** Millimetres, shown to people in their own unit. */
    LENGTH,
    DATE,
    YES_NO,
    /** An empty box to tick on paper. */
    TICK
  }

  public boolean forMachines() {
    return !key.isEmpty();
  }

  public boolean forPeople() {
    return !label.isEmpty();
  }
}
