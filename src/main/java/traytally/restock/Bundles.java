package traytally.restock;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.TreeMap;
import java.util.function.IntToDoubleFunction;
import traytally.ledger.Offer;
import traytally.plastic.Name;
import traytally.plastic.Packs;

/**
 * The ways to buy one plastic that could be part of a best basket.
 *
 * <p>At one shop, of all packs that hold the same number of pieces only the cheapest count. Over
 * shops the ways are combined; where that gives more than {@link #MOST_COMBINED}, a plastic's packs
 * all come from one shop.
 */
final class Bundles {
  /** Ways to split a plastic over shops from which on it is not split (a matter of time). */
  static final int MOST_COMBINED = 256;

  /** Packs of one plastic from one shop, at most. */
  private static final int MOST_PACKS = 200;

  /** Cheapest packs of one shop for so many pieces. */
  private record Lot(long cents, int pieces, List<Purchase> purchases) {}

  private final List<Name> shops;
  private final boolean thorough;
  private boolean whole = true;

  /**
   * Ways in the goods of {@code shops}.
   *
   * @param thorough whether ways too dear to pay are left out before they are counted; else all are
   *     counted, which lets fewer plastics be split, and the search be sooner done
   */
  Bundles(List<Name> shops, boolean thorough) {
    this.shops = shops;
    this.thorough = thorough;
  }

  /**
   * The ways to buy at most {@code mostCents} of goods, that of buying none among them.
   *
   * @param most pieces beyond which more are worth nothing
   * @param worth of so many pieces more
   */
  List<Bundle> within(List<Offer> offers, int most, long mostCents, IntToDoubleFunction worth) {
    List<Bundle> bundles = new ArrayList<>();
    for (List<Lot> way : combined(lots(offers, most, mostCents), mostCents)) {
      int pieces = way.stream().mapToInt(Lot::pieces).sum();
      bundles.add(bundle(way, worth.applyAsDouble(pieces)));
    }
    return bundles;
  }

  /**
   * The ways to buy at least {@code least} pieces, valued at minus their cents.
   *
   * @param spare cents above the cheapest way from which on no way can pay: all shops' postage
   */
  List<Bundle> covering(List<Offer> offers, int least, long spare) {
    List<Bundle> bundles = new ArrayList<>();
    long cheapest = Long.MAX_VALUE;
    for (Offer offer : offers) {
      cheapest = Math.min(cheapest, Purchase.covering(offer, least).lineTotal().cents());
    }
    if (cheapest == Long.MAX_VALUE) {
      return bundles;
    }
    long mostCents = cheapest + spare;
    for (List<Lot> way : combined(lots(offers, Integer.MAX_VALUE, mostCents), mostCents)) {
      if (way.stream().mapToInt(Lot::pieces).sum() >= least) {
        bundles.add(bundle(way, (double) -way.stream().mapToLong(Lot::cents).sum()));
      }
    }
    return bundles;
  }

  private Bundle bundle(List<Lot> way, double value) {
    List<Purchase> purchases = new ArrayList<>();
    long[] goods = new long[shops.size()];
    for (int s = 0; s < way.size(); s++) {
      purchases.addAll(way.get(s).purchases());
      goods[s] = way.get(s).cents();
    }
    return new Bundle(purchases, value, goods);
  }

  /** By shop, the lots that no other lot of the shop beats in pieces at no more cents. */
  private List<List<Lot>> lots(List<Offer> offers, int most, long mostCents) {
    List<List<Lot>> lots = new ArrayList<>();
    for (Name shop : shops) {
      List<Offer> own = offers.stream().filter(offer -> offer.shop().equals(shop)).toList();
      lots.add(lotsOf(own, most, mostCents));
    }
    return lots;
  }

  /** Every mix of packs, size by size; of equal cents the one with most pieces stays. */
  private static List<Lot> lotsOf(List<Offer> offers, int most, long mostCents) {
    TreeMap<Long, Lot> byCents = new TreeMap<>();
    byCents.put(0L, new Lot(0, 0, List.of()));
    for (Offer offer : offers) {
      TreeMap<Long, Lot> more = new TreeMap<>(byCents);
      for (Lot lot : byCents.values()) {
        int pieces = lot.pieces();
        long cents = lot.cents();
        for (int packs = 1; packs <= MOST_PACKS && pieces < most; packs++) {
          pieces += offer.packSize();
          cents += offer.packPrice().cents();
          if (cents > mostCents) {
            break;
          }
          List<Purchase> purchases = new ArrayList<>(lot.purchases());
          purchases.add(new Purchase(offer, new Packs(packs)));
          more.merge(cents, new Lot(cents, pieces, purchases), Bundles::fuller);
        }
      }
      byCents = more;
    }
    return List.copyOf(byCents.values());
  }

  private static Lot fuller(Lot a, Lot b) {
    return b.pieces() > a.pieces() ? b : a;
  }

  /** The ways to take a lot at each shop for at most {@code mostCents}. */
  private List<List<Lot>> combined(List<List<Lot>> lots, long mostCents) {
    double all = lots.stream().mapToDouble(List::size).reduce(1, (a, b) -> a * b);
    if (!thorough && all > MOST_COMBINED) {
      return unsplit(lots);
    }
    List<List<Lot>> combined = List.of(List.of());
    for (List<Lot> own : lots) {
      List<List<Lot>> longer = new ArrayList<>();
      for (List<Lot> way : combined) {
        long left = mostCents - way.stream().mapToLong(Lot::cents).sum();
        for (Lot lot : own) {
          if (lot.cents() <= left) {
            List<Lot> next = new ArrayList<>(way);
            next.add(lot);
            longer.add(next);
          }
        }
        if (longer.size() > MOST_COMBINED) {
          return unsplit(lots);
        }
      }
      combined = longer;
    }
    return combined;
  }

  /** The ways with all packs from one shop. */
  private List<List<Lot>> unsplit(List<List<Lot>> lots) {
    whole = false;
    List<Lot> none = Collections.nCopies(lots.size(), new Lot(0, 0, List.of()));
    List<List<Lot>> unsplit = new ArrayList<>(List.of(none));
    for (int s = 0; s < lots.size(); s++) {
      for (Lot lot : lots.get(s)) {
        if (lot.cents() > 0) {
          List<Lot> way = new ArrayList<>(none);
          way.set(s, lot);
          unsplit.add(way);
        }
      }
    }
    return unsplit;
  }

  /** Whether every way there is was told so far. */
  boolean whole() {
    return whole;
  }
}
