package traytally.restock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Setting;
import traytally.performance.Standing;
import traytally.plastic.Money;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * Why a line is on the list, as an angler would say it.
 *
 * @param market the shops asked for
 * @param everywhere all shops
 * @param untried the plastics that were added to be tried
 */
record Reasons(
    Outlook outlook,
    Market market,
    Market everywhere,
    LocalDate asOf,
    Asked asked,
    Set<Plastic> untried) {
  /** Names in one sentence at most. */
  private static final int MOST_NAMES = 3;

  Reasons {
    untried = Set.copyOf(untried);
  }

  String of(Prospect prospect, boolean low, Optional<Purchase> purchase, double saved) {
    String why =
        Words.left(prospect.pieces().count())
            + "; "
            + Words.about(prospect.expectedUse())
            + " by "
            + Words.day(outlook.horizon().to(), asOf)
            + (outlook.useAssumed() ? " (assumed)" : "")
            + "; "
            + standing(prospect);
    if (untried.contains(prospect.plastic())) {
      return why + "; to try";
    }
    if (purchase.isPresent()) {
      return low ? why : why + String.format(Locale.ROOT, "; saves about %.1f takes", saved);
    }
    return why + "; " + notBought(prospect.plastic());
  }

  private static String standing(Prospect prospect) {
    return prospect.kept()
        ? "kept" + (prospect.standing() == Standing.TRUSTED ? ", trusted" : "")
        : prospect.standing().word();
  }

  private String notBought(Plastic plastic) {
    if (!market.offers(plastic).isEmpty()) {
      return "left out: the budget saves more takes elsewhere";
    }
    SortedSet<Name> soldOut = market.soldOut(plastic);
    if (!soldOut.isEmpty()) {
      return "sold out at " + String.join(", ", soldOut.stream().map(Name::text).toList());
    }
    List<String> others =
        everywhere.offers(plastic).stream()
            .map(offer -> offer.shop().text())
            .distinct()
            .sorted()
            .toList();
    return others.isEmpty()
        ? "no shop on your price lists has it"
        : "not there; to be had at " + String.join(", ", others);
  }

  /** What the angler should know about how the list was made. */
  List<String> notes(Book book, List<ShopOrder> orders, int low) {
    List<String> notes = new ArrayList<>();
    if (low == 0) {
      notes.add("Nothing that you trust, or that is promising, is running low.");
    }
    notes.add("It lasts for " + outlook.horizon().words() + ".");
    if (outlook.useAssumed()) {
      notes.add(
          "No trip is logged yet: use is assumed, "
              + book.settings().get(Setting.ASSUMED_USE_PER_HOUR)
              + " pieces a rod-hour.");
    }
    List<Fact.Planned> plan = book.facts(Fact.Planned.class);
    if (!plan.isEmpty() && plan.stream().allMatch(p -> p.trip().date().isBefore(asOf))) {
      notes.add("Every trip of your plan is past: import a plan of trips to come.");
    }
    for (ShopOrder order : orders) {
      if (!market.statesPostage(order.shop())) {
        notes.add(order.shop() + " states no postage: taken as none.");
      }
    }
    market
        .foreign()
        .forEach(
            shop -> notes.add(shop + " has prices not in " + market.currency() + ": left out."));
    if (asked.budget().filter(budget -> orders.isEmpty()).isPresent()) {
      notes.add("Nothing that " + asked.budget().get() + " can buy would save a take.");
    }
    return notes;
  }

  /** From when on a pack is bought for itself. */
  static String goingRate(double takes, Currency currency) {
    return String.format(
        Locale.ROOT,
        "A pack is also bought where it saves %.2f takes for each %s or more: the middle of what you"
            + " have bought before. --worth sets another.",
        takes,
        currency);
  }

  /** What {@code more} money would cover, and what is risked without it. */
  static String leftOut(Money more, List<String> missed, double risk) {
    List<String> named = missed.subList(0, Math.min(MOST_NAMES, missed.size()));
    String rest =
        missed.size() > MOST_NAMES ? " and " + (missed.size() - MOST_NAMES) + " more" : "";
    return String.format(
        Locale.ROOT,
        "%s more would also cover %s%s; without it a tray there is empty by then with a chance of up"
            + " to %.0f %%.",
        more,
        String.join(", ", named),
        rest,
        100 * risk);
  }
}
