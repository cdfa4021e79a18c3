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
    return skipBlank() ? Optional.empty() : word(kind, text());
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
    return skipBlank() ? OptionalInt.empty() : OptionalInt.of(whole());
  }

  OptionalLong idIfAny() throws SQLException {
    return skipBlank() ? OptionalLong.empty() : OptionalLong.of(id());
  }

  boolean flag() throws SQLException {
    return id() != 0;
  }

  double real() throws SQLException {
    return rows.getDouble(next++);
  }

  OptionalDouble realIfAny() throws SQLException {
    return skipBlank() ? OptionalDouble.empty() : OptionalDouble.of(real());
  }

  /** Two columns: hundredths, currency. */
  Money money() throws SQLException {
    return new Money(id(), Currency.getInstance(text()));
  }

  Optional<Money> moneyIfAny() throws SQLException {
    if (skipBlank()) {
      next++;
      return Optional.empty();
    }
    return Optional.of(money());
  }

  Optional<Swatch> swatchIfAny() throws SQLException {
    return skipBlank() ? Optional.empty() : Optional.of(new Swatch(whole()));
  }

  Plastic plastic() throws SQLException {
    return plastics.plastic(id());
  }

  /** Steps over the next column if it is NULL. */
  private boolean skipBlank() throws SQLException {
    rows.getObject(next);
    if (!rows.wasNull()) {
      return false;
    }
    next++;
    return true;
  }
}
