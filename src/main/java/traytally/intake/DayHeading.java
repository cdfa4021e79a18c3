package traytally.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A date on a row of its own, perhaps with the water behind it and remarks behind that, or with the
 * water alone before it.
 */
record DayHeading(String date, Optional<String> water, List<String> remarks) {
  private static final Pattern BETWEEN = Pattern.compile("\\s+[-–@|]\\s+|,\\s*|:\\s+|\\s+at\\s+");

  private static final Pattern BLANK = Pattern.compile("[.,]? ");

  /** A date has a day of the week, a day, a month and a year, and an "of" (an assumption). */
  private static final int MOST_WORDS = 6;

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
    return waterFirst(plain).orElse(new DayHeading(plain, Optional.empty(), List.of()));
  }

  /** {@code Harrow Point, Sunday 31 August 2025}. */
  private static Optional<DayHeading> waterFirst(String plain) {
    Matcher between = BETWEEN.matcher(plain);
    if (!between.find()) {
      return Optional.empty();
    }
    String water = plain.substring(0, between.start()).strip();
    String date = plain.substring(between.end()).strip();
    return FirstSection.mayName(water) && !water.isEmpty() && Dates.isDate(date)
        ? Optional.of(new DayHeading(date, Optional.of(water), List.of()))
        : Optional.empty();
  }

  /** The same, where the water may follow the date without a mark: {@code 3 Aug 2025 Rill Bay}. */
  static DayHeading inWords(String text) {
    DayHeading marked = of(text);
    String plain = marked.date();
    Matcher blank = BLANK.matcher(plain);
    Optional<DayHeading> longest = Optional.empty();
    for (int words = 0; words < MOST_WORDS && blank.find(); words++) {
      String date = plain.substring(0, blank.start());
      String behind = plain.substring(blank.end());
      if (isDay(date) && behind.matches("\\p{L}.*")) {
        List<String> rest = new ArrayList<>(List.of(BETWEEN.split(behind, -1)));
        marked.water().ifPresent(rest::add);
        rest.addAll(marked.remarks());
        rest.removeIf(String::isBlank);
        longest =
            Optional.of(
                new DayHeading(date, Optional.of(rest.get(0)), rest.subList(1, rest.size())));
      }
    }
    return longest.orElse(marked);
  }

  /** Whether {@code date} is one by its month in words or its year: 1/2 may be half of anything. */
  private static boolean isDay(String date) {
    boolean more = date.matches("\\d{4}\\D\\d{1,2}\\D\\d{1,2} .*");
    return !more && Dates.isDate(date) && (date.matches(".*\\p{L}{3}.*") || !Dates.lacksYear(date));
  }
}
