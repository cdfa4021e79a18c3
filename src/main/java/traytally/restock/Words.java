package traytally.restock;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Numbers and dates as an angler would say them. */
final class Words {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);
  private static final DateTimeFormatter DAY_OF_YEAR =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

  private Words() {}

  /** {@code 14 June}, with the year where it is not this one. */
  static String day(LocalDate date, LocalDate today) {
    return (date.getYear() == today.getYear() ? DAY : DAY_OF_YEAR).format(date);
  }

  /** {@code 1 trip}, {@code 3 trips}. */
  static String plural(int count, String noun) {
    return count + " " + noun + (count == 1 ? "" : "s");
  }

  /** How many pieces go: {@code about 9 go}, {@code hardly any go}. */
  static String about(double pieces) {
    long whole = Math.round(pieces);
    if (whole == 0) {
      return "hardly any go";
    }
    return whole == 1 ? "about 1 goes" : "about " + whole + " go";
  }

  /** {@code 5 left}, {@code none left}. */
  static String left(int pieces) {
    return pieces == 0 ? "none left" : pieces + " left";
  }
}
