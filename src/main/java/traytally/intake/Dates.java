package traytally.intake;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Dates as people type them; real date cells never come here. */
final class Dates {
  /** Which of two numbers below 13 is the day. */
  enum Order {
    DAY_FIRST,
    MONTH_FIRST
  }

  /**
   * A date as written: its possible readings.
   *
   * @param dayFirst read day first, or as it can only be read
   * @param monthFirst read month first, or as it can only be read
   */
  record Written(Optional<LocalDate> dayFirst, Optional<LocalDate> monthFirst) {
    static Written only(Optional<LocalDate> date) {
      return new Written(date, date);
    }

    /** The one reading left when only one is a date, or both agree. */
    Optional<LocalDate> certain() {
      if (dayFirst.isEmpty() || dayFirst.equals(monthFirst)) {
        return monthFirst;
      }
      return monthFirst.isEmpty() ? dayFirst : Optional.empty();
    }

    Optional<LocalDate> in(Order order) {
      return order == Order.DAY_FIRST ? dayFirst : monthFirst;
    }

    /** The order this date alone proves, if it does. */
    Optional<Order> proves() {
      if (dayFirst.isPresent() == monthFirst.isPresent()) {
        return Optional.empty();
      }
      return Optional.of(dayFirst.isPresent() ? Order.DAY_FIRST : Order.MONTH_FIRST);
    }
  }

  private static final List<String> MONTHS =
      List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");

  private static final String MONTH =
      "(jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?"
          + "|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)";

  private static final Pattern WEEKDAY =
      Pattern.compile(
          "^(?:mon(?:day)?|tues?(?:day)?|wed(?:nesday|s)?|thu(?:r|rs|rsday)?|fri(?:day)?"
              + "|sat(?:urday)?|sun(?:day)?)\\b[.,]?\\s*");

  private static final Pattern ISO =
      Pattern.compile("(\\d{4})([-/. ])(\\d{1,2})\\2(\\d{1,2})(?:[t ].*)?");
  private static final Pattern ISO_BASIC = Pattern.compile("((?:19|20)\\d\\d)(\\d\\d)(\\d\\d)");
  private static final Pattern NUMBERS =
      Pattern.compile(
          "(\\d{1,2})\\s*([-/. ])\\s*(\\d{1,2})\\s*\\2\\s*(\\d{4}|\\d{2})(?:[ ,]+\\d{1,2}:\\d\\d.*)?");
  private static final Pattern NO_YEAR =
      Pattern.compile("(\\d{1,2})\\s*([-/.])\\s*(\\d{1,2})\\s*\\2?");
  private static final Pattern DAY_MONTH =
      Pattern.compile(
          "(\\d{1,2})(?:st|nd|rd|th)?(?: of)?[-/., ]*" + MONTH + "[-/.,' ]*(\\d{4}|\\d{2})?");
  private static final Pattern MONTH_DAY =
      Pattern.compile(MONTH + "[-/. ]*(\\d{1,2})(?:st|nd|rd|th)?[-/.,' ]+(\\d{4}|\\d{2})");

  /** A month and a day, and no year behind them. */
  private static final Pattern MONTH_DAY_ALONE =
      Pattern.compile(
          "((?:[a-z]{3,9}[.,]? )?)\\b"
              + MONTH
              + "\\b\\.? ?(\\d{1,2})(?:st|nd|rd|th)?\\b(?![-/.,' ]*\\d)",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern MONTH_WITHIN =
      Pattern.compile("(?<!\\d ?)(?<!\\d(?:st|nd|rd|th) ?)\\b" + MONTH + "\\b(?:,? (20\\d\\d))?");

  private Dates() {}

  /** The readings of {@code text}; two-digit years lie at most one year after {@code today}. */
  static Told<Written> parse(String text, LocalDate today, OptionalInt year) {
    String plain = Numbers.plain(text).toLowerCase(Locale.ROOT).strip();
    if (plain.isEmpty()) {
      return Told.nothing();
    }
    String bare = WEEKDAY.matcher(plain).replaceFirst("");
    Matcher numbers = NUMBERS.matcher(bare);
    if (numbers.matches()) {
      return numbers(numbers, year(numbers.group(4), today));
    }
    Matcher noYear = NO_YEAR.matcher(bare);
    if (noYear.matches()) {
      return year.isPresent() ? numbers(noYear, year.getAsInt()) : noYear();
    }
    Optional<LocalDate> date = iso(bare).or(() -> basic(bare)).or(() -> words(bare, today));
    if (date.isPresent()) {
      return Told.of(Written.only(date));
    }
    Matcher dayMonth = DAY_MONTH.matcher(bare);
    if (dayMonth.matches() && dayMonth.group(3) == null) {
      return year.isPresent()
          ? Told.of(
              Written.only(
                  date(year.getAsInt(), month(dayMonth.group(2)), number(dayMonth.group(1)))))
          : noYear();
    }
    return notADate();
  }

  private static Told<Written> notADate() {
    return Told.wrong("is not a date. Write it as 2026-06-03.");
  }

  private static Told<Written> noYear() {
    return Told.wrong("has no year. Write the year as well, as 2026-06-03.");
  }

  private static Told<Written> numbers(Matcher numbers, int year) {
    int first = number(numbers.group(1));
    int second = number(numbers.group(3));
    Optional<LocalDate> dayFirst = date(year, second, first);
    // Points between the numbers are written day first wherever they are used (CLDR 46 formats).
    boolean points = numbers.group(2).equals(".");
    Optional<LocalDate> monthFirst = points ? dayFirst : date(year, first, second);
    return dayFirst.isEmpty() && monthFirst.isEmpty()
        ? notADate()
        : Told.of(new Written(dayFirst, monthFirst));
  }

  private static Optional<LocalDate> iso(String bare) {
    Matcher iso = ISO.matcher(bare);
    return iso.matches()
        ? date(number(iso.group(1)), number(iso.group(3)), number(iso.group(4)))
        : Optional.empty();
  }

  private static Optional<LocalDate> basic(String bare) {
    Matcher iso = ISO_BASIC.matcher(bare);
    return iso.matches()
        ? date(number(iso.group(1)), number(iso.group(2)), number(iso.group(3)))
        : Optional.empty();
  }

  private static Optional<LocalDate> words(String bare, LocalDate today) {
    Matcher dayMonth = DAY_MONTH.matcher(bare);
    if (dayMonth.matches() && dayMonth.group(3) != null) {
      int year = year(dayMonth.group(3), today);
      return date(year, month(dayMonth.group(2)), number(dayMonth.group(1)));
    }
    Matcher monthDay = MONTH_DAY.matcher(bare);
    return monthDay.matches()
        ? date(year(monthDay.group(3), today), month(monthDay.group(1)), number(monthDay.group(2)))
        : Optional.empty();
  }

  /**
   * {@code text} with the day before the month where it begins with both and no year: {@code June
   * 6} may be a month of 2006, so that only who looks for days to come reads it so.
   */
  static String dayFirst(String text) {
    Matcher day = MONTH_DAY_ALONE.matcher(text);
    return day.lookingAt()
        ? day.group(1) + day.group(3) + " " + day.group(2) + text.substring(day.end())
        : text;
  }

  private static int month(String word) {
    return MONTHS.indexOf(word.substring(0, 3)) + 1;
  }

  private static int number(String digits) {
    return Integer.parseInt(digits);
  }

  private static int year(String digits, LocalDate today) {
    int year = number(digits);
    if (digits.length() == 4) {
      return year;
    }
    int century = today.getYear() / 100 * 100;
    return century + year > today.getYear() + 1 ? century - 100 + year : century + year;
  }

  private static Optional<LocalDate> date(int year, int month, int day) {
    try {
      return Optional.of(LocalDate.of(year, month, day));
    } catch (DateTimeException e) {
      // No such day in the calendar: to the reader of a column that is an answer, not a failure.
      return Optional.empty();
    }
  }

  /** A day with its month in words, or in ISO order, that stands within a text. */
  private static final Pattern WITHIN =
      Pattern.compile(
          "(?<!\\d)(?:20\\d\\d-\\d\\d-\\d\\d|\\d{1,2}(?:st|nd|rd|th)? "
              + MONTH
              + "\\b(?:,? (?:20)?\\d\\d\\b)?|\\d{1,2}[/.]\\d{1,2}[/.](?:20)?\\d\\d)(?!\\d)");

  /** The one day that a title or a name tells; one without a year is the last such day. */
  static Optional<LocalDate> within(String text, LocalDate today) {
    String plain = Numbers.plain(text).toLowerCase(Locale.ROOT);
    Matcher found = WITHIN.matcher(plain);
    if (!found.find()) {
      return Optional.empty();
    }
    Optional<LocalDate> day =
        parse(found.group(), today, OptionalInt.of(today.getYear()))
            .value()
            .flatMap(Written::certain);
    boolean untold = !found.group().matches(".*\\d\\d(?:\\d\\d)?$|20\\d\\d-.*");
    return day.map(d -> untold && d.isAfter(today) ? d.minusYears(1) : d);
  }

  /** The month and year that a name tells: {@code Mar 2026}; empty without a year. */
  static Optional<YearMonth> monthWithin(String text, OptionalInt year) {
    Matcher found = MONTH_WITHIN.matcher(Numbers.plain(text).toLowerCase(Locale.ROOT));
    if (!found.find() || (found.group(2) == null && found.start() > 0)) {
      // In the middle of a title and without its year it may be another word: what may be left.
      return Optional.empty();
    }
    OptionalInt told =
        found.group(2) == null ? year : OptionalInt.of(Integer.parseInt(found.group(2)));
    return told.isPresent()
        ? Optional.of(YearMonth.of(told.getAsInt(), month(found.group(1))))
        : Optional.empty();
  }

  /** Whether {@code text} is a date of some kind, be its year told or not. */
  static boolean isDate(String text) {
    LocalDate any = LocalDate.of(2000, 1, 1);
    return parse(text, any, OptionalInt.of(any.getYear())).value().isPresent();
  }

  /** Whether {@code text} is a date but for its year. */
  static boolean lacksYear(String text) {
    LocalDate any = LocalDate.of(2000, 1, 1);
    return isDate(text) && parse(text, any, OptionalInt.empty()).value().isEmpty();
  }

  /** The order all dates of a column that prove one agree on; empty if none does or they differ. */
  static Optional<Order> decide(Collection<Written> dates) {
    List<Order> proven = new ArrayList<>();
    dates.forEach(date -> date.proves().ifPresent(proven::add));
    return proven.stream().distinct().count() == 1 ? Optional.of(proven.get(0)) : Optional.empty();
  }
}
