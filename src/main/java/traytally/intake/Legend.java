package traytally.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * What the short forms in the lists mean, {@code PT} paddle tail, as a tab says or a key beside or
 * below a list.
 */
final class Legend {
  private static final int LONGEST_FORM = 5;

  /** One short form may stand in a list by chance (an assumption). */
  private static final int FEWEST = 2;

  private static final Pattern IN_ONE =
      Pattern.compile("(\\S{1,5})\\s*(?:[=:]|\\s[-–]\\s)\\s*(.+)");
  private static final Pattern OF_FORMS =
      Pattern.compile("(?i).*\\b(?:key|legend|codes?|abbrev\\w*|short|means|meanings?)\\b.*");
  private static final List<Field> NAMES =
      List.of(
          Field.MAKER,
          Field.BODY,
          Field.COLOUR,
          Field.WATER,
          Field.SPECIES,
          Field.TRAY,
          Field.LENGTH);

  private final String tab;
  private final String place;
  private final Map<String, String> meanings = new HashMap<>();

  /** The short forms of {@code sheet}, in which no list was found. */
  Legend(GivenSheet sheet) {
    this.tab = sheet.name();
    this.place = "tab \"" + tab + "\"";
    for (Row row : sheet.rows()) {
      List<String> texts = new ArrayList<>();
      row.cells().stream().filter(c -> !c.isBlank()).forEach(c -> texts.add(c.shown().strip()));
      if (texts.size() == 1) {
        Matcher one = IN_ONE.matcher(texts.get(0));
        if (one.matches()) {
          texts.set(0, one.group(1));
          texts.add(one.group(2).strip());
        }
      }
      if (texts.size() >= 2) {
        add(texts.get(0), texts.get(1));
      }
    }
  }

  /** The short forms that stand in {@code sheet} beside or below its {@code lists}. */
  Legend(GivenSheet sheet, List<Table> lists) {
    this.tab = "";
    this.place = "key beside the list";
    Set<Integer> read = new HashSet<>();
    lists.forEach(list -> read.addAll(list.guess().columns().values()));
    lists.forEach(list -> read.addAll(list.guess().across().keySet()));
    for (Row row : sheet.rows()) {
      boolean lone = row.cells().stream().filter(cell -> !cell.isBlank()).count() == 1;
      for (int column = 0; column < row.cells().size(); column++) {
        if (row.cell(column) instanceof Cell.Text text && (lone || !read.contains(column))) {
          Matcher one = IN_ONE.matcher(text.text().strip());
          if (one.matches()) {
            add(one.group(1), one.group(2).strip());
          } else if (!read.contains(column + 1) && row.cell(column + 1) instanceof Cell.Text next) {
            add(text.text().strip(), next.text().strip());
          }
        }
      }
    }
  }

  /** Whether a line says what a short form means: {@code MO = motor oil}. */
  static boolean isKey(String line) {
    Matcher one = IN_ONE.matcher(line);
    return one.matches() && one.group(1).matches("\\p{Lu}{1,5}");
  }

  private void add(String form, String meaning) {
    if (isForm(form, meaning)) {
      meanings.putIfAbsent(WordList.fold(form), meaning);
    }
  }

  /** Whether a text may be short for another: it is no word itself, but in a tab of such forms. */
  private boolean isForm(String form, String meaning) {
    boolean capitals = form.equals(form.toUpperCase(Locale.ROOT));
    boolean word = Anatomy.bodyWords(form) > 0 || Anatomy.colourWords(form) > 0;
    return form.length() <= LONGEST_FORM
        && form.matches("\\S*\\p{L}\\S*")
        && !word
        && (capitals || OF_FORMS.matcher(tab).matches())
        && meaning.length() > form.length()
        && (meaning.matches("[\\p{L} '&/()-]+") || Square.isLengthWithUnit(Cell.text(meaning)));
  }

  /** Spells out the short forms of {@code tables}, if they use several. */
  void spellOut(List<Table> tables) {
    Set<String> used = new HashSet<>();
    for (Table table : tables) {
      for (ListRow row : table.rows()) {
        NAMES.forEach(field -> meaning(row, field).ifPresent(used::add));
      }
    }
    if (used.size() < FEWEST) {
      return;
    }
    for (Table table : tables) {
      Optional<String> example = Optional.empty();
      for (ListRow row : table.rows()) {
        for (Field field : NAMES) {
          Optional<String> meaning = meaning(row, field);
          if (meaning.isPresent()) {
            String form = row.text(field);
            example = example.or(() -> Optional.of(form + " as " + meaning.get()));
            row.put(field, Cell.text(meaning.get()), row.place(field).column());
          }
        }
      }
      example.ifPresent(
          e -> table.assume("Short forms were read as the " + place + " says: " + e + "."));
    }
  }

  private Optional<String> meaning(ListRow row, Field field) {
    return row.isBlank(field)
        ? Optional.empty()
        : Optional.ofNullable(meanings.get(WordList.fold(row.text(field))));
  }
}
