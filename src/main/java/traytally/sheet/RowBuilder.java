package traytally.sheet;

import java.util.ArrayList;
import java.util.List;

/** Gathers the cells of one row after another and keeps watch over their number and size. */
final class RowBuilder {
  private final Limits limits;
  private final Ration.Meter cells;
  private final Ration.Meter characters;
  private final List<Cell> gathered = new ArrayList<>();
  private int number;
  private boolean hidden;
  private boolean struck;

  /** Begins the rows of one sheet; its name tells it from others of the workbook. */
  RowBuilder(Limits limits, Rations rations, String sheet) {
    this.limits = limits;
    this.cells = rations.cells().meter(sheet);
    this.characters = rations.characters().meter(sheet);
  }

  /** What all sheets of a workbook share. */
  record Rations(Ration cells, Ration characters) {
    static Rations of(Limits limits) {
      return new Rations(
          new Ration(
              limits.cells(),
              "This file has more cells than can be read. Copy the columns you need into a new"
                  + " file and import that."),
          new Ration(
              limits.givenCharacters(),
              "This file holds more text than can be read. Copy the rows you need into a new file"
                  + " and import that."));
    }
  }

  void start(int row, boolean isHidden) {
    if (row < 1) {
      throw new UnreadableSheetException(
          "This file is damaged: it has a row numbered " + row + ". " + SAVE_AGAIN);
    }
    if (row > limits.rows()) {
      throw new UnreadableSheetException(
          "This file has more rows than a spreadsheet can show. Split it and import the parts.");
    }
    number = row;
    hidden = isHidden;
    struck = true;
    gathered.clear();
  }

  /** The number of the row begun last, 0 before the first. */
  int number() {
    return number;
  }

  void set(int column, Cell cell) {
    set(column, cell, false);
  }

  /** Puts a cell that is perhaps struck out into a column. */
  void set(int column, Cell cell, boolean isStruck) {
    if (column < 0 || column >= limits.columns()) {
      throw new UnreadableSheetException(
          "This file has more columns than a spreadsheet can show. Copy the columns you need into"
              + " a new file and import that.");
    }
    if (cell instanceof Cell.Blank) {
      return;
    }
    struck &= isStruck;
    if (cell instanceof Cell.Text text) {
      checkLength(text.text().length(), limits);
      characters.add(text.text().length());
    }
    if (column >= gathered.size()) {
      cells.add(column + 1L - gathered.size());
      while (gathered.size() < column) {
        gathered.add(Cell.blank());
      }
      gathered.add(cell);
    } else {
      gathered.set(column, cell);
    }
  }

  static void checkLength(int length, Limits limits) {
    if (length > limits.cellCharacters()) {
      throw new UnreadableSheetException(
          "A cell of this file holds more text than a spreadsheet allows ("
              + limits.cellCharacters()
              + " characters). Shorten it and import the file again.");
    }
  }

  boolean isEmpty() {
    return gathered.isEmpty();
  }

  Row finish() {
    return new Row(number, gathered, hidden, struck);
  }

  /** What helps with most damaged files. */
  static final String SAVE_AGAIN =
      "Open it in a spreadsheet program, save it again as .xlsx or .csv, and import that.";
}
