package traytally.ledger;

import java.time.Instant;
import java.util.OptionalLong;

/**
 * All that one command recorded.
 *
 * @param command the command's name: {@code import}, {@code bought}, {@code undo}
 * @param summary in words: {@code tray.xlsx: 60 plastics counted}
 * @param undoes the batch it reverses, if it is an undo
 * @param undoneBy the batch that reversed it, if one did
 */
public record Batch(
    long id,
    Instant recordedAt,
    String command,
    String summary,
    OptionalLong undoes,
    OptionalLong undoneBy) {

  /** Whether what it recorded still stands. */
  public boolean stands() {
    return undoneBy.isEmpty();
  }
}
