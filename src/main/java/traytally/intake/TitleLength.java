package traytally.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import traytally.intake.ListRow.Place;
import traytally.sheet.Cell;

/** A length that only the title or the tab tells, for a whole list: {@code My 3 inch plastics}. */
final class TitleLength {
  /** "Counted 3 in May" tells no length. */
  private static final Pattern PREPOSITION = Pattern.compile("(?i)\\d\\s*in\\s+\\p{L}");

  private TitleLength() {}

  /** Gives every row of {@code table} the length, if no row has one of its own. */
  static void inherit(Table table, List<String> titles) {
    boolean told = table.tells(Field.LENGTH) || table.guess().across().containsValue(Field.LENGTH);
    if (table.kind() != ListKind.BOX || told || table.rows().isEmpty()) {
      return;
    }
    List<String> names = new ArrayList<>(titles);
    names.add(table.sheet().name());
    for (String name : names) {
      Optional<String> length = length(name);
      if (length.isPresent()) {
        Place place = new Place(Cell.text(length.get()), -1, true);
        table.rows().forEach(row -> row.fill(Field.LENGTH, place));
        table.assume("The length was taken from the title \"" + name + "\".");
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
