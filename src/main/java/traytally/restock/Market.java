package traytally.restock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Offer;
import traytally.ledger.Setting;
import traytally.ledger.Shop;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/** What can be bought where, in the angler's currency. */
final class Market {
  private record Key(Name shop, Plastic plastic, int packSize) {}

  private final Currency currency;
  private final Map<Name, Shop> shops = new TreeMap<>();
  private final Map<Plastic, List<Offer>> offers = new HashMap<>();
  private final Map<Plastic, SortedSet<Name>> soldOut = new HashMap<>();
  private final SortedSet<Name> foreign = new TreeSet<>();

  private Market(Currency currency) {
    this.currency = currency;
  }

  /**
   * The last offers the book knows.
   *
   * @param only the only shops to look at; empty for all
   */
  static Market of(Book book, Set<Name> only) {
    Map<Key, Offer> last = new LinkedHashMap<>();
    for (Fact.Offered offered : book.facts(Fact.Offered.class)) {
      Offer offer = offered.offer();
      if (only.isEmpty() || only.contains(offer.shop())) {
        last.put(new Key(offer.shop(), offer.plastic(), offer.packSize()), offer);
      }
    }
    Market market = new Market(book.settings().currency());
    book.facts(Fact.Traded.class).forEach(t -> market.shops.put(t.shop().name(), t.shop()));
    last.values().stream().sorted().forEach(market::add);
    return market;
  }

  private void add(Offer offer) {
    if (!offer.packPrice().currency().equals(currency)) {
      foreign.add(offer.shop());
    } else if (offer.inStock()) {
      offers.computeIfAbsent(offer.plastic(), p -> new ArrayList<>()).add(offer);
    } else {
      soldOut.computeIfAbsent(offer.plastic(), p -> new TreeSet<>()).add(offer.shop());
    }
  }

  Currency currency() {
    return currency;
  }

  /** What is in stock of {@code plastic}, by shop and pack size. */
  List<Offer> offers(Plastic plastic) {
    return offers.getOrDefault(plastic, List.of());
  }

  /** Everything in stock somewhere. */
  SortedSet<Plastic> plastics() {
    return new TreeSet<>(offers.keySet());
  }

  /** Goods from which the shop's postage is free, where it says so in the angler's currency. */
  Optional<Money> freeFrom(Name shop) {
    return Optional.ofNullable(shops.get(shop))
        .flatMap(Shop::freePostageOver)
        .filter(over -> over.currency().equals(currency));
  }

  /** The shops that list {@code plastic} but have run out of it. */
  SortedSet<Name> soldOut(Plastic plastic) {
    return soldOut.getOrDefault(plastic, new TreeSet<>());
  }

  /** The shops with prices in another currency, which are left out. */
  SortedSet<Name> foreign() {
    return foreign;
  }

  /** The postage of goods worth {@code goods}; none where the shop states none. */
  Money postage(Name shop, Money goods) {
    Shop terms = shops.get(shop);
    if (terms == null || !statesPostage(shop)) {
      return Money.zero(currency);
    }
    boolean free = freeFrom(shop).filter(over -> goods.compareTo(over) >= 0).isPresent();
    return free ? Money.zero(currency) : terms.postage().orElseThrow();
  }

  /** Whether the shop states a postage in the angler's currency. */
  boolean statesPostage(Name shop) {
    Shop terms = shops.get(shop);
    return terms != null
        && terms.postage().filter(postage -> postage.currency().equals(currency)).isPresent();
  }

  /**
   * Days from order to tray: the slowest shop's that has anything in stock, for the order may go to
   * it; the angler's setting where a shop does not say or there is none.
   */
  int deliveryDays(Book book) {
    int usual = book.settings().days(Setting.DELIVERY_DAYS);
    return offers.values().stream()
        .flatMap(List::stream)
        .map(Offer::shop)
        .distinct()
        .map(shop -> shops.containsKey(shop) ? shops.get(shop).deliveryDays().orElse(usual) : usual)
        .max(Comparator.naturalOrder())
        .orElse(usual);
  }
}
