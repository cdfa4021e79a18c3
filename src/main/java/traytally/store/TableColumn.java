package traytally.store;

/**
 * A column of a box's table, as it is handed out.
 *
 * @param optional whether an empty cell means that it is not known
 */
public record TableColumn(String name, Kind kind, boolean optional) {
  /** What its cells hold. */
  public enum Kind {
    TEXT,
    WHOLE,
    REAL
  }
}
