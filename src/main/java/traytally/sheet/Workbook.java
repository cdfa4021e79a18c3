package traytally.sheet;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import javax.xml.stream.XMLStreamException;

/** A file of sheets, open for reading; close it when done. */
public abstract sealed class Workbook implements AutoCloseable
    permits XlsxWorkbook, XlsWorkbook, CsvWorkbook {
  private final List<Sheet> sheets;

  Workbook(List<Sheet> sheets) {
    this.sheets = List.copyOf(sheets);
  }

  /** Opens a file, finding out everything from its content. */
  public static Workbook open(Path file) {
    return open(file, Reading.AS_FOUND);
  }

  /**
   * Opens a file.
   *
   * @throws UnreadableSheetException when it is no sheet, or none that can be read
   */
  public static Workbook open(Path file, Reading reading) {
    return Refusal.unlessRead(
        () ->
            switch (FileKind.of(file, reading.limits())) {
              case XLSX -> XlsxWorkbook.of(file, reading.limits());
              case XLS -> XlsWorkbook.of(file, reading.limits());
              case TEXT -> CsvWorkbook.of(file, reading);
            });
  }

  /** The sheets that hold cells, in the order of their tabs; charts are left out. */
  public final List<Sheet> sheets() {
    return sheets;
  }

  /**
   * Begins to read a sheet of this workbook; close the rows before reading another.
   *
   * @throws UnreadableSheetException when its part of the file is broken
   */
  public final Rows rows(Sheet sheet) {
    if (sheet.index() >= sheets.size() || !sheets.get(sheet.index()).equals(sheet)) {
      throw new IllegalArgumentException("not a sheet of this workbook: " + sheet);
    }
    return Refusal.unlessRead(() -> begin(sheet));
  }

  abstract Rows begin(Sheet sheet) throws IOException, XMLStreamException;

  @Override
  public abstract void close();
}
