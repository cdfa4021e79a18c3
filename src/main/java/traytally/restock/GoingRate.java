package traytally.restock;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import traytally.ledger.Batch;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Recorded;
import traytally.plastic.Money;
import traytally.plastic.Plastic;

/**
 * What the angler has been content to pay for: the takes that past purchases would save for each
 * unit of money if they were made again, from what lay in the tray then, for the trips now ahead.
 */
final class GoingRate {
  /** Purchases from which they are a habit (assumption). */
  private static final int FEWEST = 3;

  /** Years back that still say something of today (assumption). */
  private static final int YEARS = 2;

  private GoingRate() {}

  /** The median of the past purchases whose price is known; empty if they are few or saved none. */
  static OptionalDouble of(
      Book book,
      LocalDate asOf,
      SortedMap<Plastic, Prospect> prospects,
      Worth worth,
      Market market) {
    Map<Plastic, Fact.Described> described = book.described();
    double[] rates =
        book.ledger().movements().stream()
            .filter(movement -> movement.what().kind() == MovementKind.BOUGHT)
            .filter(movement -> !movement.what().reverses() && stands(book, movement.batch()))
            .map(Recorded::what)
            .filter(move -> !move.date().isAfter(asOf))
            .filter(move -> move.date().isAfter(asOf.minusYears(YEARS)))
            .map(move -> rate(move, book, prospects, worth, described, market))
            .flatMap(Optional::stream)
            .mapToDouble(rate -> rate)
            .sorted()
            .toArray();
    double median = rates.length < FEWEST ? 0 : rates[rates.length / 2];
    return median > 0 ? OptionalDouble.of(median) : OptionalDouble.empty();
  }

  private static boolean stands(Book book, long batch) {
    return book.batches().stream().filter(b -> b.id() == batch).allMatch(Batch::stands);
  }

  private static Optional<Double> rate(
      Movement move,
      Book book,
      SortedMap<Plastic, Prospect> prospects,
      Worth worth,
      Map<Plastic, Fact.Described> described,
      Market market) {
    Optional<Fact.Described> told = Optional.ofNullable(described.get(move.plastic()));
    Optional<Money> price =
        told.flatMap(Fact.Described::packPrice)
            .filter(money -> money.currency().equals(market.currency()) && money.cents() > 0);
    Optional<Prospect> prospect = Optional.ofNullable(prospects.get(move.plastic()));
    if (price.isEmpty() || told.orElseThrow().packSize().isEmpty() || prospect.isEmpty()) {
      return Optional.empty();
    }
    double packs = (double) move.pieces() / told.get().packSize().getAsInt();
    int had = book.ledger().stock(move.plastic(), move.date()).count() - move.pieces();
    double saved = worth.saved(prospect.get(), Math.max(0, had), move.pieces());
    return Optional.of(saved / (packs * price.get().cents() / 100));
  }
}
