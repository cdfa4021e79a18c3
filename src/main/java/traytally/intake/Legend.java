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

/** A tab that says what the short forms in the lists mean: {@code PT}, paddle tail. */
final class Legend {
  private static final int LONGEST_FORM = 5;

  /** One short form may stand in a list by chance (an assumption). */
  private static final int FEWEST = 2;

  private static final Pattern IN_ONE =
      Pattern.compile("(\\S{1,5})\\s*(?:[=:]|\\s[-–]\\s)\\s*(.+)");
  private static final Pattern OF_FORMS =
      Pattern.compile("(?i).*\\b(?:key|legend|codes?|abbrev\\w*|short|means|meanings?)\\b.*");
  private static final List<Field> NAMES =
      List.of(Field.MAKER, Field.BODY, Field.COLOUR, Field.WATER, Field.SPECIES, Field.TRAY);

  private final String tab;
  private final Map<String, String> meanings = new HashMap<>();

  /** The short forms of {@code sheet}, in which no list was found. */
  Legend(GivenSheet sheet) {
    this.tab = sheet.name();
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
      if (texts.size() >= 2 && isForm(texts.get(0), texts.get(1))) {
        meanings.putIfAbsent(WordList.fold(texts.get(0)), texts.get(1));
      }
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
        && meaning.matches("[\\p{L} '&/()-]+");
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
          e -> table.assume("Short forms were read as the tab \"" + tab + "\" says: " + e + "."));
    }
  }

  private Optional<String> meaning(ListRow row, Field field) {
    return row.isBlank(field)
        ? Optional.empty()
        : Optional.ofNullable(meanings.get(WordList.fold(row.text(field))));
  }
}
