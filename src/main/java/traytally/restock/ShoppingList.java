package traytally.restock;

import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import traytally.ledger.Book;
import traytally.plastic.Money;
import traytally.plastic.Name;

/**
 * What to buy before the horizon's trips, and where.
 *
 * @param outlook what it was worked out from
 * @param shops the only ones asked for; empty for all
 * @param budget what goods and postage may cost, if there is a limit
 * @param lines what nobody sells first, then by shop and plastic, then what the budget left out
 * @param orders what each shop is paid, by name
 * @param notes what the angler should know about how the list was made, in words
 */
public record ShoppingList(
    LocalDate asOf,
    Outlook outlook,
    Currency currency,
    Set<Name> shops,
    Optional<Money> budget,
    List<ShoppingLine> lines,
    List<ShopOrder> orders,
    List<String> notes) {
  public ShoppingList {
    shops = Set.copyOf(shops);
    lines = List.copyOf(lines);
    orders = List.copyOf(orders);
    notes = List.copyOf(notes);
  }

  /** The list for what the book knew at the end of {@code asOf}. */
  public static ShoppingList of(Book book, LocalDate asOf, Asked asked) {
    return new ShoppingTrip(book, asOf, asked).list();
  }

  /** The trips it must last for. */
  public Horizon horizon() {
    return outlook.horizon();
  }

  /** Whether use rests on the setting, there being no log yet. */
  public boolean useAssumed() {
    return outlook.useAssumed();
  }

  /** The sum of the lines. */
  public Money goods() {
    return orders.stream().map(ShopOrder::goods).reduce(Money.zero(currency), Money::plus);
  }

  /** Takes that all of it saves over the horizon. */
  public double takesSaved() {
    return lines.stream().mapToDouble(ShoppingLine::takesSaved).sum();
  }

  public Money postage() {
    return orders.stream().map(ShopOrder::postage).reduce(Money.zero(currency), Money::plus);
  }

  /** Goods and postage. */
  public Money total() {
    return goods().plus(postage());
  }
}
