package traytally.intake;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a line over a list tells of all its rows, under its own word: {@code Water: Lime Quay}. */
final class ToldInTitle {
  private static final Pattern LINE = Pattern.compile("([\\p{L} ]{1,25}?)\\s*[:=]\\s*(\\S.{0,60})");

  private static final List<Field> FIELDS =
      List.of(
          Field.WATER,
          Field.SPECIES,
          Field.CLARITY,
          Field.RODS,
          Field.DATE,
          Field.MAKER,
          Field.BODY,
          Field.COLOUR,
          Field.LENGTH,
          Field.TRAY);

  private ToldInTitle() {}

  /** Fills what no column of {@code table} tells and one of its titles does. */
  static void fill(Table table) {
    for (String title : table.titles()) {
      Matcher line = LINE.matcher(title);
      Optional<Field> field =
          line.matches() ? field(line.group(1), table.kind()) : Optional.empty();
      if (field.isPresent() && !table.tells(field.get())) {
        table.inherit(
            field.get(), line.group(2).strip(), title, "The " + field.get().word(), table.rows());
      }
    }
  }

  /** Whether {@code word} says what stands beside it, over a list of some kind. */
  static boolean isWord(String word) {
    return Arrays.stream(ListKind.values()).anyMatch(kind -> field(word, kind).isPresent());
  }

  /** What a list of {@code kind} tells under {@code word}, if a title may tell it as well. */
  private static Optional<Field> field(String word, ListKind kind) {
    String folded = ColumnHeader.of(word).folded();
    return FIELDS.stream()
        .filter(field -> field.isIn(kind) && HeaderWords.isUsual(folded, field, kind))
        .findFirst();
  }
}
