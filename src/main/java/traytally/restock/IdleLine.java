package traytally.restock;

import java.util.Optional;
import traytally.plastic.Money;
import traytally.plastic.Pieces;

/**
 * Pieces of one plastic that will most likely not be used.
 *
 * @param prospect what is ahead of it over the years asked for
 * @param idle the pieces
 * @param money what they cost; empty if no list says what a pack costs
 * @param wantedBy who might want them, in words; blank if nothing tells
 */
public record IdleLine(Prospect prospect, Pieces idle, Optional<Money> money, String wantedBy) {}
