package traytally.ledger;

import java.util.Comparator;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * What a shop asks for one plastic.
 *
 * @param packSize pieces to a pack, at least 1
 * @param packPrice price of a pack, above 0
 */
public record Offer(Name shop, Plastic plastic, int packSize, Money packPrice, boolean inStock)
    implements Comparable<Offer> {
  private static final Comparator<Offer> ORDER =
      Comparator.comparing(Offer::shop)
          .thenComparing(Offer::plastic)
          .thenComparingInt(Offer::packSize);

  public Offer {
    if (shop.isBlank()) {
      throw new IllegalArgumentException("an offer needs a shop");
    }
    if (packSize < 1) {
      throw new IllegalArgumentException("a pack holds at least one piece: " + packSize);
    }
    if (packPrice.cents() <= 0) {
      throw new IllegalArgumentException("a price must be above 0: " + packPrice);
    }
  }

  @Override
  public int compareTo(Offer other) {
    return ORDER.compare(this, other);
  }
}
