package traytally.intake;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
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

  private final int number;
  private final Map<Field, Place> places = new EnumMap<>(Field.class);
  private final Set<Field> doubted = EnumSet.noneOf(Field.class);

  ListRow(int number) {
    this.number = number;
  }

  /** The row's number as the spreadsheet program shows it. */
  int number() {
    return number;
  }

  void put(Field field, Cell cell, int column) {
    places.put(field, new Place(cell, column, false));
  }

  void fill(Field field, Place from) {
    places.put(field, new Place(from.cell(), from.column(), true));
  }

  /** A row of the same cells that can go its own way. */
  ListRow copy() {
    ListRow copy = new ListRow(number);
    copy.places.putAll(places);
    copy.doubted.addAll(doubted);
    return copy;
  }

  /** Marks a number that is told for several plastics at once. */
  void doubt(Field field) {
    doubted.add(field);
  }

  boolean isDoubted(Field field) {
    return doubted.contains(field);
  }

  /** Where {@code field} stands; a blank in no column if the list does not tell it. */
  Place place(Field field) {
    return places.getOrDefault(field, NOWHERE);
  }

  boolean isBlank(Field field) {
    return isBlank(place(field).cell());
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
    return Numbers.plain(place(field).cell().shown());
  }
}
