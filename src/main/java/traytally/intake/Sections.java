package traytally.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.intake.ListRow.Place;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/** Sorts the rows under a header: list rows, section headings, totals, remarks, blank ones. */
final class Sections {
  private static final Pattern TOTAL =
      Pattern.compile(
          "(?:grand |sub ?-?)?totals?\\b.*|sum|sums|in all|all together|altogether|overall");

  private static final String TRAYS = "(?:tray|box|drawer|wallet|bag|compartment)";

  private static final Pattern TRAY =
      Pattern.compile(
          "(?:"
              + TRAYS
              + " (?:no\\.? ?)?(?:\\d+|[a-z])"
              + "|(?:top|bottom|big|small|left|right|boat|spare|black|white|blue|red|green|yellow"
              + "|orange|grey|clear) "
              + TRAYS
              + "):?",
          Pattern.CASE_INSENSITIVE);

  /** Names of tabs that say nothing. */
  private static final Pattern PLAIN_TAB =
      Pattern.compile(
          "(?:sheet|tabelle|table|blatt|list|lures?|plastics?|soft plastics?|box|tray|tackle|stock"
              + "|inventory|count|data|page)? ?\\d*",
          Pattern.CASE_INSENSITIVE);

  private static final Set<String> DITTO =
      Set.of("\"", "''", "do", "do.", "ditto", "\"\"", "〃", "same", "-\"-", "as above");

  private static final int LONGEST_DITTO = 12;

  /** A quarter of all rows blank in a column is a habit, a single one a slip (an assumption). */
  private static final int HABIT = 4;

  private final Table table;
  private Optional<Place> section = Optional.empty();
  private final Field sectionField;
  private final boolean sectioned;
  private final boolean oneColumn;

  private final List<String> titles;
  private Optional<Place> tray = Optional.empty();
  private Optional<Place> water = Optional.empty();
  private final Optional<FirstSection> first;
  private boolean headed;

  /** How many rows the last sum or heading stands under. */
  private int summed;

  /** Sorts the rows of {@code table}, which stands under {@code titles}, the nearest first. */
  Sections(Table table, List<String> titles) {
    this.table = table;
    this.titles = List.copyOf(titles);
    this.oneColumn = table.guess().columns().size() == 1 && table.guess().across().isEmpty();
    this.sectionField =
        switch (table.kind()) {
          case PRICES -> Field.SHOP;
          case TRIPS, PLAN -> Field.DATE;
          case BOX -> Field.BODY;
        };
    if (table.kind() == ListKind.BOX) {
      this.tray =
          titles.stream()
              .filter(title -> TRAY.matcher(title).matches())
              .findFirst()
              .map(title -> new Place(Cell.text(withoutColon(title)), -1, true));
    }
    this.sectioned = !table.guess().has(sectionField);
    this.first =
        watersMayHead()
            ? Optional.of(new FirstSection(table, Field.WATER))
            : sectioned && sectionField == Field.SHOP
                ? Optional.of(new FirstSection(table, Field.SHOP))
                : Optional.empty();
  }

  private static String withoutColon(String heading) {
    return heading.replaceAll("\\s*:$", "");
  }

  /** Whether a heading names a tray. */
  static boolean isTray(String heading) {
    return TRAY.matcher(heading).matches();
  }

  void take(Row row, boolean gap, Optional<Row> next, ListRow list) {
    List<Integer> filled = new ArrayList<>();
    for (int column = 0; column < row.cells().size(); column++) {
      if (!ListRow.isBlank(row.cell(column))) {
        filled.add(column);
      }
    }
    if (filled.isEmpty()) {
      return;
    }
    boolean told = tells(list);
    String first = row.cell(filled.get(0)).shown().strip();
    if (isTotal(first, list)) {
      table.note(row.number(), filled.get(0), first, "begins a row of totals, which was left out.");
    } else if (filled.size() == 1 && isSumOfAbove(list)) {
      table.note(row.number(), filled.get(0), first, "is the sum of the counts above: left out.");
      summed = table.rows().size();
    } else if (filled.size() == 1 && isHeading(row.cell(filled.get(0)), list, next)) {
      head(row.cell(filled.get(0)), filled.get(0));
    } else if (!told || isRemark(filled, list, first, gap)) {
      table.note(row.number(), filled.get(0), first, "was read as a remark and left out.");
    } else {
      underHeadings(list);
      add(row, list);
    }
  }

  private boolean tells(ListRow list) {
    for (Field field : table.guess().columns().keySet()) {
      if (!list.isBlank(field)) {
        return true;
      }
    }
    return false;
  }

  /** Whether a log has dates in its rows and its waters perhaps between them. */
  private boolean watersMayHead() {
    return table.kind() == ListKind.TRIPS && !sectioned && !table.guess().has(Field.WATER);
  }

  /** Whether a count alone in its row is what those above it come to, all or since the last sum. */
  private boolean isSumOfAbove(ListRow list) {
    if (table.kind() != ListKind.BOX || list.isBlank(Field.PIECES)) {
      return false;
    }
    int sum = counts(List.of(list));
    List<ListRow> rows = table.rows();
    return sum > 0 && (sum == counts(rows.subList(summed, rows.size())) || sum == counts(rows));
  }

  private static int counts(List<ListRow> rows) {
    return rows.stream()
        .mapToInt(
            row -> Quantities.parse(row.text(Field.PIECES), OptionalInt.empty()).value().orElse(0))
        .sum();
  }

  private void head(Cell cell, int column) {
    headed = true;
    summed = table.rows().size();
    String text = withoutColon(cell.shown().strip());
    if (table.kind() == ListKind.BOX && TRAY.matcher(text).matches()) {
      tray = Optional.of(new Place(Cell.text(text), column, true));
    } else if (watersMayHead()) {
      water = Optional.of(new Place(Cell.text(text), column, true));
      table.assume("\"" + text + "\" on a row of its own was read as the water of the rows below.");
    } else if (table.kind() == ListKind.TRIPS) {
      Heading heading = Heading.of(text);
      section = Optional.of(new Place(Cell.text(heading.date()), column, true));
      water = heading.water().map(w -> new Place(Cell.text(w), column, true));
      table.assume("Headings between the rows tell the date.");
    } else {
      section = Optional.of(new Place(Cell.text(text), column, true));
      table.assume("Headings between the rows tell the " + sectionField.word() + ".");
    }
  }

  /** A date on a row of its own, perhaps with the water behind it. */
  private record Heading(String date, Optional<String> water) {
    private static final Pattern PARTS =
        Pattern.compile("(.*?\\d.*?)(?:\\s+[-@|]\\s+|,\\s+|:\\s+|\\s+at\\s+)(\\D+)");

    static Heading of(String text) {
      Matcher parts = PARTS.matcher(Numbers.plain(text));
      return parts.matches()
          ? new Heading(parts.group(1), Optional.of(parts.group(2).strip()))
          : new Heading(text, Optional.empty());
    }
  }

  private void underHeadings(ListRow list) {
    if (!headed) {
      first.ifPresent(rows -> rows.add(list));
    }
    if (water.isPresent() && list.isBlank(Field.WATER)) {
      list.fill(Field.WATER, water.get());
    }
    if (section.isPresent() && list.isBlank(sectionField)) {
      list.fill(sectionField, section.get());
    }
    if (tray.isPresent() && list.isBlank(Field.TRAY)) {
      list.fill(Field.TRAY, tray.get());
    }
  }

  /** Adds the row, or one row for each count of a square. */
  private void add(Row row, ListRow list) {
    if (table.guess().across().isEmpty()) {
      table.rows().add(list);
      return;
    }
    if (FishByKind.areIn(table.guess())) {
      FishByKind.addUp(table, row, list);
      table.rows().add(list);
      return;
    }
    if (PlaceCounts.areIn(table.guess())) {
      PlaceCounts.addUp(table, row, list);
      table.rows().add(list);
      return;
    }
    Field counted = table.kind() == ListKind.PRICES ? Field.PACK_PRICE : Field.PIECES;
    table.guess().across().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(
            entry -> {
              int column = entry.getKey();
              if (!row.cell(column).isBlank()) {
                ListRow one = list.copy();
                String header = table.headers().get(column).text();
                one.put(entry.getValue(), Cell.text(header), column);
                one.put(counted, row.cell(column), column);
                table.rows().add(one);
              }
            });
  }

  private boolean isTotal(String first, ListRow list) {
    return (list.isBlank(Field.BODY) || list.isBlank(Field.COLOUR))
        && TOTAL.matcher(first.toLowerCase(Locale.ROOT).replaceAll("[:=]", "").strip()).matches();
  }

  private boolean isHeading(Cell cell, ListRow list, Optional<Row> next) {
    if (!(cell instanceof Cell.Text text)
        || Numbers.parse(Numbers.plain(text.text())).isPresent()) {
      return false;
    }
    if (table.kind() == ListKind.BOX && TRAY.matcher(text.text().strip()).matches()) {
      return list.isBlank(Field.COLOUR) || list.isBlank(Field.BODY);
    }
    if (sectioned) {
      return !oneColumn;
    }
    if (watersMayHead()) {
      int date = table.guess().columns().getOrDefault(Field.DATE, -1);
      return FirstSection.mayName(text.text().strip())
          && next.filter(n -> !n.cell(date).isBlank() && n.cells().size() > 1).isPresent();
    }
    int column = table.guess().columns().getOrDefault(sectionField, -1);
    return !list.isBlank(sectionField)
        && next.filter(n -> n.cell(column).isBlank() && n.cells().size() > column + 1).isPresent();
  }

  private boolean isRemark(List<Integer> filled, ListRow list, String first, boolean gap) {
    if (oneColumn) {
      return !Anatomy.of(first).isWhole();
    }
    boolean lone = filled.size() == 1 && list.isBlank(Field.COLOUR) && list.isBlank(Field.PIECES);
    return lone && (gap || first.split("\\s+", -1).length > 3) && table.kind() != ListKind.PLAN;
  }

  /** Fills what is told once for several rows: ditto marks, a shop, a date, a body style. */
  void fillDown() {
    if (headed) {
      first.ifPresent(rows -> rows.fill(titles));
    }
    switch (table.kind()) {
      case BOX -> down(Field.BODY, List.of(Field.MAKER, Field.LENGTH, Field.TRAY));
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

  /** Where a shop's name ends and a remark on it begins: {@code Splice Shed - postage 3.20}. */
  private static final Pattern ASIDE = Pattern.compile("\\s+[-–]\\s|\\s*[,:(]");

  /** A title with none of the words that only say what stands below it. */
  private static boolean mayBeShop(String title) {
    return !title.matches(
        "(?i).*(?:\\d|\\b(?:prices?|price"
            + " ?list|list|shopping|shops?|order|offers?|packs?|plastics?|cost)\\b).*");
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
        titles.stream()
            .map(t -> field == Field.SHOP ? ASIDE.split(t, 2)[0].strip() : t)
            .filter(t -> t.length() < 40)
            .filter(t -> field == Field.BODY ? Anatomy.bodyWords(t) > 0 : mayBeShop(t))
            .findFirst();
    boolean all = untold.size() == table.rows().size();
    if (name.isEmpty() && all && mayBeTold(tab)) {
      name = Optional.of(tab);
    }
    if (name.isPresent()) {
      Place place = new Place(Cell.text(name.get()), -1, true);
      untold.forEach(row -> row.fill(field, place));
      table.assume("The " + field.word() + " was taken from the title \"" + name.get() + "\".");
    }
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

  private void dittos() {
    if (table.sheet().distinct().stream().noneMatch(Sections::isDitto)) {
      return;
    }
    Optional<ListRow> above = Optional.empty();
    for (ListRow row : table.rows()) {
      for (Field field : table.guess().columns().keySet()) {
        if (isDitto(row.cell(field)) && above.isPresent() && field != Field.NOTE) {
          row.fill(field, above.get().place(field));
          table.assume("A ditto mark was taken as the " + field.word() + " of the row above.");
        }
      }
      above = Optional.of(row);
    }
  }
}
