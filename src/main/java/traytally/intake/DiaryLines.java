package traytally.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import traytally.sheet.Cell;

/**
 * A diary of lines without columns: a day and its water on a line of their own, and below it a line
 * for each plastic, {@code paddle, motor oil, 75mm, 50 min, 3 takes, 1 landed}.
 */
final class DiaryLines {
  /** Fewer lines are no diary that speaks for itself (an assumption). */
  private static final int FEWEST = 2;

  /** The share of lines below the first day that must tell a plastic (an assumption). */
  private static final double MOST = 0.75;

  /** A diary with more lines before its first day is none (an assumption). */
  private static final int LONGEST_PREFACE = 30;

  /** A line that is read: its place in the sheet and its words. */
  private record Line(int place, String words) {}

  private final GivenSheet sheet;
  private final Table table;
  private final DayRemarks days;
  private final List<Line> remarks = new ArrayList<>();
  private Optional<DayHeading> day = Optional.empty();

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
    int told = table.rows().size();
    if (told < FEWEST || told < MOST * (told + remarks.size())) {
      return Optional.empty();
    }
    table.assume("A diary without columns: a line of its own tells the day of those below.");
    days.tell();
    for (Line remark : remarks) {
      int number = sheet.rows().get(remark.place()).number();
      table.note(number, 0, remark.words(), "was read as a remark and left out.");
    }
    new TakeApart(table).run();
    return Optional.of(table);
  }

  private void read(Line line) {
    if (line.words().length() > NoteLines.LONGEST_LINE) {
      remarks.add(line);
      return;
    }
    DayHeading heading = DayHeading.of(line.words());
    String behind = String.join(" ", heading.remarks());
    if (Dates.isDate(heading.date()) && SeveralInOne.tellsStints(behind)) {
      take(line, heading, behind);
      return;
    }
    if (Dates.isDate(heading.date())) {
      day = Optional.of(heading);
      days.head(heading.remarks(), 0);
      return;
    }
    String lure =
        NoteLines.words(sheet.rows().get(line.place()), " ").replaceAll("\\s+[-–]\\s+", " ");
    if (day.isPresent() && SeveralInOne.tellsStints(lure)) {
      days.add(take(line, day.get(), lure));
    } else if (day.isPresent() && !line.words().isEmpty()) {
      remarks.add(line);
    }
  }

  private ListRow take(Line line, DayHeading on, String lure) {
    ListRow row = ListRow.Columns.of(sheet, Map.of()).row(line.place());
    row.put(Field.DATE, Cell.text(on.date()), 0);
    on.water().ifPresent(water -> row.put(Field.WATER, Cell.text(water), 0));
    row.put(Field.BODY, Cell.text(lure), 0);
    table.rows().add(row);
    return row;
  }
}
