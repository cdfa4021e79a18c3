package traytally.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Currency;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Swatch;
import traytally.trip.Months;

/** The columns of a result's rows, read from left to right. */
final class Cells {
  private final ResultSet rows;
  private final Plastics plastics;
  // Making a value costs more than reading its row; a box repeats few of them many times.
  private final Map<String, Name> names = new HashMap<>();
  private final Map<String, LocalDate> dates = new HashMap<>();
  private final Map<String, String> notes = new HashMap<>();
  private final Map<Class<?>, Map<String, Optional<Enum<?>>>> words = new HashMap<>();
  private int next = 1;

  Cells(ResultSet rows, Plastics plastics) {
    this.rows = rows;
    this.plastics = plastics;
  }

  /** Goes to the next row, if there is one. */
  boolean advance() throws SQLException {
    next = 1;
    return rows.next();
  }

  String text() throws SQLException {
    return rows.getString(next++);
  }

  /** Text that many rows share, kept once. */
  String note() throws SQLException {
    return notes.computeIfAbsent(text(), note -> note);
  }

  Name name() throws SQLException {
    return names.computeIfAbsent(text(), Name::of);
  }

  LocalDate date() throws SQLException {
    return dates.computeIfAbsent(text(), LocalDate::parse);
  }

  Months months() throws SQLException {
    String text = text();
    return Months.parse(text).orElseThrow(() -> new IllegalArgumentException("no months: " + text));
  }

  <E extends Enum<E>> E word(Class<E> kind) throws SQLException {
    return word(kind, text()).orElseThrow();
  }

  <E extends Enum<E>> Optional<E> wordIfAny(Class<E> kind) throws SQLException {
    String text = text();
    return text == null ? Optional.empty() : word(kind, text);
  }

  @SuppressWarnings("unchecked") // kept under its kind
  private <E extends Enum<E>> Optional<E> word(Class<E> kind, String text) {
    return (Optional<E>)
        words
            .computeIfAbsent(kind, k -> new HashMap<>())
            .computeIfAbsent(
                text, t -> Optional.of(Enum.valueOf(kind, t.toUpperCase(Locale.ROOT))));
  }

  long id() throws SQLException {
    return rows.getLong(next++);
  }

  int whole() throws SQLException {
    return Math.toIntExact(id());
  }

  OptionalInt wholeIfAny() throws SQLException {
    int whole = whole();
    return rows.wasNull() ? OptionalInt.empty() : OptionalInt.of(whole);
  }

  OptionalLong idIfAny() throws SQLException {
    long id = id();
    return rows.wasNull() ? OptionalLong.empty() : OptionalLong.of(id);
  }

  boolean flag() throws SQLException {
    return id() != 0;
  }

  double real() throws SQLException {
    return rows.getDouble(next++);
  }

  OptionalDouble realIfAny() throws SQLException {
    double real = real();
    return rows.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(real);
  }

  /** Two columns: hundredths, currency. */
  Money money() throws SQLException {
    return new Money(id(), Currency.getInstance(text()));
  }

  Optional<Money> moneyIfAny() throws SQLException {
    OptionalLong hundredths = idIfAny();
    String currency = text();
    return hundredths.isPresent()
        ? Optional.of(new Money(hundredths.getAsLong(), Currency.getInstance(currency)))
        : Optional.empty();
  }

  Optional<Swatch> swatchIfAny() throws SQLException {
    OptionalInt whole = wholeIfAny();
    return whole.isPresent() ? Optional.of(new Swatch(whole.getAsInt())) : Optional.empty();
  }

  Plastic plastic() throws SQLException {
    return plastics.plastic(id());
  }
}
