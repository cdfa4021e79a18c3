package traytally.plastic;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Everyday words for colours and the swatch each stands for, where nobody gave one.
 *
 * @param swatches by word; a word may be several, as in "navy blue"
 */
public record Lexicon(SortedMap<Name, Swatch> swatches) {
  /**
   * Words of CSS Color Module Level 4 (W3C), section 6.1, with its values; in the second paragraph
   * words of everyday speech with values of this tool's own, picked by eye.
   */
  private static final String USUAL =
      """
      black 000000, white ffffff, grey 808080, gray 808080, silver c0c0c0, red ff0000,
      maroon 800000, orange ffa500, gold ffd700, yellow ffff00, khaki f0e68c,
      chartreuse 7fff00, lime 00ff00, green 008000, teal 008080, turquoise 40e0d0,
      cyan 00ffff, blue 0000ff, navy 000080, indigo 4b0082, violet ee82ee, purple 800080,
      magenta ff00ff, pink ffc0cb, plum dda0dd, salmon fa8072, coral ff7f50, tan d2b48c,
      beige f5f5dc, ivory fffff0, lavender e6e6fa

      olive 6b6a3c, brown 6b4a2f, chocolate 4a3226, ink 14161f, charcoal 36383d,
      smoke 74747a, slate 5c6670, mud 5a4632, rust 9c4a1a, copper b06a3c, bronze 8c6a32,
      amber d08a1e, honey d9a441, mustard c9a227, sand cdb98c, cream f4ecd2, bone e6dcc4,
      chalk f2f2ec, pearl ece8e2, ice dceef4, sky 8cc4e8, moss 6b7a3a, weed 4f5f2c,
      leaf 4c8c2f, mint a6e3c0, rose d9708c, wine 6a1f34, cherry a3142c, peach f2b48c,
      tomato e0452f, lemon f5e642, grape 5b3a78, clear e4ecec
      """;

  public Lexicon {
    swatches = Collections.unmodifiableSortedMap(new TreeMap<>(swatches));
  }

  /** The words as the tool comes with them. */
  public static Lexicon usual() {
    SortedMap<Name, Swatch> swatches = new TreeMap<>();
    for (String entry : USUAL.strip().split("[,\\n]\\s*", -1)) {
      String[] both = entry.strip().split(" ", -1);
      if (both.length == 2) {
        swatches.put(Name.of(both[0]), Swatch.parse(both[1]).orElseThrow());
      }
    }
    return new Lexicon(swatches);
  }

  /** These words with some changed; an empty swatch takes a word out. */
  public Lexicon with(Map<Name, Optional<Swatch>> changes) {
    SortedMap<Name, Swatch> changed = new TreeMap<>(swatches);
    changes.forEach(
        (word, swatch) -> {
          changed.remove(word);
          swatch.ifPresent(is -> changed.put(word, is));
        });
    return new Lexicon(changed);
  }

  /**
   * The colour that a name's words describe: the first colour word is the base, a second one the
   * flake; {@code dark} and {@code light} shade the word they stand before. Empty where it has no
   * colour word.
   */
  public Optional<Colour> describe(Name colour) {
    List<Swatch> found = new ArrayList<>();
    List<String> words = List.of(colour.text().split("[^\\p{L}\\p{N}]+", -1));
    double shade = 0;
    for (int at = 0; at < words.size(); ) {
      int length = longestWord(words, at);
      Name word = Name.of(String.join(" ", words.subList(at, at + length)));
      Optional<Swatch> swatch = Optional.ofNullable(swatches.get(word));
      double before = shade;
      swatch.ifPresent(is -> found.add(shaded(is, before)));
      shade = swatch.isPresent() ? 0 : shade(words.get(at));
      at += Math.max(1, length);
    }
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Optional<Swatch> flake = found.stream().skip(1).findFirst();
    return Optional.of(
        new Colour(colour, Optional.of(found.get(0)), flake, flake.map(second -> Finish.FLAKE)));
  }

  /** How many of the words from {@code at} on are one of the lexicon's, the most there are. */
  private int longestWord(List<String> words, int at) {
    for (int length = words.size() - at; length > 0; length--) {
      if (swatches.containsKey(Name.of(String.join(" ", words.subList(at, at + length))))) {
        return length;
      }
    }
    return 0;
  }

  private static double shade(String word) {
    return switch (Name.of(word).key()) {
      case "dark", "deep" -> -0.4;
      case "light", "pale" -> 0.5;
      default -> 0;
    };
  }

  /** Towards black or white by a share of the way (assumption of this tool). */
  private static Swatch shaded(Swatch swatch, double shade) {
    int rgb = 0;
    for (int bits = 16; bits >= 0; bits -= 8) {
      int channel = swatch.rgb() >> bits & 0xFF;
      double target = shade < 0 ? 0 : 255;
      rgb |= (int) Math.round(channel + Math.abs(shade) * (target - channel)) << bits;
    }
    return new Swatch(rgb);
  }
}
