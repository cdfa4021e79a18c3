package traytally.restock;

import java.util.Optional;
import traytally.plastic.Packs;
import traytally.plastic.Plastic;

/**
 * A line of the shopping list: a plastic that is low, bought or not.
 *
 * @param prospect what is ahead of it as the tray is
 * @param purchase what to buy; empty where nobody sells it
 * @param after its use once everything on the list is in the tray
 * @param runOutAfter the probability that its tray is empty then by the end of the horizon
 * @param low whether its run-out chance is above what the angler accepts
 * @param reason why it is on the list, in words
 * @param standIn what to tie on instead, of what is in the tray
 */
public record ShoppingLine(
    Prospect prospect,
    Optional<Purchase> purchase,
    Use after,
    double runOutAfter,
    boolean low,
    String reason,
    Optional<Plastic> standIn) {

  public Plastic plastic() {
    return prospect.plastic();
  }

  public Packs packs() {
    return purchase.map(Purchase::packs).orElse(Packs.NONE);
  }
}
