package traytally.restock;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Ledger;
import traytally.ledger.Offer;
import traytally.ledger.Recorded;
import traytally.ledger.Settings;
import traytally.ledger.Shop;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * Invented shops: which plastics each has, in packs of what size, for how much, sent for how much.
 *
 * @param offers by shop and plastic
 * @param shops their terms
 * @param budget what the angler may spend
 */
record SeasonShops(List<Offer> offers, List<Shop> shops, Money budget) {
  private static final Currency EURO = Currency.getInstance("EUR");
  private static final String[] NAMES = {"Quay Tackle", "Chandlery", "North Pier"};
  private static final int[] PACKS = {4, 6, 8, 10};

  static SeasonShops of(List<Plastic> plastics, long seed) {
    Random random = new Random(~seed * 0x9E3779B97F4A7C15L);
    List<Offer> offers = new ArrayList<>();
    List<Shop> shops = new ArrayList<>();
    for (String name : NAMES) {
      long postage = 250L + 50L * random.nextInt(6);
      Optional<Money> free =
          random.nextBoolean()
              ? Optional.of(euro(3000L + 500L * random.nextInt(5)))
              : Optional.empty();
      shops.add(new Shop(Name.of(name), Optional.of(euro(postage)), free, OptionalInt.of(4)));
    }
    for (Plastic plastic : plastics) {
      double piece = 60 + 50 * random.nextDouble();
      for (String name : NAMES) {
        if (random.nextInt(5) < 3) {
          int size = PACKS[random.nextInt(PACKS.length)];
          long cents = Math.round(size * piece * (0.9 + 0.2 * random.nextDouble()) / 5) * 5;
          offers.add(new Offer(Name.of(name), plastic, size, euro(cents), true));
        }
      }
    }
    return new SeasonShops(offers, shops, euro(2000L + 500L * random.nextInt(9)));
  }

  private static Money euro(long cents) {
    return Money.of(BigDecimal.valueOf(cents, 2), EURO);
  }

  Market market() {
    List<Recorded<? extends Fact>> facts = new ArrayList<>();
    offers.forEach(o -> facts.add(new Recorded<>(facts.size(), 1, new Fact.Offered(o))));
    shops.forEach(s -> facts.add(new Recorded<>(facts.size(), 1, new Fact.Traded(s))));
    return Market.of(
        new Book(List.of(), new Ledger(List.of()), facts, Settings.standard(), 1), Set.of());
  }

  /** What these packs cost, postage counted. */
  Money total(List<Purchase> bought) {
    Money total = Money.zero(EURO);
    for (Shop shop : shops) {
      Money goods = Money.zero(EURO);
      for (Purchase purchase : bought) {
        if (purchase.offer().shop().equals(shop.name())) {
          goods = goods.plus(purchase.lineTotal());
        }
      }
      Money reached = goods;
      boolean free =
          shop.freePostageOver().filter(over -> reached.compareTo(over) >= 0).isPresent();
      total = total.plus(goods);
      if (goods.cents() > 0 && !free) {
        total = total.plus(shop.postage().orElseThrow());
      }
    }
    return total;
  }
}
