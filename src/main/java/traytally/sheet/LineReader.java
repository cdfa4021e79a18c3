package traytally.sheet;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/** The lines of a text with their ends, which count within quotes; ends may be LF, CRLF or CR. */
final class LineReader implements AutoCloseable {
  private final Reader in;
  private final int limit;
  private final char[] block = new char[1 << 15];
  private final Deque<Line> returned = new ArrayDeque<>();
  private int from;
  private int to;

  LineReader(Reader in, int limit) {
    this.in = in;
    this.limit = limit;
  }

  /** One line and what ended it, empty at the end of the file. */
  record Line(String text, String end) {}

  /** Puts a line back, to be read next. */
  void giveBack(Line line) {
    returned.addFirst(line);
  }

  Optional<Line> next() throws IOException {
    if (!returned.isEmpty()) {
      return Optional.of(returned.removeFirst());
    }
    if (from == to && !fill()) {
      return Optional.empty();
    }
    StringBuilder whole = new StringBuilder(0);
    while (true) {
      int start = from;
      while (from < to && block[from] != '\n' && block[from] != '\r') {
        from++;
      }
      if (whole.length() + (from - start) > limit) {
        throw new UnreadableSheetException(
            "A line of this file is too long for a list (over "
                + limit
                + " characters). Check that it is a list, with one row on each line.");
      }
      if (from < to && whole.length() == 0) {
        return Optional.of(new Line(new String(block, start, from - start), end()));
      }
      whole.append(block, start, from - start);
      if (from < to) {
        return Optional.of(new Line(whole.toString(), end()));
      }
      if (!fill()) {
        return Optional.of(new Line(whole.toString(), ""));
      }
    }
  }

  /** Passes over the line end that stands next; a CR and its LF may lie in two blocks. */
  private String end() throws IOException {
    if (block[from++] == '\n') {
      return "\n";
    }
    if ((from < to || fill()) && block[from] == '\n') {
      from++;
      return "\r\n";
    }
    return "\r";
  }

  private boolean fill() throws IOException {
    from = 0;
    to = Math.max(0, in.read(block, 0, block.length));
    return to > 0;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
