package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.ImageIO;

/** A PDF as poppler sees it: where its words stand, and where there is ink. */
final class PrintedPages {
  /** Coarse, but a hair line still leaves a grey pixel. */
  private static final int DOTS_AN_INCH = 48;

  private static final double POINTS_AN_INCH = 72;

  /** What most printers cannot reach, in points: about 4 mm (common practice). */
  private static final int UNPRINTABLE = 12;

  /** How far apart the channels of two pixels of one colour may be. */
  private static final int ALIKE = 12;

  private static final Pattern PAGE =
      Pattern.compile(
          "<page width=\"([\\d.]+)\" height=\"([\\d.]+)\">(.*?)</page>", Pattern.DOTALL);
  private static final Pattern WORD =
      Pattern.compile(
          "<word xMin=\"(-?[\\d.]+)\" yMin=\"(-?[\\d.]+)\" xMax=\"(-?[\\d.]+)\""
              + " yMax=\"(-?[\\d.]+)\">(.*?)</word>");

  /** A word and its box in points, from the upper left corner of the page. */
  record Word(String text, double left, double top, double right, double bottom) {
    private boolean overlaps(Word other) {
      double across = Math.min(right, other.right) - Math.max(left, other.left);
      double down = Math.min(bottom, other.bottom) - Math.max(top, other.top);
      // Boxes of words hold room above and below the letters, which lines share.
      return across > 1 && down > 0.5 * Math.min(bottom - top, other.bottom - other.top);
    }

    /** Whether it runs along the line: a slanted word's box is as tall as wide. */
    boolean lies() {
      return right - left > 1.1 * (bottom - top);
    }
  }

  /** One page, in points, and how it looks. */
  record Sheet(double width, double height, List<Word> words, BufferedImage look) {
    String text() {
      return words.stream().map(Word::text).collect(Collectors.joining(" "));
    }

    /** How many pixels are of this colour. */
    int pixels(int rgb) {
      int found = 0;
      for (int y = 0; y < look.getHeight(); y++) {
        for (int x = 0; x < look.getWidth(); x++) {
          int pixel = look.getRGB(x, y);
          boolean alike = true;
          for (int bits = 0; bits <= 16; bits += 8) {
            alike &= Math.abs((pixel >> bits & 0xFF) - (rgb >> bits & 0xFF)) <= ALIKE;
          }
          found += alike ? 1 : 0;
        }
      }
      return found;
    }

    private void assertNothingIsCutOff(String where) {
      assertTrue(!words.isEmpty(), where + " is empty");
      int edge = (int) (UNPRINTABLE * DOTS_AN_INCH / POINTS_AN_INCH);
      for (int y = 0; y < look.getHeight(); y++) {
        for (int x = 0; x < look.getWidth(); x++) {
          boolean atEdge =
              Math.min(x, look.getWidth() - 1 - x) < edge
                  || Math.min(y, look.getHeight() - 1 - y) < edge;
          if (atEdge && (look.getRGB(x, y) & 0xFFFFFF) != 0xFFFFFF) {
            fail(where + " has ink at its edge: " + x + ", " + y);
          }
        }
      }
      for (int i = 0; i < words.size(); i++) {
        Word word = words.get(i);
        assertTrue(
            word.left > UNPRINTABLE
                && word.top > UNPRINTABLE
                && word.right < width - UNPRINTABLE
                && word.bottom < height - UNPRINTABLE,
            () -> where + " cuts off " + word);
        for (Word other : words.subList(i + 1, words.size())) {
          assertTrue(!word.overlaps(other), () -> where + " has " + word + " over " + other);
        }
      }
    }
  }

  private PrintedPages() {}

  /** The pages of a PDF, none of which may cut anything off or set one word over another. */
  static List<Sheet> whole(Path pdf) throws IOException, InterruptedException {
    Program reader = Program.named("pdftotext");
    Program painter = Program.named("pdftoppm");
    Path folder = Files.createTempDirectory(pdf.toAbsolutePath().getParent(), "look");
    painter.run(folder, "-r", DOTS_AN_INCH + "", "-png", pdf.toAbsolutePath().toString(), "page");
    List<Path> looks;
    try (Stream<Path> files = Files.list(folder)) {
      looks = files.filter(file -> file.toString().endsWith(".png")).sorted().toList();
    }
    List<Sheet> sheets = new ArrayList<>();
    Matcher page = PAGE.matcher(reader.run(folder, "-bbox", pdf.toAbsolutePath().toString(), "-"));
    while (page.find()) {
      BufferedImage look = ImageIO.read(looks.get(sheets.size()).toFile());
      Sheet sheet = new Sheet(number(page, 1), number(page, 2), words(page.group(3)), look);
      sheet.assertNothingIsCutOff(pdf.getFileName() + ", page " + (sheets.size() + 1));
      sheets.add(sheet);
    }
    assertEquals(looks.size(), sheets.size());
    return sheets;
  }

  private static List<Word> words(String page) {
    List<Word> words = new ArrayList<>();
    Matcher word = WORD.matcher(page);
    while (word.find()) {
      words.add(
          new Word(
              word.group(5), number(word, 1), number(word, 2), number(word, 3), number(word, 4)));
    }
    return words;
  }

  private static double number(Matcher matcher, int group) {
    return Double.parseDouble(matcher.group(group));
  }
}
