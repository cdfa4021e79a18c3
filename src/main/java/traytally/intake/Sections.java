package traytally.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import traytally.intake.ListRow.Place;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/** Sorts the rows under a header: list rows, section headings, totals, remarks, blank ones. */
final class Sections {
  private static final Pattern TOTAL =
      Pattern.compile(
          "(?:grand |sub ?-?|(?:trip|day|days|session|month|season|year|tray|box) )?totals?\\b.*"
              + "|[^,;]{1,30} (?:grand |sub ?-?)?totals?|(?:stock |box |tray |total )?(?:value|worth)"
              + "|sum|sums|all|in all|all together|altogether|overall|all told|the lot|everything"
              + "|(?:the )?whole (?:lot|box|tray|list|collection)"
              + "|(?:(?:all|whole|full|the whole|in the) )?(?:season|year)"
              + "|\\d+ (?:in (?:the|all|total)|left in|altogether|all told)\\b.*");

  private static final String TRAYS = "(?:tray|box|drawer|wallet|bag|compartment)";

  private static final Pattern TRAY =
      Pattern.compile(
          "(?:"
              + TRAYS
              + " (?:no\\.? ?)?(?:\\d+|[a-z]|top|bottom|middle|left|right|front|back|upper|lower|lid)"
              + "|(?:top|bottom|upper|lower|middle|big|small|left|right|boat|spare|black|white|blue|red|green|yellow"
              + "|orange|grey|clear|bait|lure|tackle|old|new|first|second|third|other) "
              + TRAYS
              + ")(?: ?\\([^()]*\\))?:?",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern PAGE =
      Pattern.compile(
          "(?:page|p\\.?|sheet) ?\\d+(?: ?(?:of|/) ?\\d+)?|cont(?:inued|'?d)?\\.?|p\\.?t\\.?o\\.?",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern RULE = Pattern.compile("\\s*[-=_:]{3,}\\s*");

  /** As many rows tell what the headings between them are (an assumption). */
  private static final int LOOKED_AT = 200;

  /** What a row of sums tells nothing of. */
  private static final List<Field> NAMES =
      List.of(Field.BODY, Field.COLOUR, Field.LENGTH, Field.MAKER, Field.PACK_SIZE);

  private final Table table;
  private Optional<Place> section = Optional.empty();
  private final Field sectionField;
  private final boolean sectioned;
  private final boolean oneColumn;

  private final List<String> titles;
  private Optional<Place> tray = Optional.empty();
  private Optional<Place> length = Optional.empty();
  private boolean lengthsWithin;
  private final CalendarHeadings calendar;
  private Optional<Place> water = Optional.empty();
  private final Map<Integer, Cell> postages = new HashMap<>();
  private Optional<ShopTerms> shopTerms = Optional.empty();
  private final Optional<FirstSection> first;
  private final DayRemarks days;
  private boolean headed;

  /** How many rows the last sum or heading stands under. */
  private int summed;

  /** How many rows are added up, to what in all, and to what since the last sum or heading. */
  private int added;

  private long total;
  private long since;

  /** Sorts the rows of {@code table}, which stands under {@code titles}, the nearest first. */
  Sections(Table table, List<String> titles) {
    this.table = table;
    this.titles = List.copyOf(titles);
    this.oneColumn = table.guess().columns().size() == 1 && table.guess().across().isEmpty();
    this.sectionField =
        switch (table.kind()) {
          case PRICES -> Field.SHOP;
          case TRIPS, PLAN -> Field.DATE;
          case BOX -> coloursHead() ? Field.COLOUR : Field.BODY;
        };
    if (table.kind() == ListKind.BOX) {
      this.tray =
          titles.stream()
              .filter(title -> TRAY.matcher(title).matches())
              .findFirst()
              .map(title -> new Place(Cell.text(withoutColon(title)), -1, true));
    }
    this.sectioned = !table.guess().has(sectionField);
    this.days = new DayRemarks(table);
    this.calendar = new CalendarHeadings(table);
    this.first =
        watersMayHead()
            ? Optional.of(new FirstSection(table, Field.WATER))
            : sectioned && sectionField == Field.SHOP
                ? Optional.of(new FirstSection(table, Field.SHOP))
                : Optional.empty();
  }

  /** Whether a list of shapes without colours stands under colours on rows of their own. */
  private boolean coloursHead() {
    ColumnGuess guess = table.guess();
    if (guess.has(Field.BODY) && guess.has(Field.COLOUR)) {
      return coloursStandAlone(guess.columns().getOrDefault(Field.COLOUR, -1));
    }
    if (!guess.has(Field.BODY) || !guess.across().isEmpty()) {
      return false;
    }
    List<Row> rows = table.sheet().rows();
    int colours = 0;
    int headings = 0;
    for (int i = table.firstRow(); i < Math.min(rows.size(), table.firstRow() + LOOKED_AT); i++) {
      List<Cell> filled = rows.get(i).cells().stream().filter(c -> !ListRow.isBlank(c)).toList();
      if (filled.size() == 1 && filled.get(0) instanceof Cell.Text text) {
        headings++;
        boolean colour = Anatomy.colourWords(text.text()) > Anatomy.bodyWords(text.text());
        colours += colour ? 1 : 0;
      }
    }
    return colours * 2 > headings;
  }

  /** Whether a list's rows lack a colour, which stands in a row of its own above them. */
  private boolean coloursStandAlone(int column) {
    List<Row> rows = table.sheet().rows();
    int alone = 0;
    for (int i = table.firstRow(); i < Math.min(rows.size(), table.firstRow() + LOOKED_AT); i++) {
      Row row = rows.get(i);
      long filled = row.cells().stream().filter(c -> !c.isBlank()).count();
      if (!row.cell(column).isBlank() && filled > 1) {
        return false;
      }
      alone += row.cell(column).isBlank() ? 0 : 1;
    }
    return alone > 0;
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
    if (filled.isEmpty()
        || (isRule(row.cell(filled.get(0)))
            && filled.stream().allMatch(c -> isRule(row.cell(c))))) {
      return;
    }
    if (row.struck()) {
      String text = row.cell(filled.get(0)).shown().strip();
      table.note(row.number(), filled.get(0), text, "is struck out: the row was left out.");
      return;
    }
    if (CalledOff.is(table.kind(), row, list)) {
      String text = row.cell(filled.get(0)).shown().strip();
      table.note(row.number(), filled.get(0), text, "was called off or not fished: left out.");
      return;
    }
    boolean told = tells(list);
    String first = row.cell(filled.get(0)).shown().strip();
    if (isTotal(first, filled.get(0), list)) {
      table.note(row.number(), filled.get(0), first, "begins a row of totals, which was left out.");
    } else if (Signature.is(row)) {
      table.note(row.number(), filled.get(0), first, "was read as a signature and left out.");
    } else if (isDayLine(row, filled)) {
      String[] parts = filled.stream().map(c -> row.cell(c).shown()).toArray(String[]::new);
      head(Cell.text(String.join(", ", parts)), filled.get(0));
    } else if ((filled.size() == 1 || isNameless(row, filled, list) || isOfShape(list))
        && isSumOfAbove(list)) {
      table.note(row.number(), filled.get(0), first, "is the sum of the counts above: left out.");
      summed = table.rows().size();
    } else if (filled.size() == 1 && isHeading(row.cell(filled.get(0)), list, next)) {
      head(row.cell(filled.get(0)), filled.get(0));
    } else if (!calendar.take(filled, first)) {
      boolean remark = isPageHead(row, filled) || isRemark(filled, list, first, gap);
      if (!told || remark) {
        table.note(row.number(), filled.get(0), first, "was read as a remark and left out.");
      } else {
        underHeadings(list);
        add(row, list);
      }
    }
  }

  /** A line drawn between rows. */
  private static boolean isRule(Cell cell) {
    return cell instanceof Cell.Text text
        && !Character.isLetterOrDigit(text.text().charAt(0))
        && RULE.matcher(text.text()).matches();
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
    // Each row is added once, however many such counts a list has.
    for (; added < table.rows().size(); added++) {
      since = (added == summed ? 0 : since) + count(table.rows().get(added));
      total += count(table.rows().get(added));
    }
    int sum = count(list);
    return sum > 0 && ((added > summed && sum == since) || sum == total);
  }

  /** Whether a row holds numbers and no name. */
  private boolean isNameless(Row row, List<Integer> filled, ListRow list) {
    return NAMES.stream().allMatch(list::isBlank)
        && table.rows().size() - summed > 1
        && filled.stream()
            .allMatch(c -> Numbers.parse(Numbers.plain(row.cell(c).shown())).isPresent());
  }

  /** Whether a row lacks the colour and the length of all above it, so that it may be their sum. */
  private boolean isOfShape(ListRow list) {
    return table.guess().has(Field.COLOUR)
        && table.guess().has(Field.LENGTH)
        && list.isBlank(Field.COLOUR)
        && list.isBlank(Field.LENGTH)
        && table.rows().size() - summed > 1
        && table.rows().stream()
            .skip(summed)
            .noneMatch(row -> row.isBlank(Field.COLOUR) || row.isBlank(Field.LENGTH));
  }

  private static int count(ListRow row) {
    return Quantities.parse(row.text(Field.PIECES), OptionalInt.empty()).value().orElse(0);
  }

  private void head(Cell cell, int column) {
    headed = true;
    boolean atOnce = table.rows().size() == summed;
    summed = table.rows().size();
    String text = withoutColon(cell.shown().strip());
    if (tellsLength(text)) {
      lengthsWithin = lengthsWithin || (section.isPresent() && atOnce);
      length = Optional.of(new Place(Cell.text(text), column, true));
      table.assume("Headings between the rows tell the length.");
      return;
    }
    length = lengthsWithin ? Optional.empty() : length;
    if (table.kind() == ListKind.BOX && TRAY.matcher(text).matches()) {
      tray = Optional.of(new Place(Cell.text(text), column, true));
    } else if (watersMayHead()) {
      water = Optional.of(new Place(Cell.text(text), column, true));
      table.assume("\"" + text + "\" on a row of its own was read as the water of the rows below.");
    } else if (table.kind() == ListKind.TRIPS) {
      DayHeading heading = DayHeading.of(text);
      section = Optional.of(new Place(Cell.text(heading.date()), column, true));
      water = heading.water().map(w -> new Place(Cell.text(w), column, true));
      table.assume("Headings between the rows tell the date.");
      days.head(heading.remarks(), column);
    } else {
      ShopTerms terms = ShopTerms.of(text);
      boolean shop = table.kind() == ListKind.PRICES;
      section = Optional.of(new Place(Cell.text(shop ? terms.name() : text), column, true));
      shopTerms = shop ? Optional.of(terms) : Optional.empty();
      table.assume("Headings between the rows tell the " + sectionField.word() + ".");
    }
  }

  private boolean tellsLength(String text) {
    return (table.kind() == ListKind.BOX || table.kind() == ListKind.PRICES)
        && Square.isLengthWithUnit(Cell.text(text));
  }

  private void underHeadings(ListRow list) {
    if (!headed) {
      first.ifPresent(rows -> rows.add(list));
    }
    days.add(list);
    calendar.tell(list);
    if (water.isPresent() && list.isBlank(Field.WATER)) {
      list.fill(Field.WATER, water.get());
    }
    if (section.isPresent() && list.isBlank(sectionField)) {
      list.fill(sectionField, section.get());
    }
    if (length.isPresent() && list.isBlank(Field.LENGTH)) {
      list.fill(Field.LENGTH, length.get());
    }
    shopTerms.ifPresent(terms -> terms.fill(list));
    if (tray.isPresent() && list.isBlank(Field.TRAY)) {
      list.fill(Field.TRAY, tray.get());
    }
  }

  /** Adds the row, or one row for each count of a square. */
  private void add(Row row, ListRow list) {
    if (table.guess().across().isEmpty() || LuresAcross.areIn(table.guess())) {
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
    if (counted == Field.PACK_PRICE && namesPostage(row.cell(0))) {
      table.guess().across().keySet().forEach(column -> postages.put(column, row.cell(column)));
      return;
    }
    table.guess().across().entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .forEach(
            entry -> {
              int column = entry.getKey();
              boolean notSold = counted == Field.PACK_PRICE && Square.isNotSold(row.cell(column));
              if (!row.cell(column).isBlank() && !notSold) {
                ListRow one = list.copy();
                ColumnHeader header = table.headers().get(column);
                one.put(entry.getValue(), Cell.text(header.text()), column);
                if (counted == Field.PACK_PRICE) {
                  header
                      .currency()
                      .ifPresent(
                          code -> {
                            one.put(entry.getValue(), Cell.text(header.withoutUnit()), column);
                            one.put(Field.CURRENCY, Cell.text(code), column);
                          });
                }
                one.put(counted, row.cell(column), column);
                table.rows().add(one);
              }
            });
  }

  private static boolean namesPostage(Cell cell) {
    return HeaderWords.isUsual(ColumnHeader.of(cell).folded(), Field.POSTAGE, ListKind.PRICES);
  }

  private boolean isTotal(String first, int column, ListRow list) {
    boolean whole = !list.isBlank(Field.BODY) && !list.isBlank(Field.COLOUR);
    // Beside a merged cell the word stands where a colour would.
    boolean asColour = table.guess().columns().getOrDefault(Field.COLOUR, -1) == column;
    return (!whole || asColour)
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
    if (tellsLength(text.text().strip())) {
      return true;
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

  /** A day with its water, fish or weather in cells of their own, where no column tells the day. */
  private boolean isDayLine(Row row, List<Integer> filled) {
    return table.kind() == ListKind.TRIPS
        && sectioned
        && filled.size() > 1
        && filled.size() < 4
        && table.guess().columns().containsValue(filled.get(0))
        && filled.stream().allMatch(column -> row.cell(column) instanceof Cell.Text)
        && Dates.isDate(row.cell(filled.get(0)).shown());
  }

  /** The head of a further page: its number, beside the title that stands over the list. */
  private boolean isPageHead(Row row, List<Integer> filled) {
    String first = row.cell(filled.get(0)).shown().strip();
    String last = row.cell(filled.get(filled.size() - 1)).shown().strip();
    return filled.size() < 3
        && (PAGE.matcher(last).matches() || (filled.size() == 1 && titles.contains(first)));
  }

  private boolean isRemark(List<Integer> filled, ListRow list, String first, boolean gap) {
    if (oneColumn) {
      return !Anatomy.of(first).isWhole();
    }
    boolean lone = filled.size() == 1 && list.isBlank(Field.COLOUR) && list.isBlank(Field.PIECES);
    return lone
        && (gap || Legend.isKey(first) || first.split("\\s+", -1).length > 3 || namesNoShape(first))
        && table.kind() != ListKind.PLAN;
  }

  /** Whether a word in a list of the box is no shape: the maker of those below, say. */
  private boolean namesNoShape(String word) {
    return table.kind() == ListKind.BOX && Anatomy.bodyWords(word) == 0;
  }

  /** Fills what is told once for several rows. */
  void fillDown() {
    if (headed) {
      first.ifPresent(rows -> rows.fill(titles));
    }
    postagesAcross();
    days.tell();
    new ToldAbove(table, titles).fill();
  }

  /** A row of postages under shops that stand side by side is of each shop's prices. */
  private void postagesAcross() {
    for (ListRow row : postages.isEmpty() ? List.<ListRow>of() : table.rows()) {
      int column = row.place(Field.SHOP).column();
      Cell postage = postages.getOrDefault(column, Cell.blank());
      if (!ListRow.isBlank(postage) && row.isBlank(Field.POSTAGE)) {
        row.fill(Field.POSTAGE, new Place(postage, column, true));
      }
    }
  }
}
