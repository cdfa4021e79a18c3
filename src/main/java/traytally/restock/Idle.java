package traytally.restock;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Offer;
import traytally.plastic.Money;
import traytally.plastic.Pieces;
import traytally.plastic.Plastic;

/**
 * The pieces that will not be used up within some years, nine times in ten: what the tray holds
 * beyond the 90 % bound of its use, no tray emptying meanwhile.
 *
 * @param horizon the years' trips: those planned, then the angler's usual pace
 * @param useAssumed whether there was no log, and use is the setting's
 * @param lines most money first, then most pieces
 */
public record Idle(
    LocalDate asOf, Horizon horizon, boolean useAssumed, Currency currency, List<IdleLine> lines) {
  private static final double DAYS_A_YEAR = 365.25;

  private static final Comparator<IdleLine> ORDER =
      Comparator.comparing((IdleLine line) -> line.money().map(Money::cents).orElse(0L))
          .thenComparing(line -> line.idle().count())
          .reversed()
          .thenComparing(line -> line.prospect().plastic());

  public Idle {
    lines = lines.stream().sorted(ORDER).toList();
  }

  /** What will lie idle of what the book knew at the end of {@code asOf}. */
  public static Idle of(Book book, LocalDate asOf, double years) {
    LocalDate until = asOf.plusDays(Math.round(years * DAYS_A_YEAR));
    Asked asked = new Asked(Optional.of(until), OptionalInt.empty(), Set.of());
    Outlook outlook = Outlook.of(book, asOf, asked, 0);
    Market market = Market.of(book, Set.of());
    Map<Plastic, Fact.Described> described = book.described();
    Takers takers = new Takers(book, outlook.performance().turns());
    List<IdleLine> lines = new ArrayList<>();
    for (Prospect prospect : outlook.prospects().values()) {
      int idle = prospect.pieces().count() - prospect.useP90();
      if (idle > 0 && !outlook.horizon().trips().isEmpty()) {
        Plastic plastic = prospect.plastic();
        Optional<Money> money =
            money(Optional.ofNullable(described.get(plastic)), market, plastic, idle);
        lines.add(new IdleLine(prospect, new Pieces(idle), money, takers.of(plastic.colour())));
      }
    }
    return new Idle(asOf, outlook.horizon(), outlook.useAssumed(), market.currency(), lines);
  }

  /** By the pack's price on the angler's own list; else by the lowest price of a shop. */
  private static Optional<Money> money(
      Optional<Fact.Described> told, Market market, Plastic plastic, int pieces) {
    Optional<Money> paid = told.flatMap(Fact.Described::packPrice);
    OptionalInt size = told.map(Fact.Described::packSize).orElse(OptionalInt.empty());
    OptionalDouble piece =
        paid.isPresent() && size.isPresent() && paid.get().currency().equals(market.currency())
            ? OptionalDouble.of((double) paid.get().cents() / size.getAsInt())
            : market.offers(plastic).stream().mapToDouble(Idle::eachPiece).min();
    return piece.isPresent()
        ? Optional.of(new Money(Math.round(piece.getAsDouble() * pieces), market.currency()))
        : Optional.empty();
  }

  private static double eachPiece(Offer offer) {
    return (double) offer.packPrice().cents() / offer.packSize();
  }

  /** What they cost together, as far as a price is known. */
  public Money money() {
    return lines.stream()
        .flatMap(line -> line.money().stream())
        .reduce(Money.zero(currency), Money::plus);
  }

  /** All of them. */
  public Pieces pieces() {
    return new Pieces(lines.stream().mapToInt(line -> line.idle().count()).sum());
  }
}
