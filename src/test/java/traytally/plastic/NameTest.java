package traytally.plastic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class NameTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "Motor Oil",
        "motor-oil ",
        "MOTOR OIL",
        " motor  oil",
        "motor\u00a0oil",
        "motor_oil.",
        "Motor/Oil",
        "ｍｏｔｏｒ　ｏｉｌ",
        "mo\u00adtor oil"
      })
  void caseSpacingAndPunctuationDoNotCount(String spelling) {
    assertEquals(Name.of("motor oil"), Name.of(spelling));
    assertEquals(Name.of("motor oil").hashCode(), Name.of(spelling).hashCode());
    assertEquals(0, Name.of("motor oil").compareTo(Name.of(spelling)));
  }

  @Test
  void accentsAreTheSameHoweverTheyAreCoded() {
    assertEquals(Name.of("caf\u00e9"), Name.of("cafe\u0301"));
    assertNotEquals(Name.of("caf\u00e9"), Name.of("cafe"));
  }

  @Test
  void otherWordsAreOtherNames() {
    assertNotEquals(Name.of("motor oil"), Name.of("motor oils"));
    assertNotEquals(Name.of("75"), Name.of("76"));
    assertNotEquals(Name.of("✨"), Name.of("☀"));
  }

  @Test
  void textIsKeptAsFirstWrittenButForSpaces() {
    assertEquals("Motor-Oil #2", Name.of(" Motor-Oil \u00a0\t#2 ").text());
    assertEquals("Motor-Oil #2", Name.of("Motor-Oil #2").toString());
    assertEquals("motoroil2", Name.of("Motor-Oil #2").key());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "-", "\u00a0", "...", "?!"})
  void textThatSaysNothingIsBlank(String text) {
    assertSame(Name.BLANK, Name.of(text));
    assertTrue(Name.of(text).isBlank());
  }

  @Test
  void keyOfAKeyIsItself() {
    Random random = new Random(5);
    for (int i = 0; i < 20_000; i++) {
      StringBuilder text = new StringBuilder();
      random.ints(6, 0, 0x3000).filter(Character::isDefined).forEach(text::appendCodePoint);
      String key = Name.of(text.toString()).key();
      assertEquals(key, Name.of(key).key(), () -> "of " + text);
    }
  }

  @Test
  void foldingDoesNotDependOnTheMachinesLanguage() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("tr"));
      assertEquals("white", Name.of("WHITE").key());
    } finally {
      Locale.setDefault(before);
    }
  }
}
