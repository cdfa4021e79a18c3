package traytally.plastic;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** A choice of a closed list that people name by a word: in sheets, options and output. */
public interface Worded {
  /** The enum's own. */
  String name();

  /** The word used in sheets, options and output: {@code bitten off}. */
  default String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** The one of {@code all} that {@code word} names, without regard to case. */
  static <T extends Worded> Optional<T> parse(T[] all, String word) {
    String wanted = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(all).filter(one -> one.word().equals(wanted)).findFirst();
  }
}
