package traytally.intake;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Lengths of time as people write them: {@code 1:30}, {@code 90}, {@code 1.5 h}, 09:10-10:40. */
final class Durations {
  private static final BigDecimal HOUR = BigDecimal.valueOf(60);
  private static final int DAY = 24 * 60;
  private static final int NOON = 12 * 60;

  /** Nobody fishes longer than this through a night (an assumption). */
  private static final int LONGEST_NIGHT = 14 * 60;

  private static final String H = "(?:hours?|hrs?|h)\\.?";
  private static final String M = "(?:minutes?|mins?|min|m|')\\.?";
  private static final Pattern CLOCK =
      Pattern.compile("(\\d{1,2}):(\\d\\d)(?::\\d\\d)?(?:\\s*" + H + ")?");
  private static final Pattern HOURS_MINUTES =
      Pattern.compile("(\\d{1,2})\\s*" + H + "\\s*(?:and|,)?\\s*(\\d{1,2})\\s*(?:" + M + ")?");
  private static final Pattern HOURS =
      Pattern.compile(
          "("
              + Numbers.NUMBER
              + "|an?|one|two|three|four|half an?|(?:an? )?quarter(?: of)? an|three quarters(?: of)? an)"
              + "\\s*"
              + H);
  private static final Pattern AND_HALF =
      Pattern.compile(
          "(\\d{1,2}|an?|one|two|three)\\s*"
              + H
              + "\\s*and a half|(\\d{1,2}|one|two|three) and a half\\s*"
              + H);
  private static final Pattern MINUTES = Pattern.compile("(" + Numbers.NUMBER + ")\\s*" + M);

  /** So many hours or a few more: nobody begins at two in the night (an assumption). */
  private static final Pattern FEW_HOURS =
      Pattern.compile("([1-4](?:\\.5)?)\\s*(?:-|to|or)\\s*[2-6](?:\\.5)?");

  private static final Pattern SPAN =
      Pattern.compile(
          "(\\d{1,2})(?:[:.h]?(\\d\\d))?\\s*(am|pm)?\\s*(?:-|to|until|till)\\s*(\\d{1,2})(?:[:.h]?(\\d\\d))?\\s*(am|pm)?");

  private Durations() {}

  /** What a bare number of a column is. */
  enum Bare {
    MINUTES,
    HOURS,
    /** Hours, and minutes behind the point: 1.30 is an hour and a half. */
    HOURS_POINT_MINUTES;

    /** The minutes that {@code number} is. */
    BigDecimal minutes(BigDecimal number) {
      return switch (this) {
        case MINUTES -> number;
        case HOURS -> number.multiply(HOUR);
        case HOURS_POINT_MINUTES -> {
          BigDecimal hours = number.setScale(0, RoundingMode.DOWN);
          yield hours.multiply(HOUR).add(number.subtract(hours).movePointRight(2));
        }
      };
    }
  }

  /** Minutes, where a bare number is what {@code bare} says. */
  static Told<Double> minutes(String text, Bare bare) {
    String plain =
        Numbers.plain(text)
            .toLowerCase(Locale.ROOT)
            .replaceFirst("^(?:~|about|abt|approx\\.?|ca\\.?|c\\.)\\s*", "")
            .strip();
    if (plain.isEmpty() || plain.equals("-") || plain.equals("?")) {
      return Told.nothing();
    }
    Optional<BigDecimal> minutes =
        Numbers.parse(plain).map(bare::minutes).or(() -> clock(plain)).or(() -> spelt(plain));
    Matcher few = FEW_HOURS.matcher(plain);
    if (bare == Bare.HOURS && few.matches()) {
      double least = Double.parseDouble(few.group(1)) * HOUR.intValue();
      return Told.about(least, "taken as " + few.group(1) + " hours");
    }
    Matcher span = SPAN.matcher(plain);
    if (minutes.isEmpty() && span.matches()) {
      return span(span);
    }
    if (minutes.isEmpty()) {
      return Told.wrong("is not a length of time. Write the minutes, such as 90, or 1:30.");
    }
    return checked(minutes.get().doubleValue());
  }

  /** Minutes from one time of day to another, each perhaps with its day before it. */
  static Told<Double> between(String from, String to) {
    return minutes(timeOfDay(from) + "-" + timeOfDay(to), Bare.MINUTES);
  }

  private static String timeOfDay(String text) {
    return text.replaceFirst("^\\d{1,4}[-/.]\\d{1,2}[-/.]\\d{1,4}(?:,? |T)(?=\\d)", "")
        .replaceFirst("^(\\d{2}:\\d{2})(?::\\d{2}(?:\\.\\d+)?)?(?:Z|[+-]\\d{2}:?\\d{2})?$", "$1");
  }

  /** {@code minutes} if one rod can fish that long in a day. */
  static Told<Double> checked(double minutes) {
    if (minutes < 0) {
      return Told.wrong("is less than no time. Write the minutes, such as 90.");
    }
    if (minutes > DAY) {
      return Told.wrong("is more than a day. Write the minutes of this stint, at most 1440.");
    }
    return Told.of(minutes);
  }

  private static Optional<BigDecimal> clock(String plain) {
    Matcher clock = CLOCK.matcher(plain);
    return clock.matches() ? Optional.of(hm(clock.group(1), clock.group(2))) : Optional.empty();
  }

  private static BigDecimal hm(String hours, String minutes) {
    return new BigDecimal(hours).multiply(HOUR).add(new BigDecimal(minutes));
  }

  private static Optional<BigDecimal> spelt(String plain) {
    Matcher andHalf = AND_HALF.matcher(plain);
    if (andHalf.matches()) {
      String whole = andHalf.group(1) == null ? andHalf.group(2) : andHalf.group(1);
      return number(whole).map(n -> n.add(new BigDecimal("0.5")).multiply(HOUR));
    }
    Matcher both = HOURS_MINUTES.matcher(plain);
    if (both.matches()) {
      return Optional.of(hm(both.group(1), both.group(2)));
    }
    Matcher hours = HOURS.matcher(plain);
    if (hours.matches()) {
      return number(hours.group(1)).map(HOUR::multiply);
    }
    Matcher minutes = MINUTES.matcher(plain);
    return minutes.matches() ? Numbers.parse(minutes.group(1)) : Optional.empty();
  }

  private static Optional<BigDecimal> number(String word) {
    return switch (word) {
      case "a", "an" -> Optional.of(BigDecimal.ONE);
      case "half a", "half an" -> Optional.of(new BigDecimal("0.5"));
      case "quarter an", "a quarter an", "quarter of an", "a quarter of an" ->
          Optional.of(new BigDecimal("0.25"));
      case "three quarters an", "three quarters of an" -> Optional.of(new BigDecimal("0.75"));
      default -> Numbers.word(word).or(() -> Numbers.parse(word));
    };
  }

  /** From one time of day to a later one, past midnight where that can be meant. */
  private static Told<Double> span(Matcher span) {
    String first = Optional.ofNullable(span.group(3)).orElse("");
    String last = Optional.ofNullable(span.group(6)).orElse("");
    int best = DAY;
    int start = DAY;
    for (String firstHalf : halves(first, last, span.group(1))) {
      for (String lastHalf : halves(last, first, span.group(4))) {
        int from = time(span.group(1), span.group(2), firstHalf);
        int to = time(span.group(4), span.group(5), lastHalf);
        if (from < 0 || to < 0) {
          return Told.wrong("is no length of time. Write the minutes, such as 90, or 09:10-10:40.");
        }
        if (Math.floorMod(to - from, DAY) < best) {
          best = Math.floorMod(to - from, DAY);
          start = from;
        }
      }
    }
    if (start + best < DAY) {
      return Told.of((double) best);
    }
    boolean late = start >= NOON + 60 || (!first.isEmpty() && !last.isEmpty());
    if (!late || best > LONGEST_NIGHT) {
      return Told.wrong(
          "ends before it starts, and is too long to run over midnight. Check both times.");
    }
    return Told.assuming(
        (double) best, "A time that ends before it starts was taken to run over midnight");
  }

  /** Morning or afternoon as written; where only the other time says it, whichever is nearer. */
  private static List<String> halves(String own, String other, String hour) {
    return !own.isEmpty() || other.isEmpty() || Integer.parseInt(hour) > 12
        ? List.of(own)
        : List.of("am", "pm");
  }

  private static int time(String hour, String minute, String half) {
    int hours = Integer.parseInt(hour);
    int minutes = minute == null ? 0 : Integer.parseInt(minute);
    if (hours > 24 || minutes > 59 || (!half.isEmpty() && hours > 12)) {
      return -1;
    }
    if (!half.isEmpty()) {
      hours = hours % 12 + (half.equals("pm") ? 12 : 0);
    }
    return hours * 60 + minutes;
  }
}
