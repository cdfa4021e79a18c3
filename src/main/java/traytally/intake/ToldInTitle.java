package traytally.intake;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.sheet.Row;

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
    for (String title : numbersLast(table.titles())) {
      Matcher line = LINE.matcher(title);
      Optional<Field> field =
          line.matches() ? field(line.group(1), table.kind()) : Optional.empty();
      boolean numbered = field.equals(Optional.of(Field.WATER)) && numbersWaters(table);
      if (numbered) {
        table.passOver(Field.WATER, "passed over: numbers, and the title tells the water");
      }
      if (field.isPresent() && (numbered || !table.tells(field.get()))) {
        table.inherit(
            field.get(), line.group(2).strip(), title, "The " + field.get().word(), table.rows());
      }
    }
  }

  /** The titles with numbers of pegs and swims behind the names of waters. */
  private static List<String> numbersLast(List<String> titles) {
    return titles.stream()
        .sorted(Comparator.comparing(title -> title.matches(".*[:=]\\s*\\d+\\p{L}?")))
        .toList();
  }

  /**
   * What a row over a list tells under words of lists, a line for each: {@code Water: Ossel Bay}.
   */
  static List<String> in(Row row) {
    return Pairs.in(row).stream()
        .filter(pair -> isWord(pair.word()) && !pair.value().isBlank())
        .map(pair -> pair.word() + ": " + pair.value().shown().strip())
        .toList();
  }

  /** Whether a column read as waters holds nothing but numbers, as of pegs. */
  private static boolean numbersWaters(Table table) {
    return table.guess().has(Field.WATER)
        && table.rows().stream().allMatch(row -> row.text(Field.WATER).matches("\\d*"));
  }

  /** Whether such a line tells a day. */
  static boolean isDay(String title) {
    Matcher line = LINE.matcher(title);
    return line.matches()
        && field(line.group(1), ListKind.TRIPS).filter(f -> f == Field.DATE).isPresent()
        && Dates.isDate(line.group(2));
  }

  /** Whether {@code word} says what stands beside it, over a list of some kind. */
  private static boolean isWord(String word) {
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
