package traytally.intake;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.plastic.Plastic;

/** Lengths as people write them: {@code 3"}, {@code 3½in}, {@code 75mm}, a bare {@code 75}. */
public final class Lengths {
  /** A unit of length. */
  enum Unit {
    MM("1", "mm"),
    CM("10", "cm"),
    /** 25.4 mm by definition (international yard and pound agreement, 1959). */
    INCH("25.4", "inches");

    private final BigDecimal mm;
    private final String word;

    Unit(String mm, String word) {
      this.mm = new BigDecimal(mm);
      this.word = word;
    }

    String word() {
      return word;
    }
  }

  /** A length as written; the unit is empty where only the number stands. */
  record Written(BigDecimal number, Optional<Unit> unit) {
    private double inMm() {
      return number.doubleValue() * unit.orElse(Unit.MM).mm.doubleValue();
    }
  }

  /** No soft plastic is longer than this in inches or shorter than it in mm (common practice). */
  public static final BigDecimal LONGEST_INCHES = new BigDecimal("12");

  /** Bare numbers from here on are millimetres: 25 inches is no soft plastic (common practice). */
  private static final BigDecimal SURELY_MM = new BigDecimal("25");

  private static final BigDecimal SHORT_INCHES = new BigDecimal("7");

  private static final Pattern LENGTH =
      Pattern.compile(
          "("
              + Numbers.NUMBER
              + ")\\s*-?\\s*(?:(\"|''|inches|inch|ins|in)|(mm|millimet(?:re|er)s?|mil)|(cm|centimet(?:re|er)s?))?"
              + "\\.?(?: long)?");

  /** The same length in two units: {@code 75mm (3")}, {@code 3in/75mm}. */
  private static final Pattern TWICE =
      Pattern.compile("([^(/=]+?)\\s*(?:[/=]\\s*|\\()([^)]+?)\\)?");

  /**
   * Sizes are rounded when they are said in another unit: 75 mm are sold as 3" (common practice).
   */
  private static final double ROUNDED = 0.05;

  private Lengths() {}

  /** The length {@code text} is, without a decision on bare numbers. */
  static Optional<Written> parse(String text) {
    Optional<Written> once = once(text);
    Matcher twice = TWICE.matcher(Numbers.plain(text));
    return once.isEmpty() && twice.matches()
        ? agreed(once(twice.group(1)), once(twice.group(2)))
        : once;
  }

  /** The one in millimetres of two lengths that are one, else the first. */
  private static Optional<Written> agreed(Optional<Written> first, Optional<Written> second) {
    if (first.flatMap(Written::unit).isEmpty() || second.flatMap(Written::unit).isEmpty()) {
      return Optional.empty();
    }
    double one = first.get().inMm();
    double other = second.get().inMm();
    if (Math.abs(one - other) > ROUNDED * Math.max(one, other)) {
      return Optional.empty();
    }
    return second.filter(length -> length.unit().equals(Optional.of(Unit.MM))).or(() -> first);
  }

  private static Optional<Written> once(String text) {
    String plain = Numbers.plain(text).toLowerCase(Locale.ROOT).strip();
    Matcher length = LENGTH.matcher(plain.replaceFirst("^(?:~|about|approx\\.?|ca?\\.) ?", ""));
    if (!length.matches()) {
      return Optional.empty();
    }
    Optional<Unit> unit = Optional.empty();
    if (length.group(2) != null) {
      unit = Optional.of(Unit.INCH);
    } else if (length.group(3) != null) {
      unit = Optional.of(Unit.MM);
    } else if (length.group(4) != null) {
      unit = Optional.of(Unit.CM);
    }
    Optional<Unit> found = unit;
    return Numbers.parse(length.group(1)).map(number -> new Written(number, found));
  }

  /**
   * A length typed by itself, in whole millimetres: a bare number is inches where it may be; empty
   * if it is no length of a soft plastic.
   */
  public static Optional<Integer> typed(String text) {
    return parse(text)
        .flatMap(length -> mm(length, unit(Bare.EACH_BY_SIZE, length.number())).value());
  }

  /** The length in whole millimetres, halves upward; {@code bare} is the unit of bare numbers. */
  static Told<Integer> mm(Written length, Unit bare) {
    BigDecimal mm = length.number().multiply(length.unit().orElse(bare).mm);
    BigDecimal rounded = mm.setScale(0, RoundingMode.HALF_UP);
    if (rounded.signum() <= 0 || rounded.compareTo(BigDecimal.valueOf(Plastic.LONGEST_MM)) > 0) {
      return Told.wrong(
          "would be "
              + rounded.toPlainString()
              + " mm, which is no length of a soft plastic. Write 1 to 500 mm or up to 19 inches.");
    }
    return Told.of(rounded.intValueExact());
  }

  /** What bare numbers of a column are. */
  enum Bare {
    MM,
    CM,
    INCHES,
    /** Small ones inches, large ones millimetres. */
    EACH_BY_SIZE,
    CANNOT_TELL
  }

  /** Decides the unit of a column's bare numbers from all of them together. */
  static Bare decide(Collection<BigDecimal> bare) {
    boolean inches = bare.stream().anyMatch(n -> n.compareTo(LONGEST_INCHES) <= 0);
    boolean mm = bare.stream().anyMatch(n -> n.compareTo(SURELY_MM) >= 0);
    boolean between =
        bare.stream().anyMatch(n -> n.compareTo(LONGEST_INCHES) > 0 && n.compareTo(SURELY_MM) < 0);
    // From 7 on all of them may as well be centimetres: 7.5, 10, 12.5 (common practice).
    boolean large = bare.stream().allMatch(n -> n.compareTo(SHORT_INCHES) >= 0);
    if ((between && (inches || !mm)) || (inches && !mm && large)) {
      return Bare.CANNOT_TELL;
    }
    if (inches && mm) {
      return Bare.EACH_BY_SIZE;
    }
    return inches ? Bare.INCHES : Bare.MM;
  }

  /** The unit of one bare number under the column's decision. */
  static Unit unit(Bare decision, BigDecimal number) {
    return switch (decision) {
      case MM, CANNOT_TELL -> Unit.MM;
      case CM -> Unit.CM;
      case INCHES -> Unit.INCH;
      case EACH_BY_SIZE -> number.compareTo(LONGEST_INCHES) <= 0 ? Unit.INCH : Unit.MM;
    };
  }
}
