package traytally.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RowsInOrderTest {
  @TempDir Path folder;

  private static Row row(int number, String... texts) {
    List<Cell> cells = new ArrayList<>();
    for (String text : texts) {
      cells.add(Cell.text(text));
    }
    return new Row(number, cells, false);
  }

  @Test
  void piecesOfARowAreJoinedAndRowsPutInOrder() {
    Deque<Row> pieces =
        new ArrayDeque<>(
            List.of(row(3, "c"), row(1, "a", "old", "x"), row(2, "b"), row(1, "", "new")));
    Rows.Source source =
        new Rows.Source() {
          @Override
          public Optional<Row> next() {
            return Optional.ofNullable(pieces.poll());
          }

          @Override
          public void close() {
            pieces.clear();
          }
        };
    List<Row> found = new ArrayList<>();
    try (Rows rows = new Rows(new RowsInOrder(source))) {
      rows.forEachRemaining(found::add);
    }
    assertEquals(List.of(row(1, "a", "new", "x"), row(2, "b"), row(3, "c")), found);
  }

  @Test
  void anXlsWhoseRowsAreJumbledIsPutInOrder() throws IOException {
    Path file = folder.resolve("box.xls");
    try (HSSFWorkbook workbook = new HSSFWorkbook();
        var out = Files.newOutputStream(file)) {
      var sheet = workbook.createSheet("Box");
      for (int row = 0; row < 3; row++) {
        sheet.createRow(row).createCell(9).setCellValue(row + 0.25);
      }
      workbook.write(out);
    }
    byte[] bytes = Files.readAllBytes(file);
    // The first cell's record, moved to row 5 where it stands: its row follows its length, 14.
    int first = HostileFileTest.find(bytes, new byte[] {3, 2, 14, 0, 0, 0, 9, 0});
    bytes[first + 4] = 4;
    Files.write(file, bytes);
    List<Integer> numbers = Reader.rows(file).stream().map(Row::number).toList();
    assertEquals(List.of(2, 3, 5), numbers);
    assertTrue(Reader.shown(file).get(2).endsWith("|0.25"));
  }
}
