package traytally.ledger;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalLong;
import traytally.plastic.Plastic;
import traytally.trip.LossCause;

/**
 * One signed change in pieces of one plastic, never edited or deleted.
 *
 * @param date the day the pieces moved, not the day it was written down
 * @param how the cause of a loss, if known
 * @param pieces signed, never 0
 * @param stint the number of the stint that moved them, if one did
 * @param reverses whether it takes an earlier movement back; its sign is then the other way round
 */
public record Movement(
    LocalDate date,
    MovementKind kind,
    Optional<LossCause> how,
    Plastic plastic,
    int pieces,
    OptionalLong stint,
    boolean reverses,
    String note) {
  private static final String SHORT = "more were used than the book held";

  public Movement {
    if (pieces == 0) {
      throw new IllegalArgumentException("a movement moves at least one piece");
    }
    int direction = reverses ? -Integer.signum(pieces) : Integer.signum(pieces);
    if (kind.sign() != 0 && kind.sign() != direction) {
      throw new IllegalArgumentException(kind + " cannot move " + pieces + " pieces");
    }
    if (how.isPresent() && kind != MovementKind.LOST) {
      throw new IllegalArgumentException("only a loss has a cause: " + kind);
    }
  }

  /** A movement of {@code pieces} without a cause or note. */
  public static Movement of(LocalDate date, MovementKind kind, Plastic plastic, int pieces) {
    return new Movement(
        date, kind, Optional.empty(), plastic, pieces, OptionalLong.empty(), false, "");
  }

  /**
   * Pieces the log used and the book did not hold: they must have been there, so they are found.
   *
   * @param pieces found if above 0; below 0 it takes back what was found needlessly
   */
  static Movement shortage(LocalDate date, Plastic plastic, int pieces) {
    return new Movement(
        date,
        MovementKind.FOUND,
        Optional.empty(),
        plastic,
        pieces,
        OptionalLong.empty(),
        pieces < 0,
        SHORT);
  }

  /** Whether it is what the log brought to light, or takes that back. */
  public boolean isShortage() {
    return kind == MovementKind.FOUND && note.equals(SHORT);
  }

  /** Whether it was worked out from the counts and the log, and not told by the angler. */
  public boolean isWorkedOut() {
    return kind == MovementKind.OPENING || kind == MovementKind.RECOUNT || isShortage();
  }

  /** The movement that takes this one back, on the same date. */
  public Movement reversed(String why) {
    String words = isShortage() ? note : why;
    return new Movement(date, kind, how, plastic, -pieces, stint, !reverses, words);
  }

  public Movement withNote(String words) {
    return new Movement(date, kind, how, plastic, pieces, stint, reverses, words);
  }
}
