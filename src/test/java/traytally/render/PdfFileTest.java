package traytally.render;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static traytally.render.Examples.column;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.TimeZone;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.report.Column.Kind;
import traytally.report.Report;
import traytally.report.Value;

class PdfFileTest {
  private static final double POINTS_PER_MM = 72 / 25.4;

  @TempDir Path folder;

  private static byte[] bytes(Report report, Look look) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    Rendering.write(report, Format.PDF, look, bytes);
    return bytes.toByteArray();
  }

  private static String text(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return Normalizer.normalize(new PDFTextStripper().getText(document), Normalizer.Form.NFKC);
    }
  }

  @Test
  void theSameReportIsTheSameBytes() throws IOException {
    byte[] first = bytes(Examples.restock(), Look.PLAIN);
    TimeZone before = TimeZone.getDefault();
    try {
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Auckland"));
      assertArrayEquals(first, bytes(Examples.restock(), Look.PLAIN));
    } finally {
      TimeZone.setDefault(before);
    }
  }

  @Test
  void everyWordOfTheListStandsOnPaper() throws IOException {
    String text = text(bytes(Examples.restock(), Look.PLAIN));
    for (String word :
        List.of(
            "Shopping list",
            "Harbour Tackle Loft",
            "motor oil",
            "75 mm",
            "93 %",
            "<1 %",
            "12.40",
            "no shop lists it",
            "31.15 EUR",
            "ask the authority",
            "Page 1 of ")) {
      assertTrue(text.contains(word), word + " is not in\n" + text);
    }
  }

  @Test
  void paperIsA4OrLetter() throws IOException {
    assertSize(Look.PLAIN, 297, 210);
    assertSize(Look.PLAIN.withPaper(Paper.LETTER), 279.4, 215.9);
  }

  private static void assertSize(Look look, double longMm, double shortMm) throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes(Examples.names(), look))) {
      PDRectangle page = document.getPage(0).getMediaBox();
      assertEquals(longMm * POINTS_PER_MM, page.getHeight(), 0.5);
      assertEquals(shortMm * POINTS_PER_MM, page.getWidth(), 0.5);
    }
  }

  @Test
  void nothingStandsInTheMarginsOrOutsideThePage() throws IOException {
    for (Look look : List.of(Look.PLAIN, Look.PLAIN.withPaper(Paper.LETTER))) {
      for (Report report : List.of(Examples.restock(), Examples.names(), longList())) {
        for (TextPosition letter : letters(bytes(report, look))) {
          double margin = 15.5 * POINTS_PER_MM;
          assertTrue(letter.getXDirAdj() >= margin, letter.toString());
          double right = letter.getXDirAdj() + letter.getWidthDirAdj();
          assertTrue(right <= letter.getPageWidth() - margin, letter + " ends at " + right);
          assertTrue(letter.getYDirAdj() <= letter.getPageHeight(), letter.toString());
        }
      }
    }
  }

  private static List<TextPosition> letters(byte[] pdf) throws IOException {
    List<TextPosition> letters = new ArrayList<>();
    PDFTextStripper reader =
        new PDFTextStripper() {
          @Override
          protected void writeString(String text, List<TextPosition> positions) {
            letters.addAll(positions);
          }
        };
    try (PDDocument document = Loader.loadPDF(pdf)) {
      reader.getText(document);
    }
    assertFalse(letters.isEmpty());
    return letters;
  }

  private static Report longList() {
    List<List<Value>> rows =
        IntStream.range(0, 120)
            .mapToObj(i -> Examples.named("paddle tail " + i, "a colour of a long name", i))
            .toList();
    return Examples.table(
        List.of(
            column("body", "Body style", Kind.TEXT),
            column("colour", "Colour", Kind.TEXT),
            column("pieces", "Pieces", Kind.WHOLE)),
        rows);
  }

  @Test
  void aLongListHasItsHeadingOnEachPage() throws IOException {
    byte[] pdf = bytes(longList(), Look.PLAIN);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertTrue(document.getNumberOfPages() > 2);
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        PDFTextStripper reader = new PDFTextStripper();
        reader.setStartPage(page);
        reader.setEndPage(page);
        assertTrue(reader.getText(document).contains("Body style"), "page " + page);
      }
    }
    String text = text(pdf);
    for (int i = 0; i < 120; i++) {
      assertTrue(text.contains("paddle tail " + i + " "), "row " + i);
    }
  }

  @Test
  void namesOfAllScriptsAreDrawnAndWhatIsNotIsNamed() throws IOException {
    String text = text(bytes(Examples.names(), Look.PLAIN));
    for (String name :
        List.of("モーターオイル", "슬림 미노우", "זנב", "ירוק", "أخضر داكن", "زعنفة", "émeraude foncé")) {
      assertTrue(text.contains(name), name + " is not in\n" + text);
    }
    assertTrue(text.contains("? minnow"), text);
    assertTrue(text.contains("U+1F41F FISH"), text);
  }

  /** What another JVM runs, in a home of its own. */
  static final class Writes {
    private Writes() {}

    public static void main(String[] args) throws IOException {
      Files.write(Path.of(args[0]), bytes(Examples.restock(), Look.PLAIN));
    }
  }

  @Test
  void nothingIsLoggedAndNothingLeftInTheHome() throws IOException, InterruptedException {
    Path home = Files.createDirectory(folder.resolve("home"));
    Path pdf = folder.resolve("list.pdf");
    Path printed = folder.resolve("printed.txt");
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Duser.home=" + home,
                "-cp",
                System.getProperty("java.class.path"),
                Writes.class.getName(),
                pdf.toString())
            .redirectErrorStream(true)
            .redirectOutput(printed.toFile())
            .start();
    assertEquals(0, process.waitFor());
    assertEquals("", Files.readString(printed, StandardCharsets.UTF_8));
    try (Stream<Path> left = Files.list(home)) {
      assertEquals(List.of(), left.toList());
    }
    assertArrayEquals(bytes(Examples.restock(), Look.PLAIN), Files.readAllBytes(pdf));
  }
}
