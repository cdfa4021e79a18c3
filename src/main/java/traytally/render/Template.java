package traytally.render;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import traytally.plastic.Worded;
import traytally.report.Value;

/** One of the four sheets an angler fills in, blank or with rows to go on from. */
public enum Template implements Worded {
  BOX,
  TRIPS,
  PLAN,
  PRICES;

  /** The day blank sheets say they were made: any will do, as long as it never changes. */
  private static final LocalDate BLANK_SINCE = LocalDate.of(2026, 1, 1);

  SheetForm form() {
    return switch (this) {
      case BOX -> Forms.BOX;
      case TRIPS -> Forms.TRIPS;
      case PLAN -> Forms.PLAN;
      case PRICES -> Forms.PRICES;
    };
  }

  /** The template that {@code word} names, without regard to case. */
  public static Optional<Template> parse(String word) {
    return Worded.parse(values(), word);
  }

  /** The words of the heading row, in order. */
  public List<String> headings() {
    return form().headings().stream().map(Heading::words).toList();
  }

  /**
   * Writes the blank sheet; {@code out} stays open.
   *
   * @param format a workbook, or the heading row as csv
   * @throws IllegalArgumentException if sheets are not written in {@code format}
   */
  public void write(Format format, OutputStream out) throws IOException {
    write(List.of(), BLANK_SINCE, format, out);
  }

  /**
   * Writes the sheet with {@code rows} below its headings; {@code out} stays open.
   *
   * @param rows cells in the order of {@link #headings()}
   * @param day the workbook is made on
   * @throws IllegalArgumentException if sheets are not written in {@code format}, or a row has not
   *     as many cells as there are headings
   */
  public void write(List<List<Value>> rows, LocalDate day, Format format, OutputStream out)
      throws IOException {
    write(form(), rows, day, format, out);
  }

  /**
   * Writes the box sheet as the book has it, to be edited and read back; {@code out} stays open.
   *
   * @param rows cells in the order of the box sheet's headings, and then the pieces once more
   * @throws IllegalArgumentException as {@link #write} does
   */
  public static void writeTray(
      List<List<Value>> rows, LocalDate day, Format format, OutputStream out) throws IOException {
    write(Forms.TRAY, rows, day, format, out);
  }

  private static void write(
      SheetForm form, List<List<Value>> rows, LocalDate day, Format format, OutputStream out)
      throws IOException {
    for (List<Value> row : rows) {
      if (row.size() != form.headings().size()) {
        throw new IllegalArgumentException(
            row.size() + " cells under " + form.headings().size() + " headings");
      }
    }
    switch (format) {
      case XLSX -> FormWorkbook.write(form, rows, day, out);
      case CSV -> csv(form, rows, out);
      case TABLE, JSON, HTML, PDF ->
          throw new IllegalArgumentException("no sheet to fill in: " + format);
    }
  }

  private static void csv(SheetForm form, List<List<Value>> rows, OutputStream out)
      throws IOException {
    Writer text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
    CsvText.Lines lines = new CsvText.Lines(text, form.headings().size());
    lines.add(form.headings().stream().map(Heading::words).toArray(String[]::new));
    for (List<Value> row : rows) {
      String[] cells = new String[row.size()];
      for (int i = 0; i < cells.length; i++) {
        cells[i] =
            row.get(i) instanceof Value.YesNo answer
                ? (answer.yes() ? "yes" : "no")
                : CsvText.cell(form.headings().get(i).kind(), row.get(i));
      }
      lines.add(cells);
    }
    lines.finish();
    text.flush();
  }
}
