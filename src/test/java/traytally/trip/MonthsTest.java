package traytally.trip;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.Month;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MonthsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          2-4            | 2-4     | February to April
          feb-april      | 2-4     | February to April
          3              | 3       | March
          2,3, 11-1      | 11-3    | November to March
          Nov - Jan May  | 5,11-1  | May, November to January
          1-12           | 1-12    | January to December
          sept           | 9       | September
          """)
  void monthsAreReadAndSaid(String typed, String text, String words) {
    Months months = Months.parse(typed).orElseThrow();
    assertEquals(text, months.text());
    assertEquals(words, months.words());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "0", "13", "2-", "-4", "ju", "march of time", "2-14", "2--4", "x"})
  void otherWordsAreNoMonths(String typed) {
    assertEquals(Optional.empty(), Months.parse(typed));
  }

  @Test
  void everyChoiceOfMonthsIsReadBackAsItWasWritten() {
    Random random = new Random(20260501);
    for (int i = 0; i < 500; i++) {
      Set<Month> chosen = EnumSet.noneOf(Month.class);
      for (Month month : Month.values()) {
        if (random.nextInt(3) > 0) {
          chosen.add(month);
        }
      }
      if (!chosen.isEmpty()) {
        Months months = new Months(chosen);
        assertEquals(Optional.of(months), Months.parse(months.text()));
        assertEquals(Optional.of(months), Months.parse(months.words().replace(" to ", "-")));
      }
    }
  }

  @Test
  void aDayIsInsideItsMonth() {
    Months winter = Months.parse("12-2").orElseThrow();
    assertTrue(winter.contain(LocalDate.of(2026, 12, 1)));
    assertTrue(winter.contain(LocalDate.of(2028, 2, 29)));
    assertFalse(winter.contain(LocalDate.of(2026, 3, 1)));
    assertThrows(IllegalArgumentException.class, () -> new Months(Set.of()));
  }
}
