package traytally.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** A length that only the title or the tab tells, for a whole list: {@code My 3 inch plastics}. */
final class TitleLength {
  /** "Counted 3 in May" tells no length. */
  private static final Pattern PREPOSITION = Pattern.compile("(?i)\\d\\s*in\\s+\\p{L}");

  /** "All 75mm unless it says". */
  private static final Pattern OF_ALL =
      Pattern.compile("(?i)\\b(?:all|unless|except|otherwise|mostly|rest|every(?:thing)?)\\b");

  private TitleLength() {}

  /**
   * Gives every row of {@code table} the length, if no row has one of its own; if some have, the
   * others where the title says that it is of all.
   */
  static void inherit(Table table, List<String> titles) {
    boolean told = table.tells(Field.LENGTH) || table.guess().across().containsValue(Field.LENGTH);
    boolean untold = table.rows().stream().anyMatch(row -> row.isBlank(Field.LENGTH));
    if (table.kind() != ListKind.BOX || !untold) {
      return;
    }
    List<String> names = new ArrayList<>(titles);
    names.add(table.sheet().name());
    for (String name : names) {
      Optional<String> length =
          told && !OF_ALL.matcher(name).find() ? Optional.empty() : length(name);
      if (length.isPresent()) {
        List<ListRow> untoldRows =
            table.rows().stream().filter(row -> row.isBlank(Field.LENGTH)).toList();
        table.inherit(
            Field.LENGTH, length.get(), name, told ? "A blank length" : "The length", untoldRows);
        return;
      }
    }
  }

  /** The one length that a title tells with its unit. */
  private static Optional<String> length(String title) {
    if (PREPOSITION.matcher(title).find()) {
      return Optional.empty();
    }
    Optional<Lengths.Written> whole = Lengths.parse(title).filter(l -> l.unit().isPresent());
    if (whole.isPresent()) {
      return Optional.of(title.strip());
    }
    Optional<Anatomy> within = Anatomy.lengthWithin(title);
    return within
        .filter(parts -> Anatomy.lengthWithin(parts.body()).isEmpty())
        .map(Anatomy::length);
  }
}
