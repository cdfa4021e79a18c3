package traytally.intake;

import java.util.AbstractList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.RandomAccess;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * Rows in little memory: each distinct cell is kept once and a row is the numbers of its cells, so
 * that a million rows of eight cells take some 20 MB and not some 200 (reckoned from the bytes of
 * each). Rows are added first and read afterwards; nothing can be changed.
 */
final class PackedRows extends AbstractList<Row> implements RandomAccess {
  /** Distinct cells looked up; lists repeat few words many times, and notes need no sharing. */
  private static final int SHARED_CELLS = 200_000;

  /** Bytes of one block; a row never spans two, and the widest (16,384 cells) needs 5 a cell. */
  private static final int BLOCK = 1 << 17;

  private final List<Cell> cells = new ArrayList<>();
  private final List<byte[]> blocks = new ArrayList<>();
  private int[] starts = new int[64];
  private int rows;
  private int filled = BLOCK;
  private int reading;
  // The row last unpacked: lists are gone through from top to bottom, cell by cell.
  private int current = -1;
  private int[] numbers = new int[16];
  private int width;
  // How many of its cells, and where the next begins: one column may be all that is asked for.
  private int unpacked;
  private int next;

  private PackedRows() {}

  /** Packs rows one after another. */
  static final class Builder {
    private final PackedRows packed = new PackedRows();
    private final Map<Cell, Integer> shared = new HashMap<>();

    Builder() {
      number(Cell.blank());
    }

    void add(Row row) {
      packed.begin(row);
      for (int column = 0; column < row.cells().size(); column++) {
        packed.write(number(row.cell(column)));
      }
    }

    private int number(Cell cell) {
      Integer known = shared.get(cell);
      if (known != null) {
        return known;
      }
      int number = packed.cells.size();
      packed.cells.add(cell);
      if (number < SHARED_CELLS) {
        shared.put(cell, number);
      }
      return number;
    }

    int size() {
      return packed.rows;
    }

    PackedRows done() {
      return packed;
    }
  }

  /** The same rows, packed. */
  static PackedRows of(List<Row> rows) {
    if (rows instanceof PackedRows packed) {
      return packed;
    }
    Builder builder = new Builder();
    rows.forEach(builder::add);
    return builder.done();
  }

  private void begin(Row row) {
    // Number, width and flags, and every cell: five bytes each at most.
    int most = 5 * (row.cells().size() + 2);
    if (BLOCK - filled < most) {
      blocks.add(new byte[BLOCK]);
      filled = 0;
    }
    if (rows == starts.length) {
      starts = Arrays.copyOf(starts, rows * 2);
    }
    starts[rows++] = (blocks.size() - 1) * BLOCK + filled;
    write(row.number());
    write(row.cells().size() * 4 + (row.struck() ? 2 : 0) + (row.hidden() ? 1 : 0));
  }

  /** Seven bits a byte, the lowest first; the eighth says that more follow. */
  private void write(int number) {
    byte[] block = blocks.get(blocks.size() - 1);
    int rest = number;
    while (rest > 0x7F) {
      block[filled++] = (byte) (rest | 0x80);
      rest >>>= 7;
    }
    block[filled++] = (byte) rest;
  }

  private int read(byte[] block) {
    int next = block[reading++];
    if (next >= 0) {
      return next;
    }
    int number = next & 0x7F;
    for (int shift = 7; next < 0; shift += 7) {
      next = block[reading++];
      number |= (next & 0x7F) << shift;
    }
    return number;
  }

  private byte[] seek(int index) {
    int start = starts[index];
    reading = start % BLOCK;
    return blocks.get(start / BLOCK);
  }

  /** The cell of a row, by the row's place among these; blank beyond the last filled one. */
  Cell cell(int index, int column) {
    if (index != current) {
      begin(index);
    }
    if (column >= width) {
      return Cell.blank();
    }
    if (column >= unpacked) {
      unpackTo(column);
    }
    return cells.get(numbers[column]);
  }

  private void begin(int index) {
    byte[] block = seek(index);
    read(block);
    width = read(block) >> 2;
    if (width > numbers.length) {
      numbers = new int[width];
    }
    current = index;
    unpacked = 0;
    next = reading;
  }

  private void unpackTo(int column) {
    byte[] block = blocks.get(starts[current] / BLOCK);
    reading = next;
    while (unpacked <= column) {
      numbers[unpacked++] = read(block);
    }
    next = reading;
  }

  /** Every cell that stands in some row, most of them once. */
  List<Cell> cells() {
    return Collections.unmodifiableList(cells);
  }

  /** The number of a row as the spreadsheet program shows it, by its place among these. */
  int number(int index) {
    return read(seek(index));
  }

  @Override
  public Row get(int index) {
    if (index < 0 || index >= rows) {
      throw new IndexOutOfBoundsException(index);
    }
    byte[] block = seek(index);
    int number = read(block);
    int about = read(block);
    Cell[] row = new Cell[about >> 2];
    for (int column = 0; column < row.length; column++) {
      row[column] = cells.get(read(block));
    }
    return new Row(number, List.of(row), (about & 1) != 0, (about & 2) != 0);
  }

  @Override
  public int size() {
    return rows;
  }
}
