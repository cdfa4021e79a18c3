package traytally.export;

import com.opencsv.CSVReader;
import com.opencsv.CSVReaderBuilder;
import com.opencsv.CSVWriter;
import com.opencsv.ICSVWriter;
import com.opencsv.RFC4180Parser;
import com.opencsv.exceptions.CsvValidationException;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PushbackReader;
import java.io.Reader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import traytally.sheet.InertText;
import traytally.store.Box;
import traytally.store.Part;
import traytally.store.TableColumn;
import traytally.store.TableSink;

/** A box as a folder of CSV (RFC 4180, UTF-8): a file a table, its columns in the first line. */
final class ExportFolder implements Export {
  /** The file that tells what the folder is. */
  static final String ABOUT = "export.csv";

  private static final String[] ABOUT_COLUMNS = {"schema", "box_version"};
  private static final String ENDING = ".csv";
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private final Path folder;

  ExportFolder(Path folder) {
    this.folder = folder;
  }

  static void write(Box box, Path folder) throws IOException {
    Path whole = folder.toAbsolutePath().normalize();
    Files.createDirectories(whole.getParent());
    try (Part part = Part.folderBeside(whole)) {
      try (Writing writing = new Writing(part)) {
        writing.lines(ABOUT, ABOUT_COLUMNS, SCHEMA, String.valueOf(Box.version()));
        box.export(writing);
      }
      part.take();
    }
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(ENDING)).sorted().toList();
    }
  }

  @Override
  public int version() throws IOException {
    List<String[]> about = new ArrayList<>();
    read(folder.resolve(ABOUT), (columns, cells, line) -> about.add(cells));
    if (about.size() != 1
        || about.get(0).length != ABOUT_COLUMNS.length
        || !about.get(0)[0].equals(SCHEMA)
        || !about.get(0)[1].matches("[1-9]\\d{0,5}")) {
      throw new IOException(folder.resolve(ABOUT) + " does not say " + SCHEMA + " and a version");
    }
    return Integer.parseInt(about.get(0)[1]);
  }

  @Override
  public void pour(Into box) throws IOException {
    for (Path file : files(folder)) {
      String name = String.valueOf(file.getFileName());
      if (!name.equals(ABOUT)) {
        String table = name.substring(0, name.length() - ENDING.length());
        read(
            file,
            (columns, cells, line) ->
                box.row(
                    table,
                    List.of(columns),
                    Arrays.stream(cells).map(InertText::read).toList(),
                    file + ", record " + line));
      }
    }
  }

  /** Takes one record. */
  @FunctionalInterface
  private interface Records {
    void take(String[] columns, String[] cells, long record);
  }

  private static void read(Path file, Records records) throws IOException {
    try (CSVReader csv =
        new CSVReaderBuilder(text(file))
            .withCSVParser(new RFC4180Parser())
            .withKeepCarriageReturn(true)
            .build()) {
      String[] columns = csv.readNext();
      if (columns == null) {
        throw new IOException(file + " is empty; its first line names the columns");
      }
      long record = 1;
      for (String[] cells = csv.readNext(); cells != null; cells = csv.readNext()) {
        records.take(columns, cells, ++record);
      }
    } catch (CsvValidationException e) {
      throw new IOException(file + " is not CSV: " + e.getMessage(), e);
    }
  }

  /** The file's text without the mark that a spreadsheet program may have put before it. */
  private static Reader text(Path file) throws IOException {
    PushbackReader reader =
        new PushbackReader(
            new BufferedReader(Files.newBufferedReader(file, StandardCharsets.UTF_8)));
    int first = reader.read();
    if (first >= 0 && first != BYTE_ORDER_MARK) {
      reader.unread(first);
    }
    return reader;
  }

  /** Writes a file for each table. */
  private static final class Writing implements TableSink, AutoCloseable {
    private final Part folder;
    private String table = "";
    private ICSVWriter lines = new CSVWriter(Writer.nullWriter());

    Writing(Part folder) {
      this.folder = folder;
    }

    @Override
    public void row(String next, List<TableColumn> columns, List<String> cells) throws IOException {
      if (!next.equals(table)) {
        close();
        table = next;
        lines = open(next + ENDING);
        lines.writeNext(columns.stream().map(TableColumn::name).toArray(String[]::new), false);
      }
      if (!cells.isEmpty()) {
        String[] line = cells.toArray(String[]::new);
        for (int i = 0; i < line.length; i++) {
          if (columns.get(i).kind() == TableColumn.Kind.TEXT) {
            line[i] = InertText.write(line[i]);
          }
        }
        lines.writeNext(line, false);
      }
    }

    void lines(String name, String[] columns, String... cells) throws IOException {
      try (ICSVWriter file = open(name)) {
        file.writeNext(columns, false);
        file.writeNext(cells, false);
      }
    }

    private ICSVWriter open(String name) throws IOException {
      Writer out = new OutputStreamWriter(folder.file(name), StandardCharsets.UTF_8);
      return new CSVWriter(out, ',', '"', '"', "\n");
    }

    @Override
    public void close() throws IOException {
      lines.close();
      IOException failure = lines.getException();
      if (failure != null) {
        throw failure;
      }
    }
  }
}
