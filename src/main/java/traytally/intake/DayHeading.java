package traytally.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A date on a row of its own, perhaps with the water behind it and remarks behind that. */
record DayHeading(String date, Optional<String> water, List<String> remarks) {
  private static final Pattern BETWEEN = Pattern.compile("\\s+[-–@|]\\s+|,\\s*|:\\s+|\\s+at\\s+");

  DayHeading {
    remarks = List.copyOf(remarks);
  }

  static DayHeading of(String text) {
    String plain = Numbers.plain(text);
    Matcher between = BETWEEN.matcher(plain);
    while (between.find()) {
      String date = plain.substring(0, between.start());
      if (Dates.isDate(date)) {
        List<String> rest = new ArrayList<>();
        for (String part : BETWEEN.split(plain.substring(between.end()), -1)) {
          rest.add(part.strip());
        }
        rest.removeIf(String::isEmpty);
        return rest.isEmpty()
            ? new DayHeading(date, Optional.empty(), List.of())
            : new DayHeading(date, Optional.of(rest.get(0)), rest.subList(1, rest.size()));
      }
    }
    return new DayHeading(plain, Optional.empty(), List.of());
  }
}
