package traytally.ledger;

import traytally.plastic.Worded;

/** Why pieces came or went. */
public enum MovementKind implements Worded {
  /** The first count of a plastic. */
  OPENING(+1),
  BOUGHT(+1),
  LOST(-1),
  /** Retired, worn out. */
  WORN(-1),
  /** Given away. */
  GIVEN(-1),
  /** Turned up: also what a log brings to light when it loses more than the book held. */
  FOUND(+1),
  /** The difference that a later count showed; either sign. */
  RECOUNT(0);

  private final int sign;

  MovementKind(int sign) {
    this.sign = sign;
  }

  /** +1 or -1 for a kind that only adds or only takes pieces, 0 for one that may do both. */
  int sign() {
    return sign;
  }
}
