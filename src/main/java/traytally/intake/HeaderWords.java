package traytally.intake;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/** The words that people write over their columns, and how well a header fits them. */
final class HeaderWords {
  private static final WordList WORDS = WordList.read("headers.txt");

  /**
   * The words over a field's column, strongest first.
   *
   * @param whole those that a header may be
   * @param within how many of them, from the first on, may also stand within a header
   */
  private record Known(List<String> whole, int within) {}

  /** The words over each field's column: every header is held against all of them. */
  private static final Map<ListKind, Map<Field, Known>> KNOWN = known();

  private static final Known NONE = new Known(List.of(), 0);

  /** Words that stand over some column exactly: they are no slip of another. */
  private static final Set<String> SOME = some();

  /** Scores only rank guesses: a word that is the header beats one within it beats a slip. */
  private static final int EXACT = 1000;

  /** From here on a header is a usual word for its field. */
  static final int USUAL = EXACT / 2;

  /** Two words of one field, {@code River / Broad}, weigh a little less than one. */
  private static final int SAME_TWICE = 50;

  /** From here on a header holds a usual word for its field. */
  static final int WITHIN = 300;

  private static final int SLIP = 150;

  /** What people call a pack; a bag may be one to keep lures in. */
  private static final Pattern PACKET = Pattern.compile("\\b(?:packet|pkt|pck|pkg)(s?)\\b");

  private static final Pattern PACKS_OF = Pattern.compile("(?:packs|bags|packets) (?:of )?\\d+s?");

  /** The number of a value that has its unit behind it, such as {@code 40 min}: no header. */
  private static final Pattern VALUE = Pattern.compile("^\\d+(?: \\d+)? (?=\\p{L})");

  private HeaderWords() {}

  private static Map<ListKind, Map<Field, Known>> known() {
    Map<ListKind, Map<Field, Known>> known = new EnumMap<>(ListKind.class);
    for (ListKind kind : ListKind.values()) {
      Map<Field, Known> words = new EnumMap<>(Field.class);
      for (Field field : Field.values()) {
        List<String> whole = new ArrayList<>(field.headers(kind, "", WORDS));
        int within = whole.size();
        whole.addAll(field.headers(kind, " alone", WORDS));
        words.put(field, new Known(List.copyOf(whole), within));
      }
      known.put(kind, words);
    }
    return known;
  }

  private static Set<String> some() {
    Set<String> some = new HashSet<>(WORDS.words("ignored"));
    KNOWN.values().forEach(kind -> kind.values().forEach(words -> some.addAll(words.whole())));
    return some;
  }

  /** The words under {@code key} that no field owns. */
  static List<String> of(String key) {
    return WORDS.words(key);
  }

  /** Whether {@code header} is a word for what no list asks for. */
  static boolean isPassedOver(String header) {
    return WORDS.words("ignored").contains(header) || FishOff.is(header);
  }

  /** Whether {@code header} is a word that stands over a column of some list. */
  static boolean isKnown(String header) {
    return SOME.contains(header);
  }

  /** Whether {@code header} is a usual word for {@code field}. */
  static boolean isUsual(String header, Field field, ListKind kind) {
    return score(header, field, kind) >= USUAL;
  }

  /** Whether {@code header} names the maker and the body style at once: {@code Maker & style}. */
  static boolean namesMakerAndBody(String header, ListKind kind) {
    return holds(header, Field.MAKER, kind) && holds(header, Field.BODY, kind);
  }

  private static boolean holds(String header, Field field, ListKind kind) {
    int score = score(header, field, kind);
    return score >= WITHIN && score < USUAL;
  }

  /** How well a folded header fits a field of a list: 0 if not at all. */
  static int score(String header, Field field, ListKind kind) {
    if (kind == ListKind.BOX && field == Field.PACKS && PACKS_OF.matcher(header).matches()) {
      return USUAL;
    }
    Known known = KNOWN.getOrDefault(kind, Map.of()).getOrDefault(field, NONE);
    int place = known.whole().indexOf(header);
    if (place >= 0) {
      return EXACT - place;
    }
    if (PACKET.matcher(header).find()) {
      return score(PACKET.matcher(header).replaceAll("pack$1"), field, kind);
    }
    if (header.indexOf(' ') > 0
        && Arrays.stream(header.split(" ", -1)).allMatch(known.whole()::contains)) {
      return EXACT - SAME_TWICE;
    }
    List<String> words = known.whole().subList(0, known.within());
    return words.contains(VALUE.matcher(header).replaceFirst("")) ? 0 : roughly(header, words);
  }

  /** How well a header fits of which no word is the whole. */
  private static int roughly(String header, List<String> words) {
    int best = 0;
    String padded = " " + header + " ";
    for (String word : words) {
      if (word.length() > 2 && header.contains(word) && padded.contains(" " + word + " ")) {
        best = Math.max(best, WITHIN + 10 * word.length());
      } else if (best == 0
          && header.length() > 4
          && word.length() > 3
          && !SOME.contains(header)
          && Spelling.isOneSlip(header, word)) {
        best = SLIP;
      }
    }
    return best;
  }
}
