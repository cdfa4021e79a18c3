package traytally.intake;

import java.util.Arrays;
import java.util.List;
import traytally.plastic.Name;

/** How near two spellings are to being one word. */
public final class Spelling {
  private Spelling() {}

  /**
   * Whether one may be a slip or a short form of the other: {@code mtr oil} and {@code motor oil}.
   */
  public static boolean near(Name one, Name other) {
    String a = one.key();
    String b = other.key();
    if (a.equals(b) || !digits(a).equals(digits(b))) {
      return false;
    }
    int longest = Math.max(a.length(), b.length());
    // One slip in five letters, two in eight: common practice of spelling checkers.
    int allowed = longest < 5 ? 0 : longest < 8 ? 1 : 2;
    return (Math.abs(a.length() - b.length()) <= allowed && slips(a, b) <= allowed)
        || sameWords(one, other)
        || abbreviates(words(one), words(other));
  }

  /** Whether the words of one are among those of the other: {@code paddle}, {@code paddle tail}. */
  static boolean partOf(Name one, Name other) {
    List<String> a = words(one);
    List<String> b = words(other);
    return !one.equals(other) && (b.containsAll(a) || a.containsAll(b));
  }

  private static String digits(String key) {
    return key.replaceAll("\\D+", " ").strip();
  }

  private static List<String> words(Name name) {
    return Arrays.asList(WordList.fold(name.text()).split(" ", -1));
  }

  private static boolean sameWords(Name one, Name other) {
    return words(one).stream().sorted().toList().equals(words(other).stream().sorted().toList());
  }

  private static boolean abbreviates(List<String> a, List<String> b) {
    if (a.size() != b.size()) {
      return false;
    }
    for (int i = 0; i < a.size(); i++) {
      String shorter = a.get(i).length() <= b.get(i).length() ? a.get(i) : b.get(i);
      String longer = shorter.equals(a.get(i)) ? b.get(i) : a.get(i);
      if (!shorter.equals(longer) && !shortens(shorter, longer)) {
        return false;
      }
    }
    return true;
  }

  /** Whether {@code shorter} is {@code longer} with letters left out, as mtr for motor. */
  private static boolean shortens(String shorter, String longer) {
    if (shorter.length() < 2 || shorter.charAt(0) != longer.charAt(0)) {
      return false;
    }
    int at = 0;
    for (int i = 0; i < longer.length() && at < shorter.length(); i++) {
      if (longer.charAt(i) == shorter.charAt(at)) {
        at++;
      }
    }
    // A short form keeps the consonants; "pin" for "pumpkin" does not.
    String consonants = longer.substring(1).replaceAll("[aeiouy]", "");
    return at == shorter.length()
        && shorter.substring(1).replaceAll("[aeiouy]", "").length()
            >= Math.min(2, consonants.length());
  }

  /** Whether two words are one {@linkplain #slips slip} apart, without counting more of them. */
  static boolean isOneSlip(String a, String b) {
    int shorter = Math.min(a.length(), b.length());
    int lead = 0;
    while (lead < shorter && a.charAt(lead) == b.charAt(lead)) {
      lead++;
    }
    int tail = 0;
    while (tail < shorter - lead
        && a.charAt(a.length() - 1 - tail) == b.charAt(b.length() - 1 - tail)) {
      tail++;
    }
    String left = a.substring(lead, a.length() - tail);
    String other = b.substring(lead, b.length() - tail);
    return Math.max(left.length(), other.length()) == 1
        || (left.length() == 2
            && other.length() == 2
            && left.charAt(0) == other.charAt(1)
            && left.charAt(1) == other.charAt(0));
  }

  /**
   * Letters left out, put in, changed or swapped with the next between two words: optimal string
   * alignment (Damerau 1964, doi:10.1145/363958.363994, each letter edited at most once).
   */
  static int slips(String a, String b) {
    int[][] least = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          least[i][j] = i + j;
          continue;
        }
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        int best = Math.min(least[i - 1][j] + 1, least[i][j - 1] + 1);
        best = Math.min(best, least[i - 1][j - 1] + change);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          best = Math.min(best, least[i - 2][j - 2] + 1);
        }
        least[i][j] = best;
      }
    }
    return least[a.length()][b.length()];
  }
}
