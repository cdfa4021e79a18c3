package traytally.intake;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Numbers that name the plastic they are of, one of several of a row: {@code 2 white paddle}. */
final class LostByName {
  private static final Pattern APART = Pattern.compile("\\s*(?:[,;&+\\n]|\\band\\b)\\s*");

  private static final Pattern COUNTED =
      Pattern.compile(
          "(\\d{1,3}|(?:an?|"
              + String.join("|", Numbers.WORDS)
              + ")\\b)\\s*(?:x\\s*|of\\s+)?(\\D.*)");

  private LostByName() {}

  /**
   * What {@code text} tells of one plastic among {@code plastics}; empty unless all of it names one
   * of them, and only one.
   */
  static Optional<Integer> of(String text, List<Anatomy> plastics, int place) {
    int own = 0;
    for (String part : APART.split(text.toLowerCase(Locale.ROOT).strip(), -1)) {
      Matcher counted = COUNTED.matcher(part);
      List<Integer> meant = counted.matches() ? meant(counted.group(2), plastics) : List.of();
      if (meant.size() != 1) {
        return Optional.empty();
      }
      own += meant.get(0) == place ? number(counted.group(1)) : 0;
    }
    return Optional.of(own);
  }

  private static int number(String word) {
    return word.startsWith("a")
        ? 1
        : Numbers.word(word).or(() -> Numbers.parse(word)).map(BigDecimal::intValue).orElse(0);
  }

  private static List<Integer> meant(String name, List<Anatomy> plastics) {
    Set<String> words = words(name);
    return IntStream.range(0, plastics.size())
        .filter(i -> words(all(plastics.get(i))).containsAll(words))
        .boxed()
        .toList();
  }

  private static String all(Anatomy plastic) {
    return plastic.body() + " " + plastic.colour() + " " + plastic.length();
  }

  private static Set<String> words(String text) {
    return new HashSet<>(Arrays.asList(WordList.fold(text).split(" ", -1)));
  }
}
