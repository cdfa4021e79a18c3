package traytally.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/**
 * A diary of lines without columns: a day and its water on a line of their own, and below it a line
 * for each plastic, {@code paddle, motor oil, 75mm, 50 min, 3 takes, 1 landed}.
 */
final class DiaryLines {
  /** Fewer lines are no diary that speaks for itself (an assumption). */
  private static final int FEWEST = 2;

  /** The share of lines below the first day that must tell a plastic (an assumption). */
  private static final double MOST = 0.6;

  /** A diary with more lines before its first day is none (an assumption). */
  private static final int LONGEST_PREFACE = 30;

  /** A line that is read: its place in the sheet and its words. */
  private record Line(int place, String words) {}

  private final GivenSheet sheet;
  private final Table table;
  private final DayRemarks days;
  private final List<Line> remarks = new ArrayList<>();
  private final List<Line> untold = new ArrayList<>();
  private Optional<DayHeading> day = Optional.empty();

  /** The heading of the day, until a line below it is read. */
  private Optional<Line> waiting = Optional.empty();

  private final List<String> said = new ArrayList<>();
  private int stints;

  DiaryLines(GivenSheet sheet) {
    this.sheet = sheet;
    ColumnGuess guess =
        new ColumnGuess(
            ListKind.TRIPS,
            Map.of(Field.BODY, 0),
            Map.of(),
            Map.of(0, "lines of days and of what was fished"),
            1);
    this.table = new Table(sheet, List.of(ColumnHeader.of("")), guess);
    this.days = new DayRemarks(table);
  }

  /** The log the diary holds; empty if it is no such diary. */
  Optional<Table> table() {
    if (sheet.rows().size() > NoteLines.LONGEST) {
      return Optional.empty();
    }
    for (int place = 0; place < sheet.rows().size(); place++) {
      if (place > LONGEST_PREFACE && day.isEmpty() && table.rows().isEmpty()) {
        return Optional.empty();
      }
      read(new Line(place, NoteLines.words(sheet.rows().get(place), ", ")));
    }
    if (stints < FEWEST || stints < MOST * (table.rows().size() + remarks.size())) {
      return Optional.empty();
    }
    waiting.ifPresent(untold::add);
    table.assume("A diary without columns: a line of its own tells the day of those below.");
    days.tell();
    said.forEach(table::assume);
    note(remarks, "was read as a remark and left out.");
    note(untold, "has no line of a lure below it that was read: nothing was taken of that day.");
    new TakeApart(table).run();
    return Optional.of(table);
  }

  private void note(List<Line> lines, String what) {
    for (Line line : lines) {
      table.note(sheet.rows().get(line.place()).number(), 0, line.words(), what);
    }
  }

  /** Whether a row by itself reads as the line of a stint, whatever stands around it. */
  static boolean mayBeLine(Row row) {
    String words = NoteLines.words(row, ", ");
    return words.length() <= NoteLines.LONGEST_LINE && StintLine.of(words).mayBeStint();
  }

  private void read(Line line) {
    if (line.words().length() > NoteLines.LONGEST_LINE) {
      remarks.add(line);
      return;
    }
    DayHeading heading = heading(line.words());
    if (!Dates.isDate(heading.date())) {
      below(line);
    } else if (!wholeLine(line, heading)) {
      waiting.ifPresent(untold::add);
      waiting = Optional.of(line);
      day = Optional.of(heading);
      days.head(heading.remarks(), 0);
    }
  }

  private static DayHeading heading(String words) {
    DayHeading plain = DayHeading.inWords(words);
    return Dates.isDate(plain.date())
        ? plain
        : DayHeading.inWords(NoteLines.withoutBullet(Numbers.plain(words)));
  }

  /** Takes a line that tells its day and its water, or its day alone, before the plastic. */
  private boolean wholeLine(Line line, DayHeading heading) {
    String behind = String.join(", ", heading.remarks());
    String all = heading.water().map(water -> water + ", " + behind).orElse("");
    DayHeading onlyDay = new DayHeading(heading.date(), Optional.empty(), List.of());
    DayHeading withWater = new DayHeading(heading.date(), heading.water(), List.of());
    boolean watered = take(line, withWater, behind).isPresent();
    boolean taken = watered || take(line, onlyDay, all).isPresent();
    if (taken) {
      waiting.ifPresent(untold::add);
      waiting = Optional.empty();
      day = Optional.of(watered ? withWater : onlyDay);
      days.head(List.of(), 0);
    }
    return taken;
  }

  private void below(Line line) {
    Optional<ListRow> row = day.flatMap(on -> take(line, on, line.words()));
    if (row.isPresent()) {
      days.add(row.get());
      waiting = Optional.empty();
    } else if (day.isPresent() && !line.words().isEmpty()) {
      leave(line, day.get());
    }
  }

  /** A line that may be a stint is a row to be mended; any other is a remark. */
  private void leave(Line line, DayHeading on) {
    if (StintLine.of(line.words()).mayBeStint()) {
      ListRow row = row(line, on);
      row.put(Field.BODY, Cell.text(line.words()), 0);
      row.put(Field.COLOUR, Cell.blank(), 0);
      waiting = Optional.empty();
    } else {
      remarks.add(line);
    }
  }

  private Optional<ListRow> take(Line line, DayHeading on, String words) {
    StintLine stint = StintLine.of(words);
    String several = TimeWithin.inMinutes(Numbers.plain(words)).replaceAll(",\\s*|\\s+-\\s+", " ");
    boolean whole = stint.isStint() && !SeveralInOne.tellsSeveral(several);
    if (!whole && !SeveralInOne.tellsSeveral(several)) {
      return Optional.empty();
    }
    ListRow row = row(line, on);
    if (whole) {
      put(stint, row, line);
    } else {
      row.put(Field.BODY, Cell.text(several), 0);
    }
    stints++;
    return Optional.of(row);
  }

  private ListRow row(Line line, DayHeading on) {
    ListRow row = ListRow.Columns.of(sheet, Map.of()).row(line.place());
    row.put(Field.DATE, Cell.text(on.date()), 0);
    on.water().ifPresent(water -> row.put(Field.WATER, Cell.text(water), 0));
    table.rows().add(row);
    return row;
  }

  private void put(StintLine stint, ListRow row, Line line) {
    row.put(Field.BODY, Cell.text(stint.plastic().body()), 0);
    row.put(Field.COLOUR, Cell.text(stint.plastic().colour()), 0);
    if (!stint.plastic().length().isEmpty()) {
      row.put(Field.LENGTH, Cell.text(stint.plastic().length()), 0);
    }
    stint
        .told()
        .forEach(
            (field, number) ->
                row.put(field, Cell.text(field == Field.MINUTES ? number + " min" : number), 0));
    if (!stint.left().isEmpty()) {
      row.put(Field.NOTE, Cell.text(String.join(", ", stint.left())), 0);
      said.add("What else a line tells was kept as the note of its stint.");
    }
    stint
        .guess()
        .ifPresent(
            words ->
                table.guess(row.number(), words, stint.told().getOrDefault(Field.MINUTES, "")));
    stint
        .fishLost()
        .ifPresent(words -> note(line, words, "is of fish that got off, and no piece."));
    said.add(SeveralInOne.BESIDE_ITS_NAME);
  }

  private void note(Line line, String words, String what) {
    table.note(sheet.rows().get(line.place()).number(), 0, words, what);
  }
}
