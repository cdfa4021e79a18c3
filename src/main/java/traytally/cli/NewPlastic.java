package traytally.cli;

import java.util.Optional;
import java.util.Set;
import picocli.CommandLine.Option;
import traytally.intake.Lengths;
import traytally.intake.Spelling;
import traytally.ledger.Book;
import traytally.plastic.Name;
import traytally.plastic.Plastic;

/** The plastic a command speaks of: one of the box, or with {@code --new} one that is not in it. */
final class NewPlastic {
  @Option(
      names = "--new",
      paramLabel = "'BODY, COLOUR, LENGTH[, MAKER]'",
      description = "A plastic that is not in the box yet, in place of PLASTIC.")
  private Optional<String> described = Optional.empty();

  boolean isNew() {
    return described.isPresent();
  }

  Plastic plastic(Traytally root, Book book, HandWords words) {
    if (described.isEmpty()) {
      if (words.plastic().isBlank()) {
        throw new Refusal(
            Exit.USAGE, "say which plastic: its row in the last listing, or words of its name.");
      }
      return named(root, book, words.plastic());
    }
    if (!words.plastic().isBlank()) {
      throw new Refusal(
          Exit.USAGE,
          "\"" + words.plastic() + "\" and --new name two plastics. Say one of them only.");
    }
    return fresh(book, parse(described.get()));
  }

  private static Plastic named(Traytally root, Book book, String words) {
    try {
      return PlasticNames.one(root, book, words);
    } catch (Refusal e) {
      if (!PlasticNames.fitting(words, book).isEmpty() || words.matches("\\d+")) {
        throw e;
      }
      throw new Refusal(
          Exit.DATA,
          e.getMessage()
              + System.lineSeparator()
              + "For one that is not in the box yet: --new 'paddle tail, motor oil, 75'",
          e);
    }
  }

  /** {@code plastic}, unless it is in the box already or may be a slip for one that is. */
  private static Plastic fresh(Book book, Plastic plastic) {
    Set<Plastic> inBox = book.plastics();
    if (inBox.contains(plastic)) {
      throw new Refusal(Exit.DATA, plastic + " is in the box already: leave out --new.");
    }
    for (Plastic known : inBox) {
      boolean slip =
          known.lengthMm() == plastic.lengthMm()
              && known.maker().equals(plastic.maker())
              && isNear(known.body(), plastic.body())
              && isNear(known.colour(), plastic.colour());
      if (slip) {
        throw new Refusal(
            Exit.DATA,
            plastic
                + " is nearly "
                + known
                + ", which is in the box. Did you mean that? If not, import it with a list.");
      }
    }
    return plastic;
  }

  private static boolean isNear(Name one, Name other) {
    return one.equals(other) || Spelling.near(one, other);
  }

  private static Plastic parse(String text) {
    String[] parts = text.split(",", -1);
    Optional<Integer> length =
        parts.length < 3 || parts[2].isBlank() ? Optional.of(0) : Lengths.typed(parts[2]);
    if (parts.length < 2
        || parts.length > 4
        || Name.of(parts[0]).isBlank()
        || Name.of(parts[1]).isBlank()
        || length.isEmpty()) {
      throw new Refusal(
          Exit.USAGE,
          "--new \""
              + text
              + "\": write body style, colour, length in mm, and the maker if you like, with commas"
              + " between: 'paddle tail, motor oil, 75'");
    }
    return Plastic.of(parts.length == 4 ? parts[3] : "", parts[0], parts[1], length.get());
  }
}
