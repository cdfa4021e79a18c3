package traytally.restock;

import traytally.plastic.Money;
import traytally.plastic.Name;

/**
 * What one shop is paid.
 *
 * @param goods the sum of its lines
 * @param postage none where the goods reach its free-postage threshold, or it states no postage
 */
public record ShopOrder(Name shop, Money goods, Money postage) {
  public Money total() {
    return goods.plus(postage);
  }
}
