package traytally.plastic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ToneTest {
  /** Lab values of CSS colours from memory, to a unit: the tones follow from CIE L* and C*. */
  @ParameterizedTest
  @CsvSource({
    "#000000, dark muted",
    "#14161f, dark muted",
    "#0000ff, dark bright",
    "#808080, mid muted",
    "#ff0000, mid bright",
    "#ffffff, pale muted",
    "#ffff00, pale bright",
    "#c0c0c0, pale muted"
  })
  void swatchesHaveTheirTone(String hex, String tone) {
    assertEquals(tone, Tone.of(Lab.of(Swatch.parse(hex).orElseThrow())).word());
  }

  @Test
  void tonesChangeAtTheirLimits() {
    assertEquals(Tone.MID_MUTED, Tone.of(new Lab(40, 39.9, 0)));
    assertEquals(Tone.DARK_BRIGHT, Tone.of(new Lab(39.99, 0, 40)));
    assertEquals(Tone.PALE_MUTED, Tone.of(new Lab(70, 0, 0)));
  }

  private static Look look(String base, String flake, Finish finish) {
    return new Colour(Name.of("x"), Swatch.parse(base), Swatch.parse(flake), Optional.of(finish))
        .look()
        .orElseThrow();
  }

  @Test
  void aFlakeCountsByItsFinish() {
    Look plain = look("#202020", "", Finish.SOLID);
    Look flecked = look("#202020", "#ffd700", Finish.FLAKE);
    Look halves = look("#202020", "#ffd700", Finish.LAMINATE);
    assertEquals(0, plain.difference(plain));
    assertEquals(plain.difference(halves), halves.difference(plain), 1e-12);
    assertTrue(plain.difference(flecked) < plain.difference(halves));
    assertEquals(Tone.DARK_MUTED, plain.tone());
    assertEquals(Tone.MID_BRIGHT, halves.tone());
  }

  private static Colour described(String name) {
    return Lexicon.usual().describe(Name.of(name)).orElseThrow();
  }

  @Test
  void everydayWordsDescribeAColour() {
    assertEquals(Swatch.parse("#000080"), described("Navy").base());
    Colour both = described("black-red");
    assertEquals(Swatch.parse("#000000"), both.base());
    assertEquals(Swatch.parse("#ff0000"), both.flake());
    assertEquals(Tone.DARK_MUTED, described("dark olive").look().orElseThrow().tone());
    assertEquals(Optional.empty(), Lexicon.usual().describe(Name.of("Old Faithful")));
    assertEquals(Optional.empty(), Lexicon.usual().describe(Name.of("dark")));
  }

  @Test
  void theAnglersOwnWordsComeFirst() {
    Lexicon own =
        Lexicon.usual()
            .with(
                Map.of(
                    Name.of("old faithful"),
                    Swatch.parse("#123456"),
                    Name.of("black"),
                    Optional.empty()));
    assertEquals(
        Swatch.parse("#123456"), own.describe(Name.of("Old Faithful")).orElseThrow().base());
    assertEquals(Optional.empty(), own.describe(Name.of("black")));
  }
}
