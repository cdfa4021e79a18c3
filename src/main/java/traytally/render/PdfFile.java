package traytally.render;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import traytally.report.Report;

/** A report as paper: the page of {@link HtmlText}, laid out by openhtmltopdf. */
final class PdfFile {
  private static final String MAKER = "traytally";

  private PdfFile() {}

  /** Writes the file, the same bytes for the same report; {@code out} stays open. */
  static void write(Report report, Look look, OutputStream out) throws IOException {
    XRLog.setLoggingEnabled(false);
    String page = page(report, look);
    PdfRendererBuilder builder = new PdfRendererBuilder();
    for (PaperFonts.Face face : PaperFonts.FACES) {
      builder.useFont(face::open, face.family(), face.weight(), FontStyle.NORMAL, true);
    }
    builder.useUnicodeBidiSplitter(PaperDirection::new);
    builder.useUnicodeBidiReorderer(new PaperReorder());
    builder.withProducer(MAKER);
    builder.usePdfUaAccessibility(true);
    builder.useProtocolsStreamImplementation(
        url -> {
          throw new IllegalStateException("a page needs nothing beside itself: " + url);
        },
        "http",
        "https",
        "file");
    builder.withHtmlContent(page, null);
    builder.toStream(out);
    try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
      renderer.createPDFWithoutClosing();
      PDDocument document = renderer.getPdfDocument();
      date(document, report.asOf());
      document.save(out);
    }
    out.flush();
  }

  /** The page, with a note more if there are letters that cannot be drawn. */
  private static String page(Report report, Look look) throws IOException {
    PaperLetters letters = new PaperLetters(new PaperFonts());
    String page = HtmlText.page(report, look, letters);
    Optional<String> note = letters.note();
    return note.isPresent() ? HtmlText.page(report.with(note.get()), look, letters) : page;
  }

  /** The day the report holds for, in place of now, and an identity that follows from it. */
  private static void date(PDDocument document, LocalDate day) {
    Calendar midnight = GregorianCalendar.from(day.atStartOfDay(ZoneOffset.UTC));
    PDDocumentInformation about = document.getDocumentInformation();
    about.setCreator(MAKER);
    about.setCreationDate(midnight);
    about.setModificationDate(midnight);
    document.setDocumentId(day.toEpochDay());
  }
}
