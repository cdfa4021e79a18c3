package traytally.sheet;

import java.io.IOException;
import java.util.Iterator;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Optional;
import javax.xml.stream.XMLStreamException;

/**
 * The rows of one sheet, read as they are asked for. Rows that hold nothing are passed over; their
 * numbers show the gap. Rows come in the file's order, which is that of their numbers in all but
 * odd files.
 */
public final class Rows implements Iterator<Row>, AutoCloseable {
  private final Source source;
  private Optional<Row> next = Optional.empty();
  private boolean ended;

  Rows(Source source) {
    this.source = source;
  }

  /** Where rows come from; may fail in any way, which {@link Rows} puts into words. */
  interface Source extends AutoCloseable {
    /** The next row that holds something, empty after the last. */
    Optional<Row> next() throws IOException, XMLStreamException;

    /** The merged areas, all of them known after the last row; most kinds of file have none. */
    default List<CellRange> merges() {
      return List.of();
    }

    @Override
    void close() throws IOException, XMLStreamException;
  }

  /**
   * The merged areas of the sheet, which stand behind its rows; the first cell of each holds all.
   *
   * @throws IllegalStateException before the last row was read
   */
  public List<CellRange> merges() {
    if (!ended) {
      throw new IllegalStateException("merged areas are known after the last row");
    }
    return List.copyOf(source.merges());
  }

  /**
   * Whether another row follows.
   *
   * @throws UnreadableSheetException when the file turns out to be broken here
   */
  @Override
  public boolean hasNext() {
    if (next.isEmpty() && !ended) {
      next = Refusal.unlessRead(source::next);
      ended = next.isEmpty();
    }
    return next.isPresent();
  }

  @Override
  public Row next() {
    if (!hasNext()) {
      throw new NoSuchElementException("no row after the last");
    }
    Row row = next.orElseThrow();
    next = Optional.empty();
    return row;
  }

  @Override
  public void close() {
    ended = true;
    next = Optional.empty();
    Refusal.unlessRead(
        () -> {
          source.close();
          return true;
        });
  }
}
