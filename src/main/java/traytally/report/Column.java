package traytally.report;

/**
 * A column of a report.
 *
 * @param key its name in json and csv, snake case; empty if it is for people only
 * @param label its heading for people; empty if it is for machines only
 */
public record Column(String key, String label, Kind kind) {

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
