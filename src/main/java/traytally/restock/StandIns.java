package traytally.restock;

import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.plastic.Colour;
import traytally.plastic.Lab;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/** What to tie on instead of a plastic that is gone. */
final class StandIns {
  private final List<Prospect> onHand;
  private final Map<Name, Lab> looks = new HashMap<>();

  StandIns(Book book, Collection<Prospect> prospects) {
    onHand = prospects.stream().filter(p -> p.pieces().count() > 0).toList();
    for (Fact.Coloured coloured : book.facts(Fact.Coloured.class)) {
      Colour colour = coloured.colour();
      colour.base().ifPresent(base -> looks.put(colour.name(), Lab.of(base)));
    }
  }

  /**
   * The same colour in another body or length, the most pieces first; else the colour that looks
   * nearest in the same body, where the angler gave a swatch of both; of pieces on hand.
   */
  Optional<Plastic> of(Plastic wanted) {
    Optional<Plastic> sameColour =
        onHand.stream()
            .filter(p -> !p.plastic().equals(wanted))
            .filter(p -> p.plastic().colour().equals(wanted.colour()))
            .min(
                Comparator.comparing((Prospect p) -> p.pieces().count())
                    .reversed()
                    .thenComparing(p -> !p.plastic().body().equals(wanted.body()))
                    .thenComparing(p -> Math.abs(p.plastic().lengthMm() - wanted.lengthMm())))
            .map(Prospect::plastic);
    return sameColour.or(() -> nearestColour(wanted));
  }

  private Optional<Plastic> nearestColour(Plastic wanted) {
    return Optional.ofNullable(looks.get(wanted.colour()))
        .flatMap(
            look ->
                onHand.stream()
                    .filter(p -> !p.plastic().equals(wanted))
                    .filter(p -> p.plastic().body().equals(wanted.body()))
                    .filter(p -> looks.containsKey(p.plastic().colour()))
                    .min(
                        Comparator.comparingDouble((Prospect p) -> difference(look, p))
                            .thenComparing(p -> -p.pieces().count()))
                    .map(Prospect::plastic));
  }

  private double difference(Lab look, Prospect other) {
    return Optional.ofNullable(looks.get(other.plastic().colour()))
        .map(look::difference)
        .orElse(Double.POSITIVE_INFINITY);
  }
}
