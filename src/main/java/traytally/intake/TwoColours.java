package traytally.intake;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import traytally.sheet.Cell;

/**
 * Lures of two colours, each in a column of its own: the body's and the tail's, or the flake's in
 * words. Two that differ in one of them are not the same plastic.
 */
final class TwoColours {
  private final Table table;

  TwoColours(Table table) {
    this.table = table;
  }

  void run() {
    if (table.guess().has(Field.SECOND_COLOUR)) {
      join(Field.SECOND_COLOUR, (first, second) -> first + " / " + second);
    }
    if (table.guess().has(Field.FLAKE) && flakesAreWords()) {
      join(Field.FLAKE, TwoColours::withFlake);
    }
  }

  /** Two colours put into one name. */
  private interface Joining {
    String of(String first, String second);
  }

  private void join(Field field, Joining joining) {
    Optional<String> example = Optional.empty();
    for (ListRow row : table.rows()) {
      String first = row.text(Field.COLOUR);
      String second = row.text(field);
      int column = row.place(field).column();
      boolean told = !second.isEmpty() && !Quantities.isNone(second) && !second.equals("?");
      if (told && !WordList.fold(first).equals(WordList.fold(second))) {
        String both = first.isEmpty() ? second : joining.of(first, second);
        row.put(Field.COLOUR, Cell.text(both), row.place(Field.COLOUR).column());
        example = example.or(() -> Optional.of(both));
      }
      row.put(field, Cell.blank(), column);
    }
    example.ifPresent(
        both ->
            table.assume("Two columns tell the colour: taken together, such as \"" + both + "\"."));
  }

  private static String withFlake(String colour, String flake) {
    String words = " " + flake.toLowerCase(Locale.ROOT) + " ";
    boolean says = words.matches(".*\\b(?:flakes?|fleck|glitter|sparkles?|specks?)\\b.*");
    return colour + ", " + flake + (says ? "" : " flake");
  }

  /** Whether the flakes are colours in words, not swatches nor a mere yes. */
  private boolean flakesAreWords() {
    List<String> told =
        table.rows().stream()
            .map(row -> row.text(Field.FLAKE))
            .filter(text -> !text.isEmpty() && !Quantities.isNone(text))
            .toList();
    long words = told.stream().filter(text -> Anatomy.colourWords(text) > 0).count();
    return words * 2 > told.size();
  }
}
