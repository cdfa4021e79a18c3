package traytally.store;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;
import traytally.plastic.Swatch;

/** The parameters of one statement, filled from left to right. */
final class Slots {
  private final PreparedStatement statement;
  private final Plastics plastics;
  private int next = 1;
  private LocalDate lastDate = LocalDate.EPOCH;
  private String lastDateText = LocalDate.EPOCH.toString();

  Slots(PreparedStatement statement, Plastics plastics) {
    this.statement = statement;
    this.plastics = plastics;
  }

  /** Goes back to the first parameter, for the next row. */
  Slots rewound() {
    next = 1;
    return this;
  }

  Slots text(String text) throws SQLException {
    statement.setString(next++, text);
    return this;
  }

  Slots name(Name name) throws SQLException {
    return text(name.text());
  }

  Slots date(LocalDate date) throws SQLException {
    // A log tells many stints of one day in a row.
    if (!date.equals(lastDate)) {
      lastDate = date;
      lastDateText = date.toString();
    }
    return text(lastDateText);
  }

  Slots word(Enum<?> choice) throws SQLException {
    return text(choice.name().toLowerCase(Locale.ROOT));
  }

  Slots word(Optional<? extends Enum<?>> choice) throws SQLException {
    return choice.isPresent() ? word(choice.get()) : none(Types.VARCHAR);
  }

  Slots whole(long number) throws SQLException {
    statement.setLong(next++, number);
    return this;
  }

  Slots whole(OptionalInt number) throws SQLException {
    return number.isPresent() ? whole(number.getAsInt()) : none(Types.INTEGER);
  }

  Slots whole(OptionalLong number) throws SQLException {
    return number.isPresent() ? whole(number.getAsLong()) : none(Types.INTEGER);
  }

  Slots flag(boolean flag) throws SQLException {
    return whole(flag ? 1 : 0);
  }

  Slots real(double number) throws SQLException {
    statement.setDouble(next++, number);
    return this;
  }

  Slots real(OptionalDouble number) throws SQLException {
    return number.isPresent() ? real(number.getAsDouble()) : none(Types.REAL);
  }

  /** Two parameters: hundredths, currency. */
  Slots money(Money money) throws SQLException {
    return whole(money.cents()).text(money.currency().getCurrencyCode());
  }

  Slots money(Optional<Money> money) throws SQLException {
    return money.isPresent() ? money(money.get()) : none(Types.INTEGER).none(Types.VARCHAR);
  }

  Slots swatch(Optional<Swatch> swatch) throws SQLException {
    return swatch.isPresent() ? whole(swatch.get().rgb()) : none(Types.INTEGER);
  }

  Slots plastic(Plastic plastic) throws SQLException {
    return whole(plastics.id(plastic));
  }

  private Slots none(int type) throws SQLException {
    statement.setNull(next++, type);
    return this;
  }
}
