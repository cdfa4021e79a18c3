package traytally.intake;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A catch as people put it into words: {@code blank}, {@code 3 wrasse}, {@code 2 bass, 1 pollack}.
 *
 * @param species each kind named, in small letters
 */
record Catch(int fish, List<String> species) {
  private static final Set<String> NOTHING =
      Set.of(
          "blank", "blanked", "a blank", "skunked", "none", "nothing", "no fish", "nowt", "zilch");

  private static final String COUNT = "(\\d{1,3}|an?|" + String.join("|", Numbers.WORDS) + ")";

  private static final Pattern COUNTED = Pattern.compile(COUNT + "\\s*x?\\s+([a-z][a-z '-]*)");
  private static final Pattern TIMES = Pattern.compile("([a-z][a-z '-]*?)\\s*x\\s*(\\d{1,3})");

  /** Words that make a number beside them one of something other than fish in the net. */
  private static final Pattern OTHER =
      Pattern.compile(
          ".*\\b(?:lost|dropped|off|missed|takes?|hits?|bites?|knocks?|follows?|hooked|hook-?ups?"
              + "|runs?|lbs?|oz|kgs?|g|cms?|mm|ins?|inch|inches|pounds?|pounders?|packs?|pieces"
              + "|pcs|hours?|mins?|minutes|casts|lures?|dozen|couple|and|or|not?)\\b.*");

  private static final String SIZE =
      "^(?:(?:very|small|little|tiny|big|large|nice|good|decent|fat|more) )+";

  private static final Pattern PLAIN_FISH =
      Pattern.compile("(?:fish|landed|caught|in the net|banked)");

  /** The catch that {@code text} tells in words with numbers; empty if it does not. */
  static Optional<Catch> of(String text) {
    String plain =
        Numbers.plain(text)
            .toLowerCase(Locale.ROOT)
            .replaceAll("[.!]+$", "")
            .replaceFirst("^(\\d{1,3}) \\((\\p{L}+)\\)$", "$1 $2");
    if (NOTHING.contains(plain)) {
      return Optional.of(new Catch(0, List.of()));
    }
    int fish = 0;
    List<String> species = new ArrayList<>();
    for (String part : plain.split("\\s*(?:[,;+&/]|\\band\\b)\\s*", -1)) {
      Matcher counted = COUNTED.matcher(part);
      Matcher times = TIMES.matcher(part);
      boolean first = counted.matches();
      if (!first && !times.matches()) {
        return Optional.empty();
      }
      String name = (first ? counted.group(2) : times.group(1)).strip().replaceFirst(SIZE, "");
      if (OTHER.matcher(name).matches()) {
        return Optional.empty();
      }
      fish += number(first ? counted.group(1) : times.group(2));
      if (!PLAIN_FISH.matcher(name).matches() && !species.contains(name)) {
        species.add(name);
      }
    }
    return Optional.of(new Catch(fish, List.copyOf(species)));
  }

  private static int number(String word) {
    return word.startsWith("a")
        ? 1
        : Numbers.word(word).map(BigDecimal::intValueExact).orElseGet(() -> Integer.valueOf(word));
  }
}
