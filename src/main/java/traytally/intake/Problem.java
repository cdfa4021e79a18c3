package traytally.intake;

import java.util.Locale;
import traytally.sheet.Address;

/**
 * One thing about one row that the person should know.
 *
 * @param file the file's name
 * @param sheet the tab's name, empty for a text file
 * @param row as the spreadsheet program shows it, from 1
 * @param column the letters over the column, empty where it concerns the whole row
 * @param value as typed
 * @param problem what is wrong and what to do; it goes on after the value
 */
public record Problem(
    String file,
    String sheet,
    int row,
    String column,
    String value,
    String problem,
    Severity severity) {

  /** How much it matters. */
  public enum Severity {
    /** The row was not taken. */
    PROBLEM,
    /** The row was taken; something was assumed or left out. */
    NOTE,
    /** The row was taken at a number that the person marked as a guess. */
    APPROXIMATE;

    /** The word used in output. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  static Problem of(
      GivenSheet sheet, int row, int column, String value, String problem, Severity severity) {
    Address at = sheet.place(row, Math.max(column, 0));
    return new Problem(
        sheet.file(),
        sheet.name(),
        at.row(),
        column < 0 ? "" : Address.columnLetters(at.column()),
        value,
        problem,
        severity);
  }

  /** Where: {@code trips.xlsx, Trips!D14}. */
  public String place() {
    String cell = column.isEmpty() ? "row " + row : column + row;
    return sheet.isEmpty() ? file + ", " + cell : file + ", " + sheet + "!" + cell;
  }

  /** All of it: {@code trips.xlsx, Trips!D14: "3 pk" is not a count of pieces. …}. */
  public String sentence() {
    return value.isEmpty() ? place() + ": " + problem : place() + ": \"" + value + "\" " + problem;
  }
}
