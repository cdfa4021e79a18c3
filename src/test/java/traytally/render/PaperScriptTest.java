package traytally.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PaperScriptTest {
  /**
   * Letters and the forms they take; by the rules of The Unicode Standard, 9.2 ("Arabic Cursive
   * Joining" and the lam-alef ligatures), forms from the code chart U+FE70.
   */
  @ParameterizedTest
  @CsvSource({
    "ب, \uFE8F",
    "بب, \uFE91\uFE90",
    "ببب, \uFE91\uFE92\uFE90",
    "داد, \uFEA9\uFE8D\uFEA9",
    "باب, \uFE91\uFE8E\uFE8F",
    "لا, \uFEFB",
    "بلا, \uFE91\uFEFC",
    "سلام, \uFEB3\uFEFC\uFEE1",
    "أخضر, \uFE83\uFEA7\uFEC0\uFEAE",
    "ب ب, \uFE8F \uFE8F",
    "بـ, \uFE91ـ",
    "motor oil 75, motor oil 75"
  })
  void arabicLettersJoin(String letters, String forms) {
    assertEquals(forms, ArabicForms.shape(letters));
  }

  @Test
  void marksPartNoLetters() {
    assertEquals("\uFE91\u064E\uFE90", ArabicForms.shape("ب\u064Eب"));
  }

  @Test
  void aRunToTheLeftIsTurnedAndItsBracketsWithIt() {
    assertEquals("(ההכ) קורי", new PaperReorder().reorderRTLTextToLTR("ירוק (כהה)"));
    assertEquals("be\u0301a", new PaperReorder().reorderRTLTextToLTR("ae\u0301b"));
  }

  @ParameterizedTest
  @CsvSource({"motor oil,''", "ירוק,rtl", "أخضر,rtl", "75 (ירוק),rtl", "75 mm ירוק,''", "12 3,''"})
  void theFirstLetterSaysWhichWayATextRuns(String text, String direction) {
    assertEquals(direction, Direction.of(text));
  }
}
