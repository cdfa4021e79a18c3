package traytally.restock;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * Where to buy what is needed at the least total cost, postage counted.
 *
 * <p>Every set of shops is tried. Within a set each plastic goes to the offer that costs least, and
 * then single plastics, or as many as a shop lacks for free postage, are moved while the total
 * falls. One offer serves a plastic: pack sizes are not mixed. Without free-postage thresholds the
 * result is the cheapest of all such baskets; with them it may miss one that needs several moves at
 * once, each dearer alone.
 */
final class Basket {
  /** Shops whose sets are all tried, 255 of them; the others are left out. */
  static final int MOST_SHOPS = 8;

  private final Market market;
  private final SortedMap<Plastic, List<Purchase>> choices = new TreeMap<>();

  /**
   * A basket for what is needed.
   *
   * @param need pieces by plastic; those that no shop has are left out
   */
  Basket(Market market, Map<Plastic, Integer> need) {
    this.market = market;
    need.forEach(
        (plastic, pieces) -> {
          List<Purchase> choice =
              market.offers(plastic).stream()
                  .map(offer -> Purchase.covering(offer, pieces))
                  .sorted(Comparator.comparing(Purchase::lineTotal).thenComparing(Purchase::offer))
                  .toList();
          if (!choice.isEmpty()) {
            choices.put(plastic, choice);
          }
        });
  }

  /** The shops that matter, those with most of the plastics first, then by name. */
  private List<Name> shops() {
    Map<Name, Long> sold =
        choices.values().stream()
            .flatMap(choice -> choice.stream().map(shop -> shop.offer().shop()).distinct())
            .collect(Collectors.groupingBy(shop -> shop, TreeMap::new, Collectors.counting()));
    return sold.keySet().stream()
        .sorted(Comparator.<Name>comparingLong(shop -> -sold.getOrDefault(shop, 0L)))
        .toList();
  }

  /** The shops beyond the {@link #MOST_SHOPS} that most of the plastics are sold by. */
  List<Name> leftOut() {
    List<Name> shops = shops();
    return shops.subList(Math.min(MOST_SHOPS, shops.size()), shops.size());
  }

  /** The purchases, by plastic; one that only a shop left out sells is not among them. */
  SortedMap<Plastic, Purchase> cheapest() {
    List<Name> shops = shops();
    shops = shops.subList(0, Math.min(MOST_SHOPS, shops.size()));
    Set<Name> tried = new HashSet<>(shops);
    Set<Plastic> sold = within(tried).keySet();
    SortedMap<Plastic, Purchase> best = new TreeMap<>();
    Optional<Money> least = Optional.empty();
    for (int set = 1; set < 1 << shops.size(); set++) {
      Set<Name> open = new HashSet<>();
      for (int s = 0; s < shops.size(); s++) {
        if ((set >> s & 1) == 1) {
          open.add(shops.get(s));
        }
      }
      SortedMap<Plastic, List<Purchase>> offered = within(open);
      if (offered.keySet().equals(sold)) {
        SortedMap<Plastic, Purchase> basket = settle(offered);
        Money cost = total(basket.values());
        if (least.isEmpty() || cost.compareTo(least.get()) < 0) {
          least = Optional.of(cost);
          best = basket;
        }
      }
    }
    return best;
  }

  private SortedMap<Plastic, List<Purchase>> within(Set<Name> open) {
    SortedMap<Plastic, List<Purchase>> offered = new TreeMap<>();
    choices.forEach(
        (plastic, choice) -> {
          List<Purchase> own =
              choice.stream().filter(purchase -> open.contains(purchase.offer().shop())).toList();
          if (!own.isEmpty()) {
            offered.put(plastic, own);
          }
        });
    return offered;
  }

  private SortedMap<Plastic, Purchase> settle(SortedMap<Plastic, List<Purchase>> offered) {
    SortedMap<Plastic, Purchase> basket = new TreeMap<>();
    offered.forEach((plastic, choice) -> basket.put(plastic, choice.get(0)));
    boolean better = true;
    while (better) {
      better = moveOne(basket, offered) || fillUp(basket, offered);
    }
    return basket;
  }

  /** Makes the single move that saves most; returns whether one saves anything. */
  private boolean moveOne(
      SortedMap<Plastic, Purchase> basket, SortedMap<Plastic, List<Purchase>> offered) {
    SortedMap<Name, Money> goods = goods(basket.values());
    Money most = Money.zero(market.currency());
    Map<Plastic, Purchase> move = Map.of();
    for (Map.Entry<Plastic, Purchase> now : basket.entrySet()) {
      for (Purchase other : offered.getOrDefault(now.getKey(), List.of())) {
        Money saving = saving(goods, now.getValue(), other);
        if (saving.compareTo(most) > 0) {
          most = saving;
          move = Map.of(now.getKey(), other);
        }
      }
    }
    basket.putAll(move);
    return !move.isEmpty();
  }

  /** What is saved by buying {@code other} instead of {@code now}, postage counted. */
  private Money saving(SortedMap<Name, Money> goods, Purchase now, Purchase other) {
    SortedMap<Name, Money> before = new TreeMap<>();
    for (Name shop : List.of(now.offer().shop(), other.offer().shop())) {
      before.put(shop, goods.getOrDefault(shop, Money.zero(market.currency())));
    }
    SortedMap<Name, Money> after = new TreeMap<>(before);
    after.computeIfPresent(now.offer().shop(), (shop, sum) -> sum.minus(now.lineTotal()));
    after.computeIfPresent(other.offer().shop(), (shop, sum) -> sum.plus(other.lineTotal()));
    return total(before).minus(total(after));
  }

  /** Moves to one shop what costs least extra until its postage is free, where that saves. */
  private boolean fillUp(
      SortedMap<Plastic, Purchase> basket, SortedMap<Plastic, List<Purchase>> offered) {
    Money before = total(basket.values());
    for (ShopOrder order : orders(basket.values())) {
      if (order.postage().cents() == 0) {
        continue;
      }
      Map<Plastic, Purchase> here = new LinkedHashMap<>();
      offered.forEach(
          (plastic, choice) ->
              choice.stream()
                  .filter(purchase -> purchase.offer().shop().equals(order.shop()))
                  .findFirst()
                  .ifPresent(purchase -> here.put(plastic, purchase)));
      List<Plastic> byExtra = new ArrayList<>(here.keySet());
      byExtra.removeIf(plastic -> at(order.shop(), plastic, basket));
      byExtra.sort(Comparator.comparingDouble(plastic -> extra(plastic, here, basket)));
      SortedMap<Plastic, Purchase> moved = new TreeMap<>(basket);
      for (Plastic plastic : byExtra) {
        moved.putAll(Map.of(plastic, here.getOrDefault(plastic, basket.get(plastic))));
        if (total(moved.values()).compareTo(before) < 0) {
          basket.putAll(moved);
          return true;
        }
      }
    }
    return false;
  }

  private static boolean at(Name shop, Plastic plastic, Map<Plastic, Purchase> basket) {
    Purchase now = basket.get(plastic);
    return now != null && now.offer().shop().equals(shop);
  }

  /** What a plastic costs more here than where it is now, per cent of goods it brings here. */
  private static double extra(
      Plastic plastic, Map<Plastic, Purchase> here, Map<Plastic, Purchase> basket) {
    Purchase now = basket.get(plastic);
    Purchase then = here.get(plastic);
    if (now == null || then == null) {
      return Double.POSITIVE_INFINITY;
    }
    double cents = then.lineTotal().cents();
    return (cents - now.lineTotal().cents()) / cents;
  }

  private Money total(Collection<Purchase> purchases) {
    return total(goods(purchases));
  }

  private Money total(SortedMap<Name, Money> goods) {
    return orders(goods).stream()
        .map(ShopOrder::total)
        .reduce(Money.zero(market.currency()), Money::plus);
  }

  private static SortedMap<Name, Money> goods(Collection<Purchase> purchases) {
    SortedMap<Name, Money> goods = new TreeMap<>();
    purchases.forEach(p -> goods.merge(p.offer().shop(), p.lineTotal(), Money::plus));
    return goods;
  }

  /** What each shop is paid, by name. */
  List<ShopOrder> orders(Collection<Purchase> purchases) {
    return orders(goods(purchases));
  }

  private List<ShopOrder> orders(SortedMap<Name, Money> goods) {
    return goods.entrySet().stream()
        .filter(shop -> shop.getValue().cents() > 0)
        .map(
            shop ->
                new ShopOrder(
                    shop.getKey(), shop.getValue(), market.postage(shop.getKey(), shop.getValue())))
        .toList();
  }
}
