package traytally.render;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How many columns of a terminal a text takes, and texts made to fit.
 *
 * <p>What one sees as one character (an extended grapheme cluster, UAX #29) takes the columns of
 * its widest code point: two for wide and full-width ones (UAX #11) and for pictures, none for
 * combining marks, else one.
 */
final class DisplayWidth {
  /** First and last code points of the runs that are wide or full-width in Unicode 14, UAX #11. */
  private static final int[] WIDE = {
    0x1100, 0x115F, 0x231A, 0x231B, 0x2329, 0x232A, 0x23E9, 0x23EC, 0x23F0, 0x23F0, 0x23F3, 0x23F3,
    0x25FD, 0x25FE, 0x2614, 0x2615, 0x2648, 0x2653, 0x267F, 0x267F, 0x2693, 0x2693, 0x26A1, 0x26A1,
    0x26AA, 0x26AB, 0x26BD, 0x26BE, 0x26C4, 0x26C5, 0x26CE, 0x26CE, 0x26D4, 0x26D4, 0x26EA, 0x26EA,
    0x26F2, 0x26F3, 0x26F5, 0x26F5, 0x26FA, 0x26FA, 0x26FD, 0x26FD, 0x2705, 0x2705, 0x270A, 0x270B,
    0x2728, 0x2728, 0x274C, 0x274C, 0x274E, 0x274E, 0x2753, 0x2755, 0x2757, 0x2757, 0x2795, 0x2797,
    0x27B0, 0x27B0, 0x27BF, 0x27BF, 0x2B1B, 0x2B1C, 0x2B50, 0x2B50, 0x2B55, 0x2B55, 0x2E80, 0x303E,
    0x3041, 0x3247, 0x3250, 0x4DBF, 0x4E00, 0xA4C6, 0xA960, 0xA97C, 0xAC00, 0xD7A3, 0xF900, 0xFAD9,
    0xFE10, 0xFE19, 0xFE30, 0xFE6B, 0xFF01, 0xFF60, 0xFFE0, 0xFFE6, 0x16FE0, 0x1B2FB, 0x1F004,
    0x1F004, 0x1F0CF, 0x1F0CF, 0x1F18E, 0x1F18E, 0x1F191, 0x1F19A, 0x1F200, 0x1F320, 0x1F32D,
    0x1F335, 0x1F337, 0x1F37C, 0x1F37E, 0x1F393, 0x1F3A0, 0x1F3CA, 0x1F3CF, 0x1F3D3, 0x1F3E0,
    0x1F3F0, 0x1F3F4, 0x1F3F4, 0x1F3F8, 0x1F43E, 0x1F440, 0x1F440, 0x1F442, 0x1F4FC, 0x1F4FF,
    0x1F53D, 0x1F54B, 0x1F54E, 0x1F550, 0x1F567, 0x1F57A, 0x1F57A, 0x1F595, 0x1F596, 0x1F5A4,
    0x1F5A4, 0x1F5FB, 0x1F64F, 0x1F680, 0x1F6C5, 0x1F6CC, 0x1F6CC, 0x1F6D0, 0x1F6D2, 0x1F6D5,
    0x1F6DF, 0x1F6EB, 0x1F6EC, 0x1F6F4, 0x1F6FC, 0x1F7E0, 0x1F7F0, 0x1F90C, 0x1F93A, 0x1F93C,
    0x1F945, 0x1F947, 0x1F9FF, 0x1FA70, 0x1FAF6, 0x20000, 0x3134A
  };

  /** Asks for the picture of the character before it. */
  private static final int PICTURE_SELECTOR = 0xFE0F;

  private static final int FIRST_FLAG_LETTER = 0x1F1E6;
  private static final int LAST_FLAG_LETTER = 0x1F1FF;

  /** Vowels and final consonants that join the Hangul syllable begun before them. */
  private static final int FIRST_JOINING_JAMO = 0x1160;

  private static final int LAST_JOINING_JAMO = 0x11FF;

  /** Dashes, quotation marks, bullets and dots: U+2013 to U+2026, plain as letters are. */
  private static final char EN_DASH = '\u2013';

  private static final char ELLIPSIS_DOTS = '\u2026';

  private static final Pattern CLUSTER = Pattern.compile("\\X");
  private static final Pattern SPACES = Pattern.compile(" +");
  private static final String ELLIPSIS = "…";

  private DisplayWidth() {}

  /** Columns that {@code text} takes. */
  static int of(String text) {
    if (isPlain(text)) {
      return text.length();
    }
    int width = 0;
    Matcher cluster = CLUSTER.matcher(text);
    while (cluster.find()) {
      width += ofCluster(cluster.group());
    }
    return width;
  }

  /** Whether each of its characters is seen, takes one column, and stands for itself alone. */
  static boolean isPlain(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if ((c < ' ' || c > '~') && (c < EN_DASH || c > ELLIPSIS_DOTS)) {
        return false;
      }
    }
    return true;
  }

  private static int ofCluster(String cluster) {
    int width = 0;
    int flagLetters = 0;
    for (int i = 0; i < cluster.length(); i += Character.charCount(cluster.codePointAt(i))) {
      int codePoint = cluster.codePointAt(i);
      if (codePoint >= FIRST_FLAG_LETTER && codePoint <= LAST_FLAG_LETTER) {
        flagLetters++;
      }
      boolean picture = codePoint == PICTURE_SELECTOR && width > 0;
      width = Math.max(width, picture || flagLetters == 2 ? 2 : ofCodePoint(codePoint));
    }
    return width;
  }

  static int ofCodePoint(int codePoint) {
    if (codePoint >= FIRST_JOINING_JAMO && codePoint <= LAST_JOINING_JAMO) {
      return 0;
    }
    int width =
        switch (Character.getType(codePoint)) {
          case Character.NON_SPACING_MARK,
              Character.ENCLOSING_MARK,
              Character.FORMAT,
              Character.CONTROL ->
              0;
          default -> 1;
        };
    return width == 1 && isWide(codePoint) ? 2 : width;
  }

  private static boolean isWide(int codePoint) {
    int place = Arrays.binarySearch(WIDE, codePoint);
    // At a bound, or between a first (even place) and its last.
    return place >= 0 || (-place - 1) % 2 == 1;
  }

  /** {@code text}, or its beginning and an ellipsis where it is wider than {@code width}. */
  static String cut(String text, int width) {
    return of(text) <= width ? text : head(text, width - 1).stripTrailing() + ELLIPSIS;
  }

  /** As much of the beginning of {@code text} as {@code width} columns hold. */
  private static String head(String text, int width) {
    int used = 0;
    int end = 0;
    Matcher cluster = CLUSTER.matcher(text);
    while (cluster.find()) {
      used += ofCluster(cluster.group());
      if (used > width) {
        break;
      }
      end = cluster.end();
    }
    return text.substring(0, end);
  }

  /** {@code text} as it is where it fits, spacing and all, and else wrapped. */
  static List<String> fits(String text, int width) {
    return of(text) <= width ? List.of(text) : wrap(text, width);
  }

  /** Lines of at most {@code width} columns, broken at spaces or, in a longer word, anywhere. */
  static List<String> wrap(String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    int used = 0;
    for (String word : SPACES.split(text.strip(), -1)) {
      int wanted = of(word);
      if (used > 0 && used + 1 + wanted <= width) {
        line.append(' ').append(word);
        used += 1 + wanted;
        continue;
      }
      if (used > 0) {
        lines.add(line.toString());
        line.setLength(0);
      }
      used = wanted <= width ? wanted : breakWord(word, width, lines, line);
      line.append(wanted <= width ? word : "");
    }
    lines.add(line.toString());
    return lines;
  }

  /** Adds the full lines of {@code word}, begins {@code line} with its rest and tells its width. */
  private static int breakWord(String word, int width, List<String> lines, StringBuilder line) {
    int used = 0;
    Matcher cluster = CLUSTER.matcher(word);
    while (cluster.find()) {
      int wanted = ofCluster(cluster.group());
      if (used > 0 && used + wanted > width) {
        lines.add(line.toString());
        line.setLength(0);
        used = 0;
      }
      line.append(cluster.group());
      used += wanted;
    }
    return used;
  }

  /** {@code text} followed by spaces up to {@code width} columns. */
  static String left(String text, int width) {
    return text + " ".repeat(Math.max(0, width - of(text)));
  }

  /** {@code text} after spaces up to {@code width} columns. */
  static String right(String text, int width) {
    return " ".repeat(Math.max(0, width - of(text))) + text;
  }

  /** Columns of the widest word of {@code text}. */
  static int widestWord(String text) {
    return Arrays.stream(SPACES.split(text, -1)).mapToInt(DisplayWidth::of).max().orElse(0);
  }
}
