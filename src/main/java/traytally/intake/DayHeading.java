package traytally.intake;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A date on a row of its own, perhaps with the water behind it and a remark behind that. */
record DayHeading(String date, Optional<String> water, Optional<String> remark) {
  private static final Pattern BETWEEN = Pattern.compile("\\s+[-–@|]\\s+|,\\s*|:\\s+|\\s+at\\s+");

  static DayHeading of(String text) {
    String plain = Numbers.plain(text);
    Matcher between = BETWEEN.matcher(plain);
    while (between.find()) {
      String date = plain.substring(0, between.start());
      if (Dates.isDate(date)) {
        String[] rest = BETWEEN.split(plain.substring(between.end()), 2);
        return new DayHeading(
            date,
            Optional.of(rest[0].strip()).filter(water -> !water.isEmpty()),
            rest.length > 1 ? Optional.of(rest[1].strip()) : Optional.empty());
      }
    }
    return new DayHeading(plain, Optional.empty(), Optional.empty());
  }
}
