package traytally.sheet;

/**
 * Where a cell stands, shown as a spreadsheet program does: D14.
 *
 * @param row counted from 1
 * @param column counted from 0, so that A is 0
 */
public record Address(int row, int column) {
  public Address {
    if (row < 1 || column < 0) {
      throw new IllegalArgumentException(
          "row must be at least 1 and column at least 0: " + row + ", " + column);
    }
  }

  /** Reads an address such as D14 or $D$14. */
  public static Address parse(String text) {
    int column = 0;
    int row = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c >= '0' && c <= '9' && column > 0) {
        row = row * 10 + (c - '0');
      } else if (isLetter(c) && row == 0) {
        column = column * 26 + (c & 31);
      } else if (c != '$') {
        throw notAnAddress(text);
      }
      if (row > 100_000_000 || column > 10_000_000) {
        throw notAnAddress(text);
      }
    }
    if (row == 0 || column == 0) {
      throw notAnAddress(text);
    }
    return new Address(row, column - 1);
  }

  /** The letters over a column: 0 is A, 26 is AA. */
  public static String columnLetters(int column) {
    if (column < 0) {
      throw new IllegalArgumentException("column must be at least 0: " + column);
    }
    StringBuilder letters = new StringBuilder();
    for (int left = column + 1; left > 0; left = (left - 1) / 26) {
      letters.append((char) ('A' + (left - 1) % 26));
    }
    return letters.reverse().toString();
  }

  @Override
  public String toString() {
    return columnLetters(column) + row;
  }

  private static boolean isLetter(char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
  }

  private static IllegalArgumentException notAnAddress(String text) {
    return new IllegalArgumentException("not the address of a cell: " + text);
  }
}
