package traytally.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DisplayWidthTest {
  /** Unicode Standard Annex #11, as CPython's unicodedata 14.0.0 tells it. */
  @Test
  void wideCharactersAreThoseOfUnicode() throws IOException {
    for (String run :
        Files.readAllLines(Path.of("src/test/resources/reference/wide-code-points.txt"))) {
      String[] bounds = run.split("\\.\\.", -1);
      int first = Integer.parseInt(bounds[0], 16);
      int last = Integer.parseInt(bounds[1], 16);
      for (int c = first; c <= last; c++) {
        int expected = Character.getType(c) == Character.NON_SPACING_MARK ? 0 : 2;
        assertEquals(expected, DisplayWidth.ofCodePoint(c), "U+" + Integer.toHexString(c));
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "'', 0",
    "motor oil, 9",
    "émeraude, 8",
    "e\u0301meraude, 8",
    "モーターオイル, 14",
    "ﾓｰﾀｰ, 4",
    "연기, 4",
    "ירוק, 4",
    "أخضر, 4",
    "🐟, 2",
    "👩🏽‍🚀, 2",
    "🇮🇪, 2",
    "❤️, 2",
    "❤, 1",
    "½ –…─, 5"
  })
  void oneSeesSoManyColumns(String text, int columns) {
    assertEquals(columns, DisplayWidth.of(text));
  }

  @ParameterizedTest
  @CsvSource({
    "motor oil, 9, motor oil",
    "motor oil, 8, motor o…",
    "motor oil, 7, motor…",
    "モーターオイル, 6, モー…",
    "👩🏽‍🚀👩🏽‍🚀👩🏽‍🚀, 5, 👩🏽‍🚀👩🏽‍🚀…",
    "e\u0301e\u0301e\u0301, 2, e\u0301…"
  })
  void aCutTextEndsInAnEllipsis(String text, int width, String cut) {
    assertEquals(cut, DisplayWidth.cut(text, width));
  }

  @Test
  void linesBreakAtSpacesAndInWordsThatAreTooLong() {
    assertEquals(
        List.of("take the", "longestwor", "d home"),
        DisplayWidth.wrap("take the longestword home", 10));
    assertEquals(List.of("モー", "ター"), DisplayWidth.wrap("モーター", 5));
    assertEquals(List.of(""), DisplayWidth.wrap("", 10));
  }
}
