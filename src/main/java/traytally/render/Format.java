package traytally.render;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** A form a report can take. */
public enum Format {
  TABLE,
  CSV,
  JSON,
  XLSX;

  /** The format that {@code word} names, without regard to case. */
  public static Optional<Format> parse(String word) {
    String wanted = word.strip().toLowerCase(Locale.ROOT);
    return Arrays.stream(values()).filter(f -> f.word().equals(wanted)).findFirst();
  }

  /** The word the angler types: {@code xlsx}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The ending of a file in this format, without the point: {@code txt}, {@code csv}. */
  public String extension() {
    return this == TABLE ? "txt" : word();
  }

  /** Whether it is text that can go to a terminal, rather than bytes for a file. */
  public boolean isText() {
    return switch (this) {
      case TABLE, CSV, JSON -> true;
      case XLSX -> false;
    };
  }
}
