package traytally.cli;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import traytally.intake.Spelling;
import traytally.plastic.Name;

/** What may stand where the cursor is. */
@FunctionalInterface
interface Completion {
  /** Nothing to offer. */
  Completion NONE = before -> new Offers(before.length(), List.of());

  /**
   * What may replace the end of a text.
   *
   * @param from where the replaced end begins
   */
  record Offers(int from, List<String> texts) {
    public Offers {
      texts = List.copyOf(texts);
    }
  }

  /** What may replace the end of {@code before}, the text up to the cursor. */
  Offers at(String before);

  /** Completes the whole line to one of {@code names}, slips forgiven. */
  static Completion of(Collection<Name> names) {
    return before -> {
      Name begun = Name.of(before);
      String lower = before.strip().toLowerCase(Locale.ROOT);
      List<String> fitting =
          names.stream()
              .filter(
                  name ->
                      name.key().startsWith(begun.key())
                          || name.text().toLowerCase(Locale.ROOT).contains(" " + lower))
              .map(Name::text)
              .toList();
      return new Offers(
          0,
          fitting.isEmpty()
              ? names.stream().filter(n -> Spelling.near(begun, n)).map(Name::text).toList()
              : fitting);
    };
  }

  static Completion ofWords(String... words) {
    return of(List.of(words).stream().map(Name::of).toList());
  }
}
