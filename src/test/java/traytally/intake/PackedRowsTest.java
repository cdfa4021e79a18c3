package traytally.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/** Packed rows are the rows they were made of. */
class PackedRowsTest {
  private static Row row(int number, int width, int first, boolean hidden) {
    List<Cell> cells = new ArrayList<>();
    for (int i = 0; i < width; i++) {
      cells.add(i % 3 == 2 ? Cell.blank() : Cell.text("cell " + (first + i)));
    }
    return new Row(number, cells, hidden);
  }

  private static void same(List<Row> rows) {
    PackedRows packed = PackedRows.of(rows);
    assertEquals(rows, packed);
    for (int index = rows.size() - 1; index >= 0; index--) {
      Row row = rows.get(index);
      assertEquals(row.number(), packed.number(index));
      for (int column = 0; column < row.cells().size() + 2; column++) {
        assertEquals(row.cell(column), packed.cell(index, column));
      }
      assertEquals(row, packed.get(index));
    }
  }

  @Test
  void rowsOfAllWidthsComeBack() {
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      rows.add(row(i < 100 ? i + 1 : 20_000 * i, i % 40, 7 * i, i % 5 == 0));
    }
    same(rows);
  }

  @Test
  void widestRowsFillOneBlockAfterAnother() {
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      rows.add(row(i + 1, 16_384, 100 * i, false));
      rows.add(row(1_000_000 + i, 3, 0, true));
    }
    same(rows);
  }

  @Test
  void whatIsPackedStaysSo() {
    PackedRows packed = PackedRows.of(List.of(row(1, 2, 0, false)));
    assertSame(packed, PackedRows.of(packed));
    assertThrows(IndexOutOfBoundsException.class, () -> packed.get(1));
    assertThrows(IndexOutOfBoundsException.class, () -> packed.get(-1));
    assertTrue(PackedRows.of(List.of()).isEmpty());
  }

  @Test
  void rowsAreCountedAsTheyAreAdded() {
    PackedRows.Builder builder = new PackedRows.Builder();
    assertEquals(0, builder.size());
    builder.add(row(1, 2, 0, false));
    assertEquals(1, builder.size());
    assertEquals(1, builder.done().size());
  }
}
