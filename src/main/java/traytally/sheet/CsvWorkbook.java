package traytally.sheet;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** A text file of rows, as one sheet without a name; all its cells are text. */
final class CsvWorkbook extends Workbook {
  /** Enough rows to tell the delimiter by, few enough to hold. */
  private static final int SAMPLE_CHARACTERS = 1 << 16;

  /**
   * A first line by which spreadsheet programs are told the delimiter, and which they do not show.
   */
  private static final String TOLD = "sep=";

  private final Path file;
  private final TextEncoding encoding;
  private final Optional<Character> told;
  private final char delimiter;
  private final Limits limits;
  private final RowBuilder.Rations rations;

  private CsvWorkbook(
      Path file, TextEncoding encoding, Optional<Character> told, char delimiter, Limits limits) {
    super(List.of(new Sheet(0, "", false)));
    this.file = file;
    this.encoding = encoding;
    this.told = told;
    this.delimiter = delimiter;
    this.limits = limits;
    this.rations = RowBuilder.Rations.of(limits);
  }

  static Workbook of(Path file, Reading reading) throws IOException {
    TextEncoding encoding = TextEncoding.of(file, reading.encoding());
    String sample = sample(file, encoding);
    Optional<Character> told = told(sample);
    char delimiter =
        reading.delimiter().or(() -> told).isPresent()
            ? reading.delimiter().or(() -> told).get()
            : DelimiterGuess.of(sample, reading.limits());
    return new CsvWorkbook(file, encoding, told, delimiter, reading.limits());
  }

  private static Optional<Character> told(String sample) {
    boolean tells =
        sample.length() > TOLD.length()
            && sample.regionMatches(true, 0, TOLD, 0, TOLD.length())
            && (sample.length() == TOLD.length() + 1
                || "\r\n".indexOf(sample.charAt(TOLD.length() + 1)) >= 0);
    return tells ? Optional.of(sample.charAt(TOLD.length())) : Optional.empty();
  }

  /** The first lines; the last is left out where the sample cuts it. */
  private static String sample(Path file, TextEncoding encoding) throws IOException {
    char[] beginning = new char[SAMPLE_CHARACTERS];
    int length = 0;
    try (Reader in = reader(file, encoding)) {
      for (int got;
          length < beginning.length
              && (got = in.read(beginning, length, beginning.length - length)) > 0; ) {
        length += got;
      }
    }
    String sample = new String(beginning, 0, length);
    int lastLine = Math.max(sample.lastIndexOf('\n'), sample.lastIndexOf('\r'));
    return length < beginning.length || lastLine < 0 ? sample : sample.substring(0, lastLine);
  }

  private static Reader reader(Path file, TextEncoding encoding) throws IOException {
    InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
    in.skipNBytes(encoding.markBytes());
    return new InputStreamReader(in, encoding.charset());
  }

  @Override
  Rows begin(Sheet sheet) throws IOException {
    LineReader lines = new LineReader(reader(file, encoding), limits.lineCharacters());
    if (told.isPresent()) {
      lines.next();
    }
    CsvRecords records = new CsvRecords(lines, delimiter, limits);
    return new Rows(new CsvRows(records, new RowBuilder(limits, rations, sheet.name())));
  }

  /** Nothing stays open between two readings of the rows. */
  @Override
  public void close() {}

  /** Rows numbered as a spreadsheet program numbers them: a blank line is one, a record is one. */
  private record CsvRows(CsvRecords records, RowBuilder row) implements Rows.Source {
    @Override
    public Optional<Row> next() throws IOException {
      Optional<String[]> record = records.next();
      while (record.isPresent()) {
        fill(record.get());
        if (!row.isEmpty()) {
          return Optional.of(row.finish());
        }
        record = records.next();
      }
      return Optional.empty();
    }

    private void fill(String[] fields) {
      row.start(row.number() + 1, false);
      for (int column = 0; column < fields.length; column++) {
        row.set(column, Cell.text(InertText.read(fields[column])));
      }
    }

    @Override
    public void close() throws IOException {
      records.close();
    }
  }
}
