package traytally.restock;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import traytally.plastic.Money;
import traytally.plastic.Name;

/**
 * What the angler asked of the shopping list.
 *
 * @param until the day it must last to, if one was named
 * @param trips how many trips it must last for, if a number was named
 * @param shops the only shops to buy from; empty for any
 * @param budget what may be spent on goods and postage, if there is a limit
 * @param worth takes a pack must save for each unit of money to be bought for that alone
 * @param untried how many colours never fished to add
 */
public record Asked(
    Optional<LocalDate> until,
    OptionalInt trips,
    Set<Name> shops,
    Optional<Money> budget,
    OptionalDouble worth,
    int untried) {
  /** Nothing in particular. */
  public static final Asked NOTHING = new Asked(Optional.empty(), OptionalInt.empty(), Set.of());

  public Asked {
    shops = Set.copyOf(shops);
    if (trips.isPresent() && trips.getAsInt() < 1) {
      throw new IllegalArgumentException("at least one trip: " + trips.getAsInt());
    }
    if (until.isPresent() && trips.isPresent()) {
      throw new IllegalArgumentException("either until a date or for some trips, not both");
    }
    if (budget.filter(money -> money.cents() <= 0).isPresent()) {
      throw new IllegalArgumentException("a budget is above 0: " + budget);
    }
    if (worth.isPresent() && !(worth.getAsDouble() > 0)) {
      throw new IllegalArgumentException("a worth is above 0: " + worth);
    }
    if (untried < 0) {
      throw new IllegalArgumentException("0 colours to try or more: " + untried);
    }
  }

  /** For this horizon and these shops, without a budget. */
  public Asked(Optional<LocalDate> until, OptionalInt trips, Set<Name> shops) {
    this(until, trips, shops, Optional.empty(), OptionalDouble.empty(), 0);
  }

  /** The same with a budget. */
  public Asked within(Money most) {
    return new Asked(until, trips, shops, Optional.of(most), worth, untried);
  }
}
