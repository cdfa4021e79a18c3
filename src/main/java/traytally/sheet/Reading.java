package traytally.sheet;

import java.nio.charset.Charset;
import java.util.Optional;

/**
 * How a file is to be read, where the person knows better than a guess.
 *
 * @param encoding of a text file; found out when empty
 * @param delimiter between the columns of a text file; found out when empty
 * @param limits how large the file may be
 */
public record Reading(Optional<Charset> encoding, Optional<Character> delimiter, Limits limits) {
  /** Everything found out from the file itself. */
  public static final Reading AS_FOUND =
      new Reading(Optional.empty(), Optional.empty(), Limits.DEFAULT);

  public Reading {
    delimiter.ifPresent(
        mark -> {
          if (mark == '"' || mark == '\r' || mark == '\n') {
            throw new IllegalArgumentException("cannot stand between columns: " + mark);
          }
        });
  }

  /** The same, with the text file's encoding given. */
  public Reading withEncoding(Charset given) {
    return new Reading(Optional.of(given), delimiter, limits);
  }

  /** The same, with the mark between columns given. */
  public Reading withDelimiter(char given) {
    return new Reading(encoding, Optional.of(given), limits);
  }

  Reading withLimits(Limits given) {
    return new Reading(encoding, delimiter, given);
  }
}
