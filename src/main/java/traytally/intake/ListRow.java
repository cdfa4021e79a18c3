package traytally.intake;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import traytally.sheet.Cell;

/** One row of a list, its cells by what they tell. */
final class ListRow {
  /**
   * A cell and the column it stands in, counted from 0.
   *
   * @param filled whether it was taken from a row above
   */
  record Place(Cell cell, int column, boolean filled) {}

  private static final Place NOWHERE = new Place(Cell.blank(), -1, false);

  private static final Columns NONE = new Columns(Optional.empty(), Map.of());

  private final Columns columns;
  private final int index;
  private Map<Field, Place> own = Map.of();
  private Map<Field, Object> doubted = Map.of();

  private ListRow(Columns columns, int index) {
    this.columns = columns;
    this.index = index;
  }

  /** A row of nothing. */
  static ListRow empty() {
    return new ListRow(NONE, 0);
  }

  /** Which column of a sheet tells what, the same for all rows of a list. */
  static final class Columns {
    private final Optional<GivenSheet> sheet;
    private final Map<Field, Integer> columns = new EnumMap<>(Field.class);

    private Columns(Optional<GivenSheet> sheet, Map<Field, Integer> columns) {
      this.sheet = sheet;
      this.columns.putAll(columns);
    }

    static Columns of(GivenSheet sheet, Map<Field, Integer> columns) {
      return new Columns(Optional.of(sheet), columns);
    }

    /** The row at a place in the sheet. */
    ListRow row(int index) {
      return new ListRow(this, index);
    }

    /** Below 0 if no column tells it. */
    private int column(Field field) {
      return columns.getOrDefault(field, -1);
    }

    private Cell cell(int index, int column) {
      return sheet.orElseThrow().cell(index, column);
    }
  }

  /** The row's number as the spreadsheet program shows it. */
  int number() {
    return columns.sheet.map(sheet -> sheet.number(index)).orElse(1);
  }

  /** The cell of a column of the sheet, whatever it tells. */
  Cell at(int column) {
    return columns.cell(index, column);
  }

  void put(Field field, Cell cell, int column) {
    own(field, new Place(cell, column, false));
  }

  void fill(Field field, Place from) {
    own(field, new Place(from.cell(), from.column(), true));
  }

  /** Most rows of a long list have no cell of their own making, and need no map. */
  private void own(Field field, Place place) {
    if (own.isEmpty()) {
      own = new EnumMap<>(Field.class);
    }
    own.put(field, place);
  }

  /** A row of the same cells that can go its own way. */
  ListRow copy() {
    ListRow copy = new ListRow(columns, index);
    own.forEach(copy::own);
    doubted.forEach(copy::doubt);
    return copy;
  }

  /**
   * Marks a number that is told for several plastics at once.
   *
   * @param whole the same object for all that it is told for
   */
  void doubt(Field field, Object whole) {
    if (doubted.isEmpty()) {
      doubted = new EnumMap<>(Field.class);
    }
    doubted.put(field, whole);
  }

  /** What stands for all that share the number with this row, if it is told for several. */
  Optional<Object> doubted(Field field) {
    return Optional.ofNullable(doubted.get(field));
  }

  /** Takes back that a number is told for several. */
  void settle(Field field) {
    doubted.remove(field);
  }

  /** Where {@code field} stands; a blank in no column if the list does not tell it. */
  Place place(Field field) {
    Place place = own.get(field);
    if (place != null) {
      return place;
    }
    int column = columns.column(field);
    return column < 0 ? NOWHERE : new Place(columns.cell(index, column), column, false);
  }

  /** The cell of {@code field}; a blank if the list does not tell it. */
  Cell cell(Field field) {
    if (!own.isEmpty()) {
      return place(field).cell();
    }
    int column = columns.column(field);
    return column < 0 ? Cell.blank() : columns.cell(index, column);
  }

  boolean isBlank(Field field) {
    return isBlank(cell(field));
  }

  /** What {@link Cell#isBlank} says, without its cost: a long list asks this millions of times. */
  static boolean isBlank(Cell cell) {
    if (cell instanceof Cell.Text text && !text.text().isEmpty() && text.text().charAt(0) > ' ') {
      char first = text.text().charAt(0);
      return first >= 127 && cell.isBlank();
    }
    return cell.isBlank();
  }

  /** The text in {@code field}, without outer blanks. */
  String text(Field field) {
    return Numbers.plain(cell(field).shown());
  }
}
