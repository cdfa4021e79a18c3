package traytally.render;

import java.util.Locale;
import java.util.regex.Pattern;

/**
 * Text as a workbook's XML holds it: characters that XML forbids stand as {@code _xHHHH_}, and text
 * that already looks like such an escape is escaped itself (ISO/IEC 29500-1, 22.9.2.19 ST_Xstring).
 */
final class WorkbookText {
  /** The longest text a cell can hold: the limit spreadsheet programs publish. */
  private static final int LONGEST = 32_767;

  private static final Pattern LOOKS_ESCAPED = Pattern.compile("_(?=x[0-9A-Fa-f]{4}_)");

  private WorkbookText() {}

  /** {@code text} as it is stored; what no cell can hold is cut, with an ellipsis to show it. */
  static String of(String text) {
    String guarded = LOOKS_ESCAPED.matcher(text).replaceAll("_x005F_");
    StringBuilder stored = new StringBuilder(guarded.length());
    guarded.codePoints().forEach(c -> append(stored, c));
    return stored.length() <= LONGEST ? stored.toString() : stored.substring(0, LONGEST - 1) + "…";
  }

  private static void append(StringBuilder stored, int codePoint) {
    boolean forbidden =
        (codePoint < ' ' && codePoint != '\t' && codePoint != '\n')
            || codePoint == 0xFFFE
            || codePoint == 0xFFFF
            || Character.getType(codePoint) == Character.SURROGATE;
    if (forbidden) {
      stored.append(String.format(Locale.ROOT, "_x%04X_", codePoint));
    } else {
      stored.appendCodePoint(codePoint);
    }
  }
}
