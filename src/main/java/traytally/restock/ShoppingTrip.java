package traytally.restock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import traytally.ledger.Book;
import traytally.ledger.ClosedWaters;
import traytally.ledger.Offer;
import traytally.performance.Standing;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/** Works a shopping list out: what is low, what pieces are worth, where they cost least. */
final class ShoppingTrip {
  /** Rounds for needs to settle, as what is bought leaves the other trays fewer hours. */
  private static final int MOST_ROUNDS = 8;

  /** Takes a pack must save where the angler names no worth (method, section 3). */
  private static final double TAKES_A_PACK = 1;

  private final Book book;
  private final LocalDate asOf;
  private final Asked asked;
  private final Market market;
  private final Outlook outlook;
  private final LowRule rule;
  private final Basket basket;
  private final SortedMap<Plastic, Prospect> prospects; // what never was in the box included
  private final Map<Plastic, Basket.Gain> gains = new TreeMap<>();
  private final Set<Plastic> untried;
  private final OptionalDouble goingRate;

  ShoppingTrip(Book book, LocalDate asOf, Asked asked) {
    this.book = book;
    this.asOf = asOf;
    this.asked = asked;
    this.rule = LowRule.of(book.settings());
    this.market = Market.of(book, asked.shops());
    this.basket = new Basket(market);
    this.outlook = Outlook.of(book, asOf, asked, market);
    this.prospects = new TreeMap<>(outlook.prospects());
    prospects.putAll(outlook.newcomers());
    Worth worth = new Worth(outlook.performance(), prospects.values());
    this.untried = untried(worth);
    this.goingRate =
        asked.budget().isPresent() || asked.worth().isPresent()
            ? asked.worth()
            : GoingRate.of(book, asOf, prospects, worth, market);
    for (Prospect prospect : prospects.values()) {
      if (!market.offers(prospect.plastic()).isEmpty()) {
        boolean wanted = untried.contains(prospect.plastic());
        gains.put(prospect.plastic(), worth.gain(prospect, wanted));
      }
    }
  }

  /** Of the colours on sale that were never fished nor are in the box, those that promise most. */
  private Set<Plastic> untried(Worth worth) {
    Set<Name> known = new HashSet<>();
    for (Prospect prospect : prospects.values()) {
      if (prospect.pieces().count() > 0 || prospect.trust().evidence().days() > 0) {
        known.add(prospect.plastic().colour());
      }
    }
    List<Plastic> promising =
        prospects.keySet().stream()
            .filter(plastic -> !known.contains(plastic.colour()))
            .filter(plastic -> !market.offers(plastic).isEmpty())
            .sorted(Comparator.comparingDouble((Plastic plastic) -> -worth.edge(plastic)))
            .toList();
    Map<Name, Plastic> one = new TreeMap<>();
    for (Plastic plastic : promising) {
      if (one.size() < asked.untried()) {
        one.putIfAbsent(plastic.colour(), plastic);
      }
    }
    return new HashSet<>(one.values());
  }

  ShoppingList list() {
    List<Prospect> low = outlook.prospects().values().stream().filter(rule::isLow).toList();
    SortedMap<Plastic, List<Purchase>> bought =
        asked.budget().isPresent() ? basket.within(asked.budget().get(), gains) : buy();
    boolean proven = basket.proven();
    boolean whole = basket.whole();
    Map<Plastic, Use> after = outlook.after(pieces(bought));
    List<ShopOrder> orders = basket.orders(bought);
    Reasons reasons = new Reasons(outlook, market, Market.of(book, Set.of()), asOf, asked, untried);
    List<String> notes = reasons.notes(book, orders, low.size());
    leftOut(low, bought, after).ifPresent(notes::add);
    double saved =
        bought.entrySet().stream().mapToDouble(e -> saved(e.getKey(), pieces(e.getValue()))).sum();
    if (asked.budget().isPresent() && !bought.isEmpty() && saved < 1) {
      notes.add(
          "All of it saves less than one take over these trips: the money may be better kept.");
    }
    notes.addAll(ClosedWaters.of(book).notes(outlook.horizon().trips()));
    if (outlook.prospects().values().stream()
        .noneMatch(p -> p.kept() || p.standing() == Standing.TRUSTED)) {
      notes.add(
          "Nothing is trusted yet: trust takes fish on several days of your log. Mark what you will"
              + " not be without as Kept in your list.");
    }
    if (asked.worth().isEmpty() && goingRate.isPresent()) {
      notes.add(Reasons.goingRate(goingRate.getAsDouble(), market.currency()));
    }
    if (!proven) {
      notes.add("There were too many ways to buy to try them all: a better basket may exist.");
    }
    if (!whole) {
      notes.add(
          "Plastics that could be bought in very many ways were kept to one shop each: split over"
              + " shops they might cost a little less.");
    }
    return new ShoppingList(
        asOf,
        outlook,
        market.currency(),
        asked.shops(),
        asked.budget(),
        lines(low, bought, after, reasons),
        orders,
        notes);
  }

  private List<ShoppingLine> lines(
      List<Prospect> low,
      SortedMap<Plastic, List<Purchase>> bought,
      Map<Plastic, Use> after,
      Reasons reasons) {
    Set<Plastic> isLow = low.stream().map(Prospect::plastic).collect(Collectors.toSet());
    StandIns standIns = new StandIns(book, outlook.prospects().values(), rule);
    List<ShoppingLine> lines = new ArrayList<>();
    for (Prospect prospect : prospects.values()) {
      Plastic plastic = prospect.plastic();
      List<Purchase> purchases = bought.getOrDefault(plastic, List.of());
      int more = pieces(purchases);
      double saved = saved(plastic, more);
      Use use = after.getOrDefault(plastic, prospect.asItIs());
      for (Optional<Purchase> purchase : each(purchases, isLow.contains(plastic))) {
        double part = purchase.map(p -> (double) p.pieces().count() / more).orElse(0.0);
        lines.add(
            new ShoppingLine(
                prospect,
                purchase,
                use,
                use.distribution().atLeast(prospect.pieces().count() + more),
                saved * part,
                isLow.contains(plastic),
                !market.offers(plastic).isEmpty(),
                reasons.of(prospect, isLow.contains(plastic), purchase, saved),
                standIns.of(plastic)));
      }
    }
    lines.sort(ShoppingLine.ORDER);
    return lines;
  }

  /** What a plastic has lines for: its purchases, or where none is made that it is low. */
  private static List<Optional<Purchase>> each(List<Purchase> purchases, boolean low) {
    return purchases.isEmpty() && low
        ? List.of(Optional.empty())
        : purchases.stream().map(Optional::of).toList();
  }

  private double saved(Plastic plastic, int pieces) {
    return Optional.ofNullable(gains.get(plastic))
        .map(gain -> gain.worth().applyAsDouble(pieces))
        .orElse(0.0);
  }

  /**
   * Buys the fewest packs that bring every short plastic to the risk accepted. Trays filled leave
   * the others fewer hours, so needs are worked out again with what was bought in the tray until
   * they stand still; at the end they only rise, so that every bound is kept. Then come the packs
   * that are worth their price for the takes they save.
   */
  private SortedMap<Plastic, List<Purchase>> buy() {
    List<Prospect> small = outlook.prospects().values().stream().filter(rule::isShort).toList();
    SortedMap<Plastic, Integer> need = needs(small, Map.of());
    SortedMap<Plastic, List<Purchase>> bought = basket.cheapest(need);
    for (int round = 0; ; round++) {
      SortedMap<Plastic, Integer> next = needs(small, pieces(bought));
      if (round >= MOST_ROUNDS) {
        need.forEach((plastic, pieces) -> next.merge(plastic, pieces, Math::max));
      }
      if (next.equals(need)) {
        break;
      }
      need = next;
      bought = basket.cheapest(need);
    }
    SortedMap<Plastic, Integer> more = new TreeMap<>(need);
    SortedMap<Plastic, Integer> had = new TreeMap<>(pieces(bought));
    gains.forEach(
        (plastic, gain) -> {
          int from = Math.max(had.getOrDefault(plastic, 0), gain.wanted() ? 1 : 0);
          int to = worthBuying(plastic, gain, from);
          if (to > had.getOrDefault(plastic, 0)) {
            more.put(plastic, to);
          }
        });
    return more.equals(need) ? bought : basket.cheapest(more);
  }

  /** Pieces up to which each further pack is worth its price. */
  private int worthBuying(Plastic plastic, Basket.Gain gain, int from) {
    int pieces = from;
    while (pieces < gain.most()) {
      int now = pieces;
      Optional<Offer> best =
          market.offers(plastic).stream()
              .filter(offer -> isWorthIt(offer, gain, now))
              .max(Comparator.comparingDouble(offer -> added(offer, gain, now)));
      if (best.isEmpty()) {
        return pieces;
      }
      pieces += best.get().packSize();
    }
    return pieces;
  }

  private static double added(Offer offer, Basket.Gain gain, int pieces) {
    double saved =
        gain.worth().applyAsDouble(pieces + offer.packSize()) - gain.worth().applyAsDouble(pieces);
    return saved / offer.packPrice().cents();
  }

  private boolean isWorthIt(Offer offer, Basket.Gain gain, int pieces) {
    double cents = offer.packPrice().cents();
    double wanted = goingRate.isPresent() ? goingRate.getAsDouble() * cents / 100 : TAKES_A_PACK;
    return added(offer, gain, pieces) * cents >= wanted;
  }

  /** The pieces each plastic lacks: fewest n with P(U ≥ x + n) at most the risk. */
  private SortedMap<Plastic, Integer> needs(List<Prospect> some, Map<Plastic, Integer> bought) {
    Map<Plastic, Use> after = outlook.after(bought);
    SortedMap<Plastic, Integer> needs = new TreeMap<>();
    for (Prospect prospect : some) {
      needs.put(prospect.plastic(), Math.max(1, lacking(prospect, after)));
    }
    return needs;
  }

  /** Pieces more than are in the tray that bring it to the risk accepted; may be below 0. */
  private int lacking(Prospect prospect, Map<Plastic, Use> after) {
    Use use = after.getOrDefault(prospect.plastic(), prospect.asItIs());
    int enough = use.distribution().quantile(1 - rule.risk(prospect)) + 1;
    return enough - prospect.pieces().count();
  }

  /** What a budget left short, and what it would cost to cover it. */
  private Optional<String> leftOut(
      List<Prospect> low, SortedMap<Plastic, List<Purchase>> bought, Map<Plastic, Use> after) {
    if (asked.budget().isEmpty()) {
      return Optional.empty();
    }
    Map<Plastic, Integer> had = pieces(bought);
    SortedMap<Plastic, Integer> all = new TreeMap<>(had);
    List<String> missed = new ArrayList<>();
    double risk = 0;
    for (Prospect prospect : low) {
      Plastic plastic = prospect.plastic();
      int lacking = lacking(prospect, after);
      if (lacking > had.getOrDefault(plastic, 0) && !market.offers(plastic).isEmpty()) {
        all.put(plastic, lacking);
        missed.add(plastic.toString());
        int pieces = prospect.pieces().count() + had.getOrDefault(plastic, 0);
        Use use = after.getOrDefault(plastic, prospect.asItIs());
        risk = Math.max(risk, use.distribution().atLeast(pieces));
      }
    }
    if (missed.isEmpty()) {
      return Optional.empty();
    }
    Money more = basket.total(basket.cheapest(all)).minus(basket.total(bought));
    return Optional.of(Reasons.leftOut(more, missed, risk));
  }

  private static int pieces(List<Purchase> purchases) {
    return purchases.stream().mapToInt(purchase -> purchase.pieces().count()).sum();
  }

  private static Map<Plastic, Integer> pieces(SortedMap<Plastic, List<Purchase>> bought) {
    Map<Plastic, Integer> pieces = new TreeMap<>();
    bought.forEach((plastic, purchases) -> pieces.put(plastic, pieces(purchases)));
    return pieces;
  }
}
