package traytally.restock;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import traytally.ledger.Book;
import traytally.ledger.Palette;
import traytally.plastic.Look;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/**
 * What to tie on instead of a plastic that is gone: of pieces on hand, rather not one that is low.
 */
public final class StandIns {
  private final List<Prospect> onHand;
  private final LowRule rule;
  private final Palette palette;

  /** Stand-ins from the trays that have pieces. */
  public StandIns(Book book, Collection<Prospect> prospects, LowRule rule) {
    this.onHand = prospects.stream().filter(p -> p.pieces().count() > 0).toList();
    this.rule = rule;
    this.palette = Palette.of(book);
  }

  /**
   * The same colour in another body or length; else the colour that looks nearest in the same body,
   * or where the body is gone too, in any: by the swatches given or those its words stand for.
   */
  public Optional<Plastic> of(Plastic wanted) {
    List<Prospect> others =
        onHand.stream().filter(p -> !p.plastic().equals(wanted)).sorted(safest()).toList();
    Optional<Prospect> sameColour =
        others.stream()
            .filter(p -> p.plastic().colour().equals(wanted.colour()))
            .min(
                safest()
                    .thenComparing(
                        Comparator.comparing((Prospect p) -> p.pieces().count()).reversed())
                    .thenComparing(p -> !p.plastic().body().equals(wanted.body()))
                    .thenComparing(p -> Math.abs(p.plastic().lengthMm() - wanted.lengthMm())));
    List<Prospect> sameBody =
        others.stream().filter(p -> p.plastic().body().equals(wanted.body())).toList();
    return sameColour
        .or(() -> nearest(wanted.colour(), sameBody))
        .or(() -> nearest(wanted.colour(), others))
        .map(Prospect::plastic);
  }

  private Comparator<Prospect> safest() {
    return Comparator.comparing(rule::isLow);
  }

  private Optional<Prospect> nearest(Name colour, List<Prospect> some) {
    return palette
        .look(colour)
        .flatMap(
            look ->
                some.stream()
                    .filter(p -> palette.look(p.plastic().colour()).isPresent())
                    .min(
                        safest()
                            .thenComparingDouble(p -> difference(look, p))
                            .thenComparing(p -> -p.pieces().count())));
  }

  private double difference(Look look, Prospect other) {
    return palette
        .look(other.plastic().colour())
        .map(look::difference)
        .orElse(Double.POSITIVE_INFINITY);
  }
}
