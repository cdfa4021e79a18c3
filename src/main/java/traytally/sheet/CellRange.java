package traytally.sheet;

/** A rectangle of cells, both corners included; merged cells are one, and its first holds all. */
public record CellRange(Address first, Address last) {
  public CellRange {
    if (last.row() < first.row() || last.column() < first.column()) {
      throw new IllegalArgumentException("corners the wrong way round: " + first + ":" + last);
    }
  }

  /** Reads a range such as A1:C2, or a lone address as a range of one cell. */
  public static CellRange parse(String text) {
    int colon = text.indexOf(':');
    Address first = Address.parse(colon < 0 ? text : text.substring(0, colon));
    return colon < 0
        ? new CellRange(first, first)
        : between(first, Address.parse(text.substring(colon + 1)));
  }

  /** The range with two opposite corners, whichever they are: some programs write them reversed. */
  static CellRange between(Address one, Address other) {
    return new CellRange(
        new Address(Math.min(one.row(), other.row()), Math.min(one.column(), other.column())),
        new Address(Math.max(one.row(), other.row()), Math.max(one.column(), other.column())));
  }

  /** Whether the cell lies within. */
  public boolean contains(Address cell) {
    return cell.row() >= first.row()
        && cell.row() <= last.row()
        && cell.column() >= first.column()
        && cell.column() <= last.column();
  }

  @Override
  public String toString() {
    return first + ":" + last;
  }
}
