package traytally.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * A note of lines without columns: a shape on a line of its own and its colours with their counts
 * below ({@code - motor oil 6}), or behind it ({@code Paddle (75mm): motor oil 6, white 4}).
 */
final class NoteLines {
  /** Fewer colours are no list that speaks for itself (an assumption, as for other lists). */
  private static final int FEWEST = 3;

  /** Nobody types a longer note (an assumption). */
  static final int LONGEST = 5_000;

  /** A longer line is a sheet's row, and none of a note (an assumption). */
  static final int LONGEST_LINE = 300;

  /** The share of lines that must be shapes or colours with counts (an assumption). */
  private static final double MOST = 0.75;

  private static final Pattern BULLET =
      Pattern.compile(
          "^\\s*(?:[-–*+>]?\\s*\\[[ xX✓✔]?\\]|[-*•·–+>▪■□◦‣○●☐☑☒✓✔✗]|\\d{1,3}[.)](?=\\s))\\s*");
  private static final Pattern TOTAL =
      Pattern.compile("(?i)(?:sub ?-?|grand )?(?:totals?|sum|in all)\\b.*");

  private static final Pattern SHAPE_FIRST = Pattern.compile("([^:=]+?)\\s*[:=]\\s*(.*)");
  private static final Pattern COUNT_FIRST =
      Pattern.compile("([~]?\\d+\\+?)\\s*(?:x\\s|x(?=\\D)|\\s|[-:=]\\s*)\\s*(\\D.*)");
  private static final Pattern COUNT_LAST =
      Pattern.compile(
          "(.*?[\\p{L})])\\s*(?:[-:=–,]\\s*|\\(|\\s[x*]\\s*|\\s)"
              + "((?:~|x|about|approx\\.?|around|maybe)?\\s*\\d.*?|none.*|nil|a few|lots"
              + "|(?:half|"
              + String.join("|", Numbers.WORDS)
              + ")\\b.*?)\\)?");

  private record Item(int row, String tray, String shape, String colour, String count) {}

  private final GivenSheet sheet;
  private final List<Item> items = new ArrayList<>();
  private final List<Row> remarks = new ArrayList<>();
  private int lines;
  private int unread;
  private String tray = "";
  private String shape = "";
  private int last;

  NoteLines(GivenSheet sheet) {
    this.sheet = sheet;
  }

  /** The list the note holds; empty if it is no such note. */
  Optional<Table> table() {
    if (sheet.rows().size() > LONGEST) {
      return Optional.empty();
    }
    for (Row row : sheet.rows()) {
      read(row);
    }
    if (items.size() < FEWEST || lines - unread < MOST * lines) {
      return Optional.empty();
    }
    ColumnGuess guess =
        new ColumnGuess(
            ListKind.BOX,
            Map.of(Field.BODY, 0),
            Map.of(),
            Map.of(0, "lines of shapes, colours and counts"),
            1);
    Table table = new Table(sheet, List.of(ColumnHeader.of("")), guess);
    table.assume("A note without columns: each shape's colours stand behind it or below it.");
    ListRow.Columns nowhere = ListRow.Columns.of(sheet, Map.of());
    Map<Integer, Integer> places = new HashMap<>();
    for (int i = 0; i < sheet.rows().size(); i++) {
      places.put(sheet.rows().get(i).number(), i);
    }
    for (Item item : items) {
      ListRow row = nowhere.row(places.getOrDefault(item.row(), 0));
      row.put(Field.BODY, Cell.text(item.shape()), 0);
      row.put(Field.COLOUR, Cell.text(item.colour()), 0);
      row.put(Field.PIECES, Cell.text(item.count()), 0);
      if (!item.tray().isEmpty()) {
        row.put(Field.TRAY, Cell.text(item.tray()), 0);
      }
      table.rows().add(row);
    }
    for (Row row : remarks) {
      table.note(row.number(), 0, words(row, ", "), "was read as a remark and left out.");
    }
    new TakeApart(table).run();
    return Optional.of(table);
  }

  /** The words of a row's filled cells, put together. */
  static String words(Row row, String between) {
    List<String> words = new ArrayList<>();
    row.cells().stream().filter(c -> !c.isBlank()).forEach(c -> words.add(c.shown().strip()));
    return String.join(between, words);
  }

  /** {@code text} without the mark or number that stands before an item of a list. */
  static String withoutBullet(String text) {
    return BULLET.matcher(text).replaceFirst("");
  }

  private void read(Row row) {
    String text = withoutBullet(Numbers.plain(words(row, ", ")));
    if (text.isEmpty() || text.matches("[-=_ ]+")) {
      return;
    }
    lines++;
    if (text.length() > LONGEST_LINE) {
      remarks.add(row);
      unread++;
      return;
    }
    boolean gap = row.number() > last + 1;
    last = row.number();
    if (Sections.isTray(text)) {
      tray = text.replaceAll("\\s*:$", "");
      return;
    }
    Anatomy whole = Anatomy.of(text);
    if (whole.isWhole()
        && !whole.quantity().isEmpty()
        && Anatomy.bodyWords(whole.body()) > 0
        && whole.colour().matches("[^\\d,;]+")) {
      String body = (whole.body() + " " + whole.length()).strip();
      items.add(new Item(row.number(), tray, body, whole.colour(), whole.quantity()));
      return;
    }
    Matcher first = SHAPE_FIRST.matcher(text);
    if (first.matches() && isShape(first.group(1)) && !isCount(first.group(2))) {
      shape = first.group(1);
      text = first.group(2);
      if (text.isEmpty()) {
        return;
      }
    } else if (isShape(text) && item(row, text).isEmpty()) {
      shape = text;
      return;
    }
    if (item(row, text).isEmpty() && isHeading(text, gap)) {
      shape = text.replaceAll("\\s*:$", "");
      return;
    }
    List<Item> here = new ArrayList<>();
    String[] parts = text.split("\\s*[,;]\\s*", -1);
    for (String part : parts) {
      item(row, part).ifPresent(here::add);
    }
    if (shape.isEmpty() || here.size() < parts.length) {
      remarks.add(row);
      // Titles above the first line and sums below the last say nothing of the lines.
      if (items.isEmpty() || TOTAL.matcher(text).matches()) {
        lines--;
      } else {
        unread++;
      }
    } else {
      items.addAll(here);
    }
  }

  /** Whether {@code text} names a shape, perhaps with its length, and nothing else. */
  private static boolean isShape(String text) {
    String bare = Anatomy.lengthWithin(text).map(Anatomy::body).orElse(text);
    long words = WordList.fold(bare).split(" ", -1).length;
    return Anatomy.bodyWords(bare) > 0 && Anatomy.bodyWords(bare) * 2 >= words;
  }

  /**
   * Whether a line without a count heads those below it, though no word of it is known as a shape:
   * what stands under it belongs to no shape further up.
   */
  private static boolean isHeading(String text, boolean gap) {
    Optional<Anatomy> withLength = Anatomy.lengthWithin(text);
    String bare = withLength.map(Anatomy::body).orElse(text);
    boolean marked = gap || text.endsWith(":") || withLength.isPresent();
    return marked && bare.matches("\\D+") && bare.strip().split("\\s+", -1).length <= 3;
  }

  private static boolean isCount(String text) {
    return Quantities.parse(text, OptionalInt.of(1)).value().isPresent();
  }

  private Optional<Item> item(Row row, String text) {
    Matcher first = COUNT_FIRST.matcher(text);
    if (first.matches() && !Anatomy.startsWithUnit(first.group(2))) {
      return Optional.of(new Item(row.number(), tray, shape, first.group(2), first.group(1)));
    }
    Matcher last = COUNT_LAST.matcher(text);
    if (!last.matches()) {
      return Optional.empty();
    }
    // The bracket that ends the line may close a remark on the count.
    String remarked = last.group(2) + ")";
    String count = text.endsWith(")") && isCount(remarked) ? remarked : last.group(2);
    return isCount(count)
        ? Optional.of(new Item(row.number(), tray, shape, last.group(1).strip(), count))
        : Optional.empty();
  }
}
