package traytally.restock;

import traytally.ledger.Offer;
import traytally.plastic.Money;
import traytally.plastic.Packs;
import traytally.plastic.Pieces;

/** Packs of one plastic to buy from one shop. */
public record Purchase(Offer offer, Packs packs) {
  public Purchase {
    if (packs.count() < 1) {
      throw new IllegalArgumentException("a purchase is at least one pack: " + packs);
    }
  }

  /** The fewest packs of {@code offer} that hold {@code pieces}, at least 1. */
  static Purchase covering(Offer offer, int pieces) {
    int size = offer.packSize();
    return new Purchase(offer, new Packs(Math.max(1, (pieces + size - 1) / size)));
  }

  public Pieces pieces() {
    return packs.opened(offer.packSize());
  }

  public Money lineTotal() {
    return offer.packPrice().times(packs.count());
  }
}
