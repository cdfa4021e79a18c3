package traytally.render;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** The style sheet of pages: one for screens of every width and for paper. */
final class PageStyle {
  private static final String FILE = "page.css";

  private PageStyle() {}

  /**
   * The style sheet for {@code paper}, laid on its side where the table is {@code wide}.
   *
   * @param foot what stands at the foot of each sheet of paper
   */
  static String of(Paper paper, boolean wide, String foot) throws IOException {
    String size =
        switch (paper) {
          case A4 -> wide ? "297mm 210mm" : "210mm 297mm";
          case LETTER -> wide ? "11in 8.5in" : "8.5in 11in";
        };
    try (InputStream stream = PageStyle.class.getResourceAsStream(FILE)) {
      if (stream == null) {
        throw new IllegalStateException("not packed: " + FILE);
      }
      String css = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
      return css.replace("PAPER", size).replace("FOOT", quoted(foot));
    }
  }

  /** A string as CSS 2.1 (4.3.7) has it, with every sign but letters and digits escaped. */
  private static String quoted(String words) {
    StringBuilder quoted = new StringBuilder("\"");
    words
        .codePoints()
        .forEach(
            c -> {
              if (Character.isLetterOrDigit(c)) {
                quoted.appendCodePoint(c);
              } else {
                quoted.append(String.format(Locale.ROOT, "\\%06x", c));
              }
            });
    return quoted.append('"').toString();
  }
}
