package traytally.sheet;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import javax.xml.stream.XMLStreamException;

/**
 * The rows of a sheet whose file has them in pieces and out of order, put right. They are all held
 * at once, which an .xls bears with its 65,536 rows; of two values for a cell the later stands, as
 * it does in spreadsheet programs.
 */
final class RowsInOrder implements Rows.Source {
  private final Rows.Source pieces;
  private final TreeMap<Integer, Row> rows = new TreeMap<>();
  private boolean gathered;

  RowsInOrder(Rows.Source pieces) {
    this.pieces = pieces;
  }

  @Override
  public Optional<Row> next() throws IOException, XMLStreamException {
    if (!gathered) {
      Optional<Row> piece = pieces.next();
      while (piece.isPresent()) {
        rows.merge(piece.get().number(), piece.get(), RowsInOrder::joined);
        piece = pieces.next();
      }
      gathered = true;
    }
    return Optional.ofNullable(rows.pollFirstEntry()).map(entry -> entry.getValue());
  }

  private static Row joined(Row earlier, Row later) {
    List<Cell> cells = new ArrayList<>(later.cells());
    while (cells.size() < earlier.cells().size()) {
      cells.add(Cell.blank());
    }
    for (int column = 0; column < cells.size(); column++) {
      if (cells.get(column) instanceof Cell.Blank) {
        cells.set(column, earlier.cell(column));
      }
    }
    return new Row(
        later.number(),
        cells,
        earlier.hidden() || later.hidden(),
        earlier.struck() && later.struck());
  }

  @Override
  public List<CellRange> merges() {
    return pieces.merges();
  }

  @Override
  public void close() throws IOException, XMLStreamException {
    pieces.close();
  }
}
