package traytally.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import traytally.plastic.Money;
import traytally.plastic.Swatch;

/** What stands in one cell of a report. */
public sealed interface Value {
  /** Not known, or not applicable. */
  Value UNKNOWN = new Unknown();

  record Unknown() implements Value {}

  record Text(String text) implements Value {}

  record Whole(long number) implements Value {}

  /** A finite number. */
  record Decimal(double number) implements Value {
    public Decimal {
      if (!Double.isFinite(number)) {
        throw new IllegalArgumentException("not a number to print: " + number);
      }
    }
  }

  record Sum(Money money) implements Value {}

  record Day(LocalDate date) implements Value {}

  /**
   * A patch of colour.
   *
   * @param assumed whether it is guessed from the colour's name
   */
  record Tint(Swatch swatch, boolean assumed) implements Value {}

  record YesNo(boolean yes) implements Value {}

  /** Rows within a value; for machines, since people get them as sentences. */
  record Rows(List<Column> columns, List<List<Value>> rows) implements Value {
    public Rows {
      columns = List.copyOf(columns);
      rows = rows.stream().map(List::copyOf).toList();
    }
  }

  static Value of(String text) {
    return new Text(text);
  }

  static Value of(long number) {
    return new Whole(number);
  }

  static Value of(double number) {
    return new Decimal(number);
  }

  static Value of(boolean yes) {
    return new YesNo(yes);
  }

  static Value of(Money money) {
    return new Sum(money);
  }

  static Value of(LocalDate date) {
    return new Day(date);
  }

  static Value of(OptionalDouble number) {
    return number.isPresent() ? of(number.getAsDouble()) : UNKNOWN;
  }

  static Value of(OptionalInt number) {
    return number.isPresent() ? of(number.getAsInt()) : UNKNOWN;
  }

  static Value ofSwatch(Optional<Swatch> swatch, boolean assumed) {
    return swatch.map(known -> (Value) new Tint(known, assumed)).orElse(UNKNOWN);
  }

  static Value ofMoney(Optional<Money> money) {
    return money.map(Value::of).orElse(UNKNOWN);
  }

  /** A length in millimetres; 0 is unknown. */
  static Value ofLength(int lengthMm) {
    return lengthMm > 0 ? of(lengthMm) : UNKNOWN;
  }
}
