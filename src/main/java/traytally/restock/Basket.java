package traytally.restock;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import traytally.ledger.Offer;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * What to buy where: the least total cost for what is needed, or the most worth within a budget;
 * postage and free-postage thresholds counted.
 */
final class Basket {
  /** Takes by which a basket must be better to count as such. */
  private static final double TAKES_STEP = 9e-4;

  /** Cents by which a basket must be cheaper to count as such. */
  private static final double CENTS_STEP = 0.5;

  private final Market market;
  private boolean proven = true;
  private boolean whole = true;

  Basket(Market market) {
    this.market = market;
  }

  /**
   * What further pieces of a plastic are worth.
   *
   * @param most pieces beyond which more are worth nothing
   * @param worth of so many pieces more
   * @param wanted whether at least one pack is to be bought in any case
   */
  record Gain(int most, IntToDoubleFunction worth, boolean wanted) {}

  /** Whether no basket can be better than the last one found. */
  boolean proven() {
    return proven;
  }

  /** Whether the last one found was sought among all, no plastic kept to one shop. */
  boolean whole() {
    return whole;
  }

  /** What is needed, at the least total cost; what no shop has is left out. */
  SortedMap<Plastic, List<Purchase>> cheapest(Map<Plastic, Integer> need) {
    return cheapest(need, true);
  }

  private SortedMap<Plastic, List<Purchase>> cheapest(
      Map<Plastic, Integer> need, boolean thorough) {
    List<Name> shops = shops(need.keySet());
    List<ParcelSearch.Terms> terms = shops.stream().map(this::terms).toList();
    long postage = terms.stream().mapToLong(ParcelSearch.Terms::postage).sum();
    Bundles bundles = new Bundles(shops, thorough);
    List<List<Bundle>> plastics = new ArrayList<>();
    new TreeMap<>(need)
        .forEach(
            (plastic, pieces) -> {
              List<Bundle> own = bundles.covering(market.offers(plastic), pieces, postage);
              if (!own.isEmpty()) {
                plastics.add(own);
              }
            });
    ParcelSearch search = new ParcelSearch(terms, plastics, Long.MAX_VALUE, 1, CENTS_STEP);
    return best(search, bundles);
  }

  /**
   * What is worth most within a budget for goods and postage; of what is wanted at least a pack.
   */
  SortedMap<Plastic, List<Purchase>> within(Money budget, Map<Plastic, Gain> gains) {
    List<Name> shops = shops(gains.keySet());
    Bundles bundles = new Bundles(shops, false);
    List<List<Bundle>> plastics = new ArrayList<>();
    new TreeMap<>(gains)
        .forEach(
            (plastic, gain) -> {
              List<Offer> offers = market.offers(plastic);
              List<Bundle> own = bundles.within(offers, gain.most(), budget.cents(), gain.worth());
              plastics.add(
                  gain.wanted() ? own.stream().filter(bundle -> bundle.cost() > 0).toList() : own);
            });
    List<ParcelSearch.Terms> terms = shops.stream().map(this::terms).toList();
    SortedMap<Plastic, List<Purchase>> bought =
        best(new ParcelSearch(terms, plastics, budget.cents(), 0, TAKES_STEP), bundles);
    return asCheapAsCanBe(bought);
  }

  /** At least the same pieces for the least money: a budget need not be spent for nothing. */
  private SortedMap<Plastic, List<Purchase>> asCheapAsCanBe(
      SortedMap<Plastic, List<Purchase>> bought) {
    boolean mostWorth = proven;
    boolean ofAll = whole;
    SortedMap<Plastic, Integer> pieces = new TreeMap<>();
    bought.forEach(
        (plastic, own) ->
            pieces.put(plastic, own.stream().mapToInt(p -> p.pieces().count()).sum()));
    SortedMap<Plastic, List<Purchase>> cheaper = cheapest(pieces, false);
    proven = mostWorth;
    whole = ofAll;
    return total(cheaper).compareTo(total(bought)) < 0 ? cheaper : bought;
  }

  private List<Name> shops(Set<Plastic> plastics) {
    SortedSet<Name> shops = new TreeSet<>();
    plastics.forEach(p -> market.offers(p).forEach(offer -> shops.add(offer.shop())));
    return List.copyOf(shops);
  }

  private ParcelSearch.Terms terms(Name shop) {
    long postage = market.postage(shop, Money.zero(market.currency())).cents();
    return new ParcelSearch.Terms(
        postage, market.freeFrom(shop).map(Money::cents).orElse(Long.MAX_VALUE));
  }

  private SortedMap<Plastic, List<Purchase>> best(ParcelSearch search, Bundles bundles) {
    proven = search.proven();
    whole = bundles.whole();
    SortedMap<Plastic, List<Purchase>> bought = new TreeMap<>();
    for (Bundle bundle : search.best()) {
      if (!bundle.purchases().isEmpty()) {
        bought.put(bundle.purchases().get(0).offer().plastic(), bundle.purchases());
      }
    }
    return bought;
  }

  /** What is paid in all, postage counted. */
  Money total(SortedMap<Plastic, List<Purchase>> bought) {
    return orders(bought).stream()
        .map(ShopOrder::total)
        .reduce(Money.zero(market.currency()), Money::plus);
  }

  /** What each shop is paid, by name. */
  List<ShopOrder> orders(SortedMap<Plastic, List<Purchase>> bought) {
    SortedMap<Name, Money> goods = new TreeMap<>();
    bought.values().stream()
        .flatMap(Collection::stream)
        .forEach(p -> goods.merge(p.offer().shop(), p.lineTotal(), Money::plus));
    return goods.entrySet().stream()
        .map(
            shop ->
                new ShopOrder(
                    shop.getKey(), shop.getValue(), market.postage(shop.getKey(), shop.getValue())))
        .toList();
  }
}
