package traytally.restock;

import java.util.List;

/** One way to buy one plastic: packs, perhaps of several sizes or from several shops; immutable. */
final class Bundle {
  private final List<Purchase> purchases;
  private final double value;
  private final long[] goods;

  /**
   * A bundle.
   *
   * @param purchases empty to buy none
   * @param value what it is worth: the more the better
   * @param goods cents of goods by shop, in the order of the shops searched; nobody else may change
   *     them any more
   */
  Bundle(List<Purchase> purchases, double value, long[] goods) {
    this.purchases = List.copyOf(purchases);
    this.value = value;
    this.goods = goods;
  }

  List<Purchase> purchases() {
    return purchases;
  }

  double value() {
    return value;
  }

  /** Cents of goods at one shop. */
  long goods(int shop) {
    return goods[shop];
  }

  /** Cents of goods at all shops. */
  long cost() {
    long cost = 0;
    for (long part : goods) {
      cost += part;
    }
    return cost;
  }
}
