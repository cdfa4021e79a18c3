package traytally.sheet;

import com.opencsv.RFC4180Parser;
import com.opencsv.RFC4180ParserBuilder;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/**
 * The records of a delimited text (RFC 4180), told apart and mended so that OpenCSV's parser splits
 * them as a person means them.
 *
 * <p>Quotes a person typed as inch marks need the mending. A quote counts only at the start of a
 * field (RFC 4180, 2.5), which leaves {@code 3" paddle} alone. One that opens a field and is never
 * closed, or not within what a cell can hold, is text; and what stands between a closing quote and
 * the next delimiter belongs to the field.
 */
final class CsvRecords implements AutoCloseable {
  private static final char QUOTE = '"';

  private final LineReader lines;
  private final char delimiter;
  private final int cellLimit;
  private final RFC4180Parser parser;

  // The record being mended.
  private final StringBuilder mended = new StringBuilder();
  private LineReader.Line line = new LineReader.Line("", "");
  private int at;

  CsvRecords(LineReader lines, char delimiter, Limits limits) {
    this.lines = lines;
    this.delimiter = delimiter;
    this.cellLimit = limits.cellCharacters();
    this.parser = new RFC4180ParserBuilder().withSeparator(delimiter).build();
  }

  /** The fields of the next record; a blank line is a record of one empty field. */
  Optional<String[]> next() throws IOException {
    Optional<LineReader.Line> read = lines.next();
    if (read.isEmpty()) {
      return Optional.empty();
    }
    line = read.get();
    if (line.text().indexOf(QUOTE) < 0) {
      return Optional.of(parser.parseLine(line.text()));
    }
    mend();
    return Optional.of(parser.parseLine(mended.toString()));
  }

  /** Writes the record that begins with the line into {@link #mended}, beyond doubt quoted. */
  private void mend() throws IOException {
    mended.setLength(0);
    at = 0;
    while (true) {
      if (at < line.text().length() && line.text().charAt(at) == QUOTE) {
        mendQuoted();
      } else {
        copyToDelimiter();
      }
      if (at >= line.text().length()) {
        return;
      }
      mended.append(delimiter);
      at++;
    }
  }

  private void copyToDelimiter() {
    int end = delimiterFrom(at);
    mended.append(line.text(), at, end);
    at = end;
  }

  private int delimiterFrom(int start) {
    int end = line.text().indexOf(delimiter, start);
    return end < 0 ? line.text().length() : end;
  }

  /** A field that opens with a quote, over as many lines as it takes. */
  private void mendQuoted() throws IOException {
    int begun = mended.length();
    LineReader.Line first = line;
    int opened = at;
    Deque<LineReader.Line> passed = new ArrayDeque<>();
    mended.append(QUOTE);
    at++;
    while (!copyToClosing()) {
      Optional<LineReader.Line> more =
          mended.length() - begun > cellLimit ? Optional.empty() : lines.next();
      if (more.isEmpty()) {
        if (passed.isEmpty() && mended.length() - begun <= cellLimit) {
          mended.append(QUOTE); // the file ends within its last line: only the closing is missing
          return;
        }
        while (!passed.isEmpty()) {
          lines.giveBack(line);
          line = passed.removeLast();
        }
        mended.setLength(begun);
        takeQuoteAsText(first, opened);
        return;
      }
      mended.append(line.end());
      passed.addLast(line);
      line = more.get();
      at = 0;
    }
    appendDoubled(line.text(), at, delimiterFrom(at));
    mended.append(QUOTE);
    at = delimiterFrom(at);
  }

  private void takeQuoteAsText(LineReader.Line first, int opened) {
    line = first;
    mended.append(QUOTE);
    appendDoubled(line.text(), opened, delimiterFrom(opened));
    mended.append(QUOTE);
    at = delimiterFrom(opened);
  }

  /** Copies the line as far as a quote that closes the field; false when it has none. */
  private boolean copyToClosing() {
    String text = line.text();
    while (at < text.length()) {
      char c = text.charAt(at++);
      if (c != QUOTE) {
        mended.append(c);
      } else if (at < text.length() && text.charAt(at) == QUOTE) {
        mended.append(QUOTE).append(QUOTE);
        at++;
      } else {
        return true;
      }
    }
    return false;
  }

  private void appendDoubled(String text, int start, int end) {
    for (int i = start; i < end; i++) {
      if (text.charAt(i) == QUOTE) {
        mended.append(QUOTE);
      }
      mended.append(text.charAt(i));
    }
  }

  @Override
  public void close() throws IOException {
    lines.close();
  }
}
