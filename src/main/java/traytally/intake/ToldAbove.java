package traytally.intake;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import traytally.sheet.Cell;

/** What is told once for several rows: a blank or a ditto mark for the row above, a title. */
final class ToldAbove {
  /** Names of tabs that say nothing. */
  private static final Pattern PLAIN_TAB =
      Pattern.compile(
          "(?:sheet|tabelle|table|blatt|list|lures?|plastics?|soft plastics?|box|tray|tackle|stock"
              + "|inventory|count|data|page)? ?\\d*",
          Pattern.CASE_INSENSITIVE);

  /** A title that may be a body style nobody here knows. */
  private static final Pattern SHAPE_TITLE =
      Pattern.compile("\\p{L}[\\p{L}'-]*(?: \\p{L}[\\p{L}'-]*)?:?");

  private static final Pattern DASH = Pattern.compile("\\s+[-–—]\\s+|\\s*:\\s+");

  private static final Set<String> DITTO =
      Set.of("\"", "''", "do", "do.", "ditto", "\"\"", "〃", "same", "-\"-", "as above");

  private static final Set<String> WATERS =
      Set.copyOf(WordList.read("words.txt").words("water.word"));

  private static final int LONGEST_DITTO = 12;

  /** A quarter of all rows blank in a column is a habit, a single one a slip (an assumption). */
  private static final int HABIT = 4;

  /** A title longer than this is a sentence (an assumption). */
  private static final int LONGEST = 40;

  private final Table table;
  private final List<String> titles;

  /** The rows of {@code table}, which stands under {@code titles}, the nearest first. */
  ToldAbove(Table table, List<String> titles) {
    this.table = table;
    this.titles = List.copyOf(titles);
  }

  /** Fills what is told once for several rows: ditto marks, a shop, a date, a body style. */
  void fill() {
    switch (table.kind()) {
      case BOX -> {
        down(Field.BODY, List.of(Field.MAKER, Field.LENGTH, Field.TRAY));
        if (standsOnceForEach(Field.COLOUR)) {
          down(Field.COLOUR, List.of(Field.TRAY));
        }
      }
      case TRIPS -> {
        down(Field.DATE, List.of(Field.WATER, Field.SPECIES, Field.CLARITY));
        if (table.guess().has(Field.COLOUR)) {
          down(Field.BODY, List.of(Field.MAKER, Field.LENGTH));
        }
      }
      case PRICES -> {
        down(Field.SHOP, List.of());
        down(Field.BODY, List.of(Field.MAKER, Field.LENGTH));
      }
      case PLAN -> {}
    }
    dittos();
    inherit();
    water();
  }

  /** Whether each name in {@code field} is the first of its rows, and none is told again. */
  private boolean standsOnceForEach(Field field) {
    if (table.rows().stream().noneMatch(row -> row.isBlank(field))) {
      return false;
    }
    List<String> told =
        table.rows().stream().map(row -> row.text(field)).filter(t -> !t.isEmpty()).toList();
    return told.size() > 1
        && told.stream().distinct().count() == told.size()
        && table.rows().stream().noneMatch(row -> row.isBlank(Field.BODY));
  }

  private void down(Field lead, List<Field> followers) {
    List<ListRow> rows = table.rows();
    long blank = rows.stream().filter(r -> r.isBlank(lead)).count();
    boolean habit =
        !rows.isEmpty()
            && blank > 0
            && !rows.get(0).isBlank(lead)
            && (lead == Field.SHOP || blank * HABIT >= rows.size());
    if (!habit || !table.guess().has(lead)) {
      return;
    }
    ListRow above = rows.get(0);
    for (ListRow row : rows) {
      if (row.isBlank(lead)) {
        row.fill(lead, above.place(lead));
        table.assume("A blank " + lead.word() + " was taken from the row above.");
        for (Field follower : followers) {
          if (row.isBlank(follower) && !above.isBlank(follower)) {
            row.fill(follower, above.place(follower));
          }
        }
      }
      above = row;
    }
  }

  /** A log that tells no water may have it in its title or its tab. */
  private void water() {
    if (table.kind() != ListKind.TRIPS || table.rows().isEmpty() || table.tells(Field.WATER)) {
      return;
    }
    Optional<String> name =
        Stream.concat(titles.stream(), Stream.of(table.sheet().name()))
            .flatMap(title -> FirstSection.nameIn(title).stream())
            .filter(ToldAbove::namesWater)
            .findFirst();
    if (name.isPresent()) {
      table.inherit(Field.WATER, name.get(), name.get(), "The water", table.rows());
    }
  }

  private static boolean namesWater(String name) {
    return Stream.of(WordList.fold(name).split(" ", -1)).anyMatch(WATERS::contains);
  }

  /**
   * A body style or shop that no row tells may be the title's or the tab's; one that the rows above
   * the first heading lack may be the title's.
   */
  private void inherit() {
    if (table.kind() == ListKind.PLAN) {
      return;
    }
    Field field = table.kind() == ListKind.PRICES ? Field.SHOP : Field.BODY;
    List<ListRow> untold = table.rows().stream().takeWhile(r -> r.isBlank(field)).toList();
    if (untold.isEmpty()
        || table.guess().has(field)
        || table.guess().across().containsValue(field)) {
      return;
    }
    String tab = table.sheet().name();
    Optional<String> name =
        (field == Field.SHOP
                ? titles.stream().flatMap(title -> FirstSection.nameIn(title).stream())
                : titles.stream()
                    .filter(t -> t.length() < LONGEST && Anatomy.bodyWords(t) > 0)
                    .map(ToldAbove::withoutRemark))
            .findFirst();
    boolean all = untold.size() == table.rows().size();
    if (name.isEmpty() && all && field == Field.BODY && Anatomy.bodyWords(tab) == 0) {
      name = titleOfSquare();
    }
    if (name.isEmpty() && all && mayBeTold(tab)) {
      name = Optional.of(tab);
    }
    if (name.isPresent()) {
      table.inherit(field, name.get(), name.get(), "The " + field.word(), untold);
    }
  }

  /** {@code Paddle - what is in the tray} as the shape alone. */
  private static String withoutRemark(String title) {
    String first = DASH.split(title, 2)[0];
    return Anatomy.bodyWords(first) > 0 ? first : title;
  }

  /** A word or two right above a square that is not the first thing on its sheet. */
  private Optional<String> titleOfSquare() {
    boolean lower = table.firstRow() - 1 - titles.size() > 0;
    return table.guess().across().isEmpty() || !lower
        ? Optional.empty()
        : titles.stream().findFirst().filter(title -> SHAPE_TITLE.matcher(title).matches());
  }

  /** A tab's name is no body style while a column of texts that may tell it is left unread. */
  private boolean mayBeTold(String tab) {
    return table.kind() != ListKind.TRIPS
        && !PLAIN_TAB.matcher(tab).matches()
        && (table.kind() != ListKind.BOX
            || Anatomy.bodyWords(tab) > 0
            || !ToldByContent.leavesWords(table));
  }

  /** Whether a look at its length and first letter leaves {@code text} a chance to be a ditto. */
  private static boolean mayBeDitto(String text) {
    char first = text.charAt(0);
    boolean word = Character.isLetterOrDigit(first) && first < 128;
    return text.length() <= LONGEST_DITTO && (!word || "dsaDSA".indexOf(first) >= 0);
  }

  private static boolean isDitto(Cell cell) {
    return cell instanceof Cell.Text text
        && mayBeDitto(text.text())
        && DITTO.contains(Numbers.plain(cell.shown()).toLowerCase(Locale.ROOT));
  }

  /** DO below CO is a form like the others. */
  private static boolean isShortForm(String text, String above) {
    return text.equals("DO") && above.matches("\\p{Lu}{1,3}");
  }

  private void dittos() {
    if (table.sheet().distinct().stream().noneMatch(ToldAbove::isDitto)) {
      return;
    }
    Optional<ListRow> above = Optional.empty();
    for (ListRow row : table.rows()) {
      for (Field field : table.guess().columns().keySet()) {
        if (isDitto(row.cell(field))
            && above.isPresent()
            && field != Field.NOTE
            && !isShortForm(row.text(field), above.get().text(field))) {
          row.fill(field, above.get().place(field));
          table.assume("A ditto mark was taken as the " + field.word() + " of the row above.");
        }
      }
      above = Optional.of(row);
    }
  }
}
