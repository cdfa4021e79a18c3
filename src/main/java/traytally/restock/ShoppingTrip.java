package traytally.restock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import traytally.ledger.Book;
import traytally.ledger.Setting;
import traytally.performance.Standing;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/** Works a shopping list out: what is low, how many pieces it needs, where they cost least. */
final class ShoppingTrip {
  /** Rounds for needs to settle, as what is bought leaves the other trays fewer hours. */
  private static final int MOST_ROUNDS = 8;

  private final Book book;
  private final LocalDate asOf;
  private final Market market;
  private final Outlook outlook;
  private final LowRule rule;

  ShoppingTrip(Book book, LocalDate asOf, Asked asked) {
    this.book = book;
    this.asOf = asOf;
    this.rule = LowRule.of(book.settings());
    this.market = Market.of(book, asked.shops());
    this.outlook = Outlook.of(book, asOf, asked, market.deliveryDays(book));
  }

  ShoppingList list() {
    List<Prospect> low = outlook.prospects().values().stream().filter(rule::isLow).toList();
    SortedMap<Plastic, Purchase> bought = buy(low);
    Map<Plastic, Use> after = outlook.after(pieces(bought));
    StandIns standIns = new StandIns(book, outlook.prospects().values());
    List<ShoppingLine> lines = new ArrayList<>();
    for (Prospect prospect : low) {
      Optional<Purchase> purchase = Optional.ofNullable(bought.get(prospect.plastic()));
      Use use = after.getOrDefault(prospect.plastic(), prospect.asItIs());
      int then = prospect.pieces().count() + purchase.map(p -> p.pieces().count()).orElse(0);
      lines.add(
          new ShoppingLine(
              prospect,
              purchase,
              use,
              use.distribution().atLeast(then),
              true,
              reason(prospect, purchase),
              standIns.of(prospect.plastic())));
    }
    lines.sort(
        Comparator.comparing((ShoppingLine line) -> line.purchase().isEmpty())
            .thenComparing(l -> l.purchase().map(p -> p.offer().shop()).orElse(Name.BLANK))
            .thenComparing(ShoppingLine::plastic));
    return new ShoppingList(
        asOf,
        outlook.horizon(),
        outlook.useAssumed(),
        market.currency(),
        lines,
        new Basket(market, Map.of()).orders(bought.values()),
        notes(low, bought));
  }

  /**
   * Buys the fewest packs that bring every low plastic to the risk accepted. Trays filled leave the
   * others fewer hours, so needs are worked out again with what was bought in the tray until they
   * stand still; at the end they only rise, so that every bound is kept.
   */
  private SortedMap<Plastic, Purchase> buy(List<Prospect> low) {
    SortedMap<Plastic, Integer> need = needs(low, Map.of());
    SortedMap<Plastic, Purchase> basket = new Basket(market, need).cheapest();
    for (int round = 0; ; round++) {
      SortedMap<Plastic, Integer> next = needs(low, pieces(basket));
      if (round >= MOST_ROUNDS) {
        need.forEach((plastic, pieces) -> next.merge(plastic, pieces, Math::max));
      }
      if (next.equals(need)) {
        return basket;
      }
      need = next;
      basket = new Basket(market, need).cheapest();
    }
  }

  /** The pieces each low plastic lacks: fewest n with P(U ≥ x + n) at most the risk. */
  private SortedMap<Plastic, Integer> needs(List<Prospect> low, Map<Plastic, Integer> bought) {
    Map<Plastic, Use> after = outlook.after(bought);
    SortedMap<Plastic, Integer> needs = new TreeMap<>();
    for (Prospect prospect : low) {
      Use use = after.getOrDefault(prospect.plastic(), prospect.asItIs());
      int enough = use.distribution().quantile(1 - rule.risk(prospect)) + 1;
      needs.put(prospect.plastic(), Math.max(1, enough - prospect.pieces().count()));
    }
    return needs;
  }

  private static Map<Plastic, Integer> pieces(SortedMap<Plastic, Purchase> bought) {
    Map<Plastic, Integer> pieces = new TreeMap<>();
    bought.forEach((plastic, purchase) -> pieces.put(plastic, purchase.pieces().count()));
    return pieces;
  }

  private String reason(Prospect prospect, Optional<Purchase> purchase) {
    String standing =
        prospect.kept()
            ? "kept" + (prospect.standing() == Standing.TRUSTED ? ", trusted" : "")
            : prospect.standing().word();
    String why =
        Words.left(prospect.pieces().count())
            + "; "
            + Words.about(prospect.expectedUse())
            + " by "
            + Words.day(outlook.horizon().to(), asOf)
            + (outlook.useAssumed() ? " (assumed)" : "")
            + "; "
            + standing;
    return purchase.isPresent() ? why : why + "; " + notSold(prospect.plastic());
  }

  private String notSold(Plastic plastic) {
    SortedSet<Name> soldOut = market.soldOut(plastic);
    if (!soldOut.isEmpty()) {
      return "sold out at " + String.join(", ", soldOut.stream().map(Name::text).toList());
    }
    return "no shop on your price lists has it";
  }

  private List<String> notes(List<Prospect> low, SortedMap<Plastic, Purchase> bought) {
    List<String> notes = new ArrayList<>();
    notes.add("It lasts for " + outlook.horizon().words() + ".");
    if (outlook.useAssumed()) {
      notes.add(
          "No trip is logged yet: use is assumed, "
              + book.settings().get(Setting.ASSUMED_USE_PER_HOUR)
              + " pieces a rod-hour.");
    }
    for (ShopOrder order : new Basket(market, Map.of()).orders(bought.values())) {
      if (!market.statesPostage(order.shop())) {
        notes.add(order.shop() + " states no postage: taken as none.");
      }
    }
    market
        .foreign()
        .forEach(
            shop -> notes.add(shop + " has prices not in " + market.currency() + ": left out."));
    List<Name> leftOut = new Basket(market, needs(low, Map.of())).leftOut();
    if (!leftOut.isEmpty()) {
      notes.add(
          "More than "
              + Basket.MOST_SHOPS
              + " shops have what is low; left out: "
              + String.join(", ", leftOut.stream().map(Name::text).toList())
              + ".");
    }
    return Collections.unmodifiableList(notes);
  }
}
