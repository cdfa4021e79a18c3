package traytally.render;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import traytally.report.Report;
import traytally.report.Sheet;

/** Writes reports in the format asked for. */
public final class Rendering {
  private Rendering() {}

  /**
   * Writes {@code report} as text and flushes {@code out}, which stays open.
   *
   * @throws IllegalArgumentException if {@code format} is not text
   */
  public static void write(Report report, Format format, Look look, Writer out) throws IOException {
    TextRenderer renderer =
        switch (format) {
          case TABLE -> new TableText();
          case CSV -> new CsvText();
          case JSON -> new JsonText();
          case HTML -> new HtmlText();
          case XLSX, PDF -> throw new IllegalArgumentException("not text: " + format);
        };
    renderer.render(report, look, out);
    out.flush();
  }

  /** Writes {@code report} as bytes, text in UTF-8, and flushes {@code out}, which stays open. */
  public static void write(Report report, Format format, Look look, OutputStream out)
      throws IOException {
    switch (format) {
      case XLSX -> workbook(List.of(report), look, out);
      case PDF -> PdfFile.write(report, look, out);
      case TABLE, CSV, JSON, HTML ->
          write(report, format, look, new OutputStreamWriter(out, StandardCharsets.UTF_8));
    }
  }

  /** Writes one workbook, {@code contents} first, with charts; {@code out} stays open. */
  public static void workbook(Report contents, List<Sheet> sheets, Look look, OutputStream out)
      throws IOException {
    try (ReportWorkbook book = new ReportWorkbook(look)) {
      book.add(contents, sheets);
      book.write(out);
    }
  }

  /** Writes one workbook with a sheet for each of {@code reports}; {@code out} stays open. */
  public static void workbook(List<Report> reports, Look look, OutputStream out)
      throws IOException {
    try (ReportWorkbook book = new ReportWorkbook(look)) {
      for (Report report : reports) {
        book.add(report);
      }
      book.write(out);
    }
  }
}
