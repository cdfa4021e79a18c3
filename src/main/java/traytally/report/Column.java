package traytally.report;

import java.util.regex.Pattern;

/**
 * A column of a report.
 *
 * @param key its name in json and csv, snake case; empty if it is for people only
 * @param label its heading for people; empty if it is for machines only
 * @param room what becomes of it where the columns do not all fit side by side
 */
public record Column(String key, String label, Kind kind, Room room) {
  private static final Pattern SNAKE_CASE = Pattern.compile("([a-z][a-z0-9]*(_[a-z0-9]+)*)?");

  public Column {
    if (!SNAKE_CASE.matcher(key).matches()) {
      throw new IllegalArgumentException("a key must be in snake case: " + key);
    }
    if (key.isEmpty() && label.isEmpty()) {
      throw new IllegalArgumentException("a column without key and label is for nobody");
    }
  }

  /** A column that always stands beside the others. */
  public Column(String key, String label, Kind kind) {
    this(key, label, kind, Room.BESIDE);
  }

  /** This column, but for machines only. */
  public Column forMachinesOnly() {
    return new Column(key, "", kind, room);
  }

  /** This column with {@code room}. */
  public Column with(Room wanted) {
    return new Column(key, label, kind, wanted);
  }

  /** Where people find a column when the page is narrow. */
  public enum Room {
    /** Beside the others, as long as that can be. */
    BESIDE,
    /** On lines of its own below its row: sentences. */
    BELOW,
    /** Nowhere: left out, and named below the table; the last of several goes first. */
    SPARE
  }

  /** What a column's cells hold, and so how they are aligned and written. */
  public enum Kind {
    /** Somebody's own words, shown as they are. */
    TEXT,
    /**
     * The program's own words, with figures in them that people see as their country writes them.
     */
    SENTENCE,
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
    TICK,
    /** A patch of colour; plain text has no such column. */
    SWATCH
  }

  public boolean forMachines() {
    return !key.isEmpty();
  }

  public boolean forPeople() {
    return !label.isEmpty();
  }
}
