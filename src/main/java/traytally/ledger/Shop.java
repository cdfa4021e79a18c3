package traytally.ledger;

import java.util.Optional;
import java.util.OptionalInt;
import traytally.plastic.Money;
import traytally.plastic.Name;

/**
 * A shop's terms beside its prices.
 *
 * @param postage for one order, if stated
 * @param freePostageOver goods worth at least this are sent free, if stated
 * @param deliveryDays days from order to tray, if stated
 */
public record Shop(
    Name name, Optional<Money> postage, Optional<Money> freePostageOver, OptionalInt deliveryDays) {
  public Shop {
    if (name.isBlank()) {
      throw new IllegalArgumentException("a shop needs a name");
    }
  }
}
