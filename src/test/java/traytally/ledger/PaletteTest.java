package traytally.ledger;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.Test;
import traytally.plastic.Colour;
import traytally.plastic.Finish;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Swatch;
import traytally.plastic.Tone;

final class PaletteTest {
  private static final Money PRICE = new Money(695, Currency.getInstance("EUR"));

  private final Shelf shelf = new Shelf();

  private Palette palette(Fact... facts) {
    shelf.record(new Entry("test", "", OptionalLong.empty(), List.of(), List.of(facts), List.of()));
    return Palette.of(shelf.book());
  }

  private static Fact counted(String colour) {
    Plastic plastic = Plastic.of("", "paddle", colour, 75);
    return new Fact.Counted(plastic, LocalDate.of(2026, 5, 1), 8, true);
  }

  private static Fact offered(String colour) {
    Plastic plastic = Plastic.of("", "paddle", colour, 75);
    return new Fact.Offered(new Offer(Name.of("The Loft"), plastic, 8, PRICE, true));
  }

  private static Fact.Coloured coloured(String name, String base) {
    Optional<Swatch> swatch = base.isEmpty() ? Optional.empty() : Swatch.parse(base);
    Optional<Finish> finish = Optional.of(Finish.TRANSLUCENT);
    return new Fact.Coloured(new Colour(Name.of(name), swatch, Optional.empty(), finish));
  }

  private static Optional<String> base(Palette palette, String colour) {
    return palette.entries().get(Name.of(colour)).colour().base().map(Swatch::toString);
  }

  /** The values of the named colours in CSS Color Module Level 4 (W3C), section 6.1. */
  @Test
  void colourWithoutASwatchLooksAsItsWordsSay() {
    Palette palette = palette(counted("Navy"), counted("pier 9"));
    assertEquals(Optional.of("#000080"), base(palette, "navy"));
    assertTrue(palette.assumed(Name.of("navy")));
    assertTrue(palette.look(Name.of("navy")).isPresent());
    assertEquals(Optional.empty(), base(palette, "pier 9"));
    assertFalse(palette.assumed(Name.of("pier 9")));
    assertEquals(Optional.empty(), palette.look(Name.of("pier 9")));
  }

  @Test
  void swatchTheAnglerGaveCountsBeforeTheWords() {
    Palette palette = palette(counted("navy"), coloured("Navy", "#10203f"));
    assertEquals(Optional.of("#10203f"), base(palette, "navy"));
    assertFalse(palette.assumed(Name.of("navy")));
  }

  @Test
  void finishAloneLeavesTheLookToTheWords() {
    Palette palette = palette(counted("navy"), coloured("navy", ""));
    assertEquals(Optional.of("#000080"), base(palette, "navy"));
    assertTrue(palette.assumed(Name.of("navy")));
  }

  @Test
  void everyColourOwnedOfferedOrGivenIsThere() {
    Palette palette = palette(counted("black"), offered("white"), coloured("pier 9", "#31493c"));
    assertEquals(
        Set.of(Name.of("black"), Name.of("white"), Name.of("pier 9")), palette.entries().keySet());
    assertFalse(palette.assumed(Name.of("red")));
    assertEquals(Optional.empty(), palette.look(Name.of("red")));
  }

  @Test
  void wordsTheAnglerChangedHold() {
    Palette palette =
        palette(
            counted("kelp"),
            counted("black"),
            new Fact.ColourWord(Name.of("kelp"), Swatch.parse("#4a5a20")),
            new Fact.ColourWord(Name.of("black"), Optional.empty()));
    assertEquals(Optional.of("#4a5a20"), base(palette, "kelp"));
    assertEquals(Optional.empty(), base(palette, "black"));
    assertTrue(palette.lexicon().swatches().containsKey(Name.of("kelp")));
    assertFalse(palette.lexicon().swatches().containsKey(Name.of("black")));
  }

  /**
   * CIE L*, C* of sRGB: black 0, 0; white 100, 0; red 53.2, 104.6 (Lindbloom's calculator; from
   * memory).
   */
  @Test
  void tonesAreThoseOfTheLooksThatAreKnown() {
    Palette palette = palette(counted("black"), counted("white"), counted("red"), counted("x"));
    assertEquals(
        Map.of(
            Name.of("black"), Tone.DARK_MUTED,
            Name.of("white"), Tone.PALE_MUTED,
            Name.of("red"), Tone.MID_BRIGHT),
        palette.tones());
  }
}
