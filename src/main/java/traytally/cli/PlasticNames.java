package traytally.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/** Finds the plastic that somebody's words name. */
final class PlasticNames {
  private PlasticNames() {}

  /**
   * The plastics that have every word of {@code words}, in any order and case; words may be begun
   * only ({@code padd}). If some plastics' own words are all among those asked, only they are
   * meant: {@code paddle oil} is not {@code paddle motor oil} where both are owned.
   */
  static List<Plastic> matching(String words, Collection<Plastic> plastics) {
    List<String> asked =
        Arrays.stream(words.strip().split("[\\s,;()]+"))
            .map(word -> Name.of(word.replaceAll("(?i)(?<=\\d)mm$", "")).key())
            .filter(key -> !key.isEmpty() && !key.equals("mm"))
            .toList();
    List<Plastic> fitting =
        plastics.stream().filter(plastic -> fits(asked, plastic)).sorted().toList();
    List<Plastic> whole =
        fitting.stream()
            .filter(plastic -> new HashSet<>(asked).containsAll(bodyAndColour(plastic)))
            .toList();
    return whole.isEmpty() ? fitting : whole;
  }

  private static boolean fits(List<String> asked, Plastic plastic) {
    Set<String> own = new HashSet<>(bodyAndColour(plastic));
    own.addAll(wordsOf(plastic.maker()));
    String length = String.valueOf(plastic.lengthMm());
    return asked.stream()
        .allMatch(
            word ->
                word.equals(length)
                    || own.stream().anyMatch(w -> w.startsWith(word) && !word.matches("\\d+")));
  }

  private static List<String> bodyAndColour(Plastic plastic) {
    List<String> words = new ArrayList<>(wordsOf(plastic.body()));
    words.addAll(wordsOf(plastic.colour()));
    return words;
  }

  private static List<String> wordsOf(Name name) {
    return Arrays.stream(name.text().split("[\\s-]+"))
        .map(word -> Name.of(word).key())
        .filter(key -> !key.isEmpty())
        .toList();
  }
}
