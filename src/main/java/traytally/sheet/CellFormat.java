package traytally.sheet;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.poi.ss.usermodel.BuiltinFormats;
import org.apache.poi.ss.usermodel.DateUtil;

/**
 * What a number format makes of a number.
 *
 * @param code the format's code, as {@code dd/mm/yyyy}
 */
record CellFormat(String code, Meaning meaning) {
  static final CellFormat GENERAL = new CellFormat("General", Meaning.NUMBER);

  private static final double MILLIS_IN_DAY = 86_400_000;

  /** Quoted and escaped characters, colours and locales: shown, but saying nothing of dates. */
  private static final Pattern DECORATION =
      Pattern.compile("\"[^\"]*\"|\\\\.|[_*].|\\[(?![hHmMsS]+])[^]]*]");

  enum Meaning {
    NUMBER,
    DATE,
    TIME
  }

  /** The format of a built-in number or a code of the workbook's own. */
  static CellFormat of(int id, Optional<String> ownCode) {
    Optional<String> code =
        ownCode.or(() -> Optional.ofNullable(BuiltinFormats.getBuiltinFormat(id)));
    if (code.isEmpty() && isDateInSomeLanguage(id)) {
      return new CellFormat("General", Meaning.DATE);
    }
    String known = code.orElse("General");
    if (!DateUtil.isADateFormat(id, known)) {
      return new CellFormat(known, Meaning.NUMBER);
    }
    return new CellFormat(known, namesDay(known) ? Meaning.DATE : Meaning.TIME);
  }

  /** Built-in codes 27–36 and 50–58 are dates in East Asian settings (ECMA-376 part 1, 18.8.30). */
  private static boolean isDateInSomeLanguage(int id) {
    return (id >= 27 && id <= 36) || (id >= 50 && id <= 58);
  }

  /** Whether a date format shows a day, month or year; m beside h or s means minutes. */
  private static boolean namesDay(String code) {
    String bare = DECORATION.matcher(code).replaceAll("").toLowerCase(Locale.ROOT);
    boolean clock = bare.indexOf('h') >= 0 || bare.indexOf('s') >= 0 || bare.contains("[m");
    return bare.indexOf('y') >= 0
        || bare.indexOf('d') >= 0
        || (bare.indexOf('m') >= 0 && !clock)
        || bare.contains("mmm");
  }

  /** The cell of a number stored under this format. */
  Cell cell(double value, boolean from1904) {
    if (meaning == Meaning.DATE && DateUtil.isValidExcelDate(value) && value < LAST_DAY) {
      // Rounded to the second: 09:10 is stored as 0.38194444444, a hair under.
      return new Cell.DateTime(DateUtil.getLocalDateTime(value, from1904, true));
    }
    if (meaning == Meaning.TIME && value >= 0 && value < LAST_DAY) {
      long millis = Math.round(value * MILLIS_IN_DAY);
      return new Cell.Time(Duration.ofSeconds(Math.floorDiv(millis + 500, 1000)));
    }
    return new Cell.Numeric(value, code);
  }

  /** The serial of 10000-01-01, the first day no spreadsheet program shows. */
  private static final double LAST_DAY = 2_958_466;
}
