package traytally.render;

import java.text.Normalizer;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Texts with a sign in place of each letter that the paper's fonts cannot draw. */
final class PaperLetters implements UnaryOperator<String> {
  private static final Pattern CLUSTER = Pattern.compile("\\X");

  /** More names would be a list of their own (an assumption). */
  private static final int MOST_NAMED = 8;

  private static final int FIRST_SELECTOR = 0xFE00;
  private static final int LAST_SELECTOR = 0xFE0F;

  private final PaperFonts fonts;
  private final Set<Integer> missing = new LinkedHashSet<>();

  PaperLetters(PaperFonts fonts) {
    this.fonts = fonts;
  }

  @Override
  public String apply(String text) {
    return CLUSTER
        .matcher(Normalizer.normalize(text, Normalizer.Form.NFC))
        .replaceAll(found -> Matcher.quoteReplacement(drawn(found.group())));
  }

  private String drawn(String cluster) {
    StringBuilder visible = new StringBuilder();
    cluster.codePoints().filter(c -> !isUnseen(c)).forEach(visible::appendCodePoint);
    if (visible.codePoints().allMatch(fonts::draws)) {
      return visible.toString();
    }
    visible.codePoints().filter(c -> !fonts.draws(c)).forEach(missing::add);
    return PaperFonts.MISSING;
  }

  /** Joiners and selectors, which only say how others are drawn. */
  private static boolean isUnseen(int codePoint) {
    return Character.getType(codePoint) == Character.FORMAT
        || (codePoint >= FIRST_SELECTOR && codePoint <= LAST_SELECTOR);
  }

  /** A sentence on what could not be drawn so far, if there was something. */
  Optional<String> note() {
    if (missing.isEmpty()) {
      return Optional.empty();
    }
    String named =
        missing.stream()
            .limit(MOST_NAMED)
            .map(c -> String.format(Locale.ROOT, "U+%04X %s", c, Character.getName(c)))
            .collect(Collectors.joining(", "));
    String more = missing.size() > MOST_NAMED ? " and others" : "";
    return Optional.of(
        "\""
            + PaperFonts.MISSING
            + "\" also stands where this file has no letter: "
            + named
            + more
            + ".");
  }
}
