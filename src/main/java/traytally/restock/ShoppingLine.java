package traytally.restock;

import java.util.Comparator;
import java.util.Optional;
import traytally.performance.Standing;
import traytally.plastic.Name;
import traytally.plastic.Packs;
import traytally.plastic.Plastic;

/**
 * A line of the shopping list: a plastic that is bought, or that is low and is not.
 *
 * @param prospect what is ahead of it as the tray is
 * @param purchase what to buy; empty if nothing
 * @param after its use once everything on the list is in the tray
 * @param runOutAfter the probability that its tray is empty then by the end of the horizon
 * @param takesSaved takes the purchase saves over the horizon
 * @param low whether its run-out chance is above what the angler accepts
 * @param onSale whether any shop has it
 * @param reason why it is on the list, in words
 * @param standIn what to tie on instead, of what is in the tray
 */
public record ShoppingLine(
    Prospect prospect,
    Optional<Purchase> purchase,
    Use after,
    double runOutAfter,
    double takesSaved,
    boolean low,
    boolean onSale,
    String reason,
    Optional<Plastic> standIn) {

  /** What nobody sells first, the trusted before the promising; then by shop; then what is left. */
  static final Comparator<ShoppingLine> ORDER =
      Comparator.comparingInt(ShoppingLine::rank)
          .thenComparing(line -> line.purchase().map(p -> p.offer().shop()).orElse(Name.BLANK))
          .thenComparing(line -> line.rank() == 1 ? 0 : line.standingRank())
          .thenComparing(ShoppingLine::plastic)
          .thenComparing(line -> line.purchase().map(p -> p.offer().packSize()).orElse(0));

  private int rank() {
    return purchase.isPresent() ? 1 : onSale ? 2 : 0;
  }

  private int standingRank() {
    return prospect.kept() || prospect.standing() == Standing.TRUSTED ? 0 : 1;
  }

  public Plastic plastic() {
    return prospect.plastic();
  }

  public Packs packs() {
    return purchase.map(Purchase::packs).orElse(Packs.NONE);
  }
}
