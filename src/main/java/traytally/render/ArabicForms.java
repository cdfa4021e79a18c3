package traytally.render;

import java.text.Normalizer;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Arabic letters in the forms they have where they join: the presentation forms B of Unicode
 * (U+FE70 to U+FEFC), which fonts have glyphs for.
 *
 * <p>A letter that has an initial form joins on both sides, one that has only a final form joins to
 * the letter before it (The Unicode Standard, 9.2, "Arabic Cursive Joining"). What forms there are
 * is read from the characters' own names and decompositions.
 */
final class ArabicForms {
  private static final int FIRST = 0xFE70;
  private static final int LAST = 0xFEFC;
  private static final int LAM = 0x0644;
  private static final int TATWEEL = 0x0640;

  /** How a letter stands: which neighbours it is joined to. */
  private enum Joined {
    ISOLATED,
    FINAL,
    INITIAL,
    MEDIAL
  }

  private static final Map<Joined, Map<String, Character>> FORMS = forms();

  private ArabicForms() {}

  private static Map<Joined, Map<String, Character>> forms() {
    Map<Joined, Map<String, Character>> forms = new HashMap<>();
    for (Joined joined : Joined.values()) {
      Map<String, Character> of = new HashMap<>();
      for (char c = FIRST; c <= LAST; c++) {
        String name = Optional.ofNullable(Character.getName(c)).orElse("");
        String letters = Normalizer.normalize(String.valueOf(c), Normalizer.Form.NFKC);
        if (name.endsWith(joined + " FORM") && !letters.startsWith(" ")) {
          of.put(letters, c);
        }
      }
      forms.put(joined, of);
    }
    return forms;
  }

  private static Optional<Character> form(Joined joined, String letters) {
    return Optional.ofNullable(FORMS.getOrDefault(joined, Map.of()).get(letters));
  }

  /** {@code text} with its letters joined, in the order it is read. */
  static String shape(String text) {
    StringBuilder shaped = new StringBuilder(text.length());
    boolean joinedBefore = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (isMark(c)) {
        shaped.append(c);
        continue;
      }
      int next = next(text, i);
      String letters = String.valueOf(c);
      if (c == LAM
          && next == i + 1
          && form(Joined.ISOLATED, letters + text.charAt(next)).isPresent()) {
        letters += text.charAt(next);
        i = next;
        next = next(text, i);
      }
      boolean toBefore = joinedBefore && form(Joined.FINAL, letters).isPresent();
      boolean onward = c == TATWEEL || form(Joined.INITIAL, letters).isPresent();
      boolean toNext = onward && next < text.length() && joinsBefore(text.charAt(next));
      Joined joined =
          toBefore
              ? toNext ? Joined.MEDIAL : Joined.FINAL
              : toNext ? Joined.INITIAL : Joined.ISOLATED;
      shaped.append(form(joined, letters).map(String::valueOf).orElse(letters));
      joinedBefore = toNext;
    }
    return shaped.toString();
  }

  private static boolean joinsBefore(char c) {
    return c == TATWEEL || form(Joined.FINAL, String.valueOf(c)).isPresent();
  }

  private static boolean isMark(char c) {
    return Character.getType(c) == Character.NON_SPACING_MARK;
  }

  /** The place of the next letter after {@code from}; marks stand on letters and part none. */
  private static int next(String text, int from) {
    int next = from + 1;
    while (next < text.length() && isMark(text.charAt(next))) {
      next++;
    }
    return next;
  }
}
