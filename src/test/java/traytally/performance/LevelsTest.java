package traytally.performance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class LevelsTest {
  @Test
  void levelsAreNumberedInTheirOwnOrder() {
    Levels<String> levels = new Levels<>(List.of("sand", "ink", "sand"));
    assertEquals(List.of("ink", "sand"), levels.values());
    assertEquals(2, levels.size());
    assertEquals(1, levels.of("sand"));
    assertEquals(OptionalInt.of(0), levels.find("ink"));
  }

  @Test
  void strangerIsNoLevel() {
    Levels<String> levels = new Levels<>(List.of("sand"));
    assertEquals(OptionalInt.empty(), levels.find("rust"));
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> levels.of("rust"));
    assertEquals("no such level: rust", refused.getMessage());
  }
}
