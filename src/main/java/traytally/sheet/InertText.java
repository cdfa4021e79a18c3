package traytally.sheet;

import java.util.regex.Pattern;

/**
 * Text of a csv cell that no spreadsheet takes for a formula, and that can be read back unchanged.
 *
 * <p>A formula may begin with {@code = + - @}, their full-width forms, a tab, a carriage return or
 * a line feed (OWASP, "CSV Injection"), after blanks too where a program trims them. The rule:
 *
 * <ul>
 *   <li>writing: text that is any run of apostrophes and blanks and then one of these characters
 *       gets one apostrophe in front;
 *   <li>reading: text that is an apostrophe, any run of apostrophes and blanks and then one of
 *       these characters loses its first apostrophe.
 * </ul>
 *
 * <p>Writing adds the apostrophe to text that already begins with one as well, so reading undoes it
 * for every text, and leaves {@code 'neath} alone.
 *
 * <p>A spreadsheet program that opens such a file and saves it as a workbook keeps the apostrophe
 * in the cell. Workbooks are therefore read by the same rule, and in those to be read back a text
 * gets the apostrophe where reading would take one.
 */
public final class InertText {
  private static final String BLANKS = "['\\s\\p{Z}\\uFEFF\\u200B]*";
  private static final String STARTERS = "[=+\\-@\\t\\r\\n\\uFF1D\\uFF0B\\uFF0D\\uFF20]";
  private static final Pattern FORMULA = Pattern.compile(BLANKS + STARTERS);
  private static final Pattern INERT = Pattern.compile("'" + BLANKS + STARTERS);

  private InertText() {}

  /** {@code text} as it is written. */
  public static String write(String text) {
    // Nearly every cell begins like this, and the pattern is dear a million times over.
    if (!text.isEmpty() && Character.isLetterOrDigit(text.charAt(0))) {
      return text;
    }
    return FORMULA.matcher(text).lookingAt() ? "'" + text : text;
  }

  /** {@code text} as it is written to a workbook, whose cells of text are no formulas anyhow. */
  public static String writeCell(String text) {
    return read(text).equals(text) ? text : "'" + text;
  }

  /** What {@code written} stood for. */
  public static String read(String written) {
    return written.startsWith("'") && INERT.matcher(written).lookingAt()
        ? written.substring(1)
        : written;
  }
}
