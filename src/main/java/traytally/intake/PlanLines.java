package traytally.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import traytally.sheet.Cell;
import traytally.sheet.Row;

/** A note of coming trips without columns, a line each: {@code Sun 10 May, Ossel Bay, 3 hours}. */
final class PlanLines {
  /** Fewer lines are no plan that speaks for itself (an assumption). */
  private static final int FEWEST = 2;

  /** More lines over the first day are no titles (an assumption). */
  private static final int MOST_TITLES = 3;

  private static final Pattern RODS = Pattern.compile("(?i)(\\d{1,2}) rods?");

  /** What a note of days to come is called; days without a year may be of last year. */
  private static final Pattern TO_COME =
      Pattern.compile(
          "(?i).*\\b(?:plan(?:s|ned)?|coming|upcoming|forthcoming|next|ahead|to come)\\b.*");

  /** One line: its row and place in the sheet, and what it tells. */
  private record Line(Row row, int place, DayHeading heading, TimeWithin time, List<String> words) {
    boolean isDay() {
      return Dates.isDate(heading.date());
    }

    boolean namesLure() {
      return Stream.concat(heading.water().stream(), words.stream())
          .anyMatch(
              word ->
                  Anatomy.lengthEnd(word) >= 0
                      || !StintCounts.of(word).told().isEmpty()
                      || StintLine.of(word).plastic().isWhole());
    }
  }

  private final GivenSheet sheet;
  private final LocalDate today;
  private final boolean asked;

  /** The lines of {@code sheet}, which the person said is a plan if it is {@code asked} for. */
  PlanLines(GivenSheet sheet, LocalDate today, boolean asked) {
    this.sheet = sheet;
    this.today = today;
    this.asked = asked;
  }

  /** The plan the note holds; empty if it is no such note. */
  Optional<Table> table() {
    if (sheet.rows().size() > NoteLines.LONGEST) {
      return Optional.empty();
    }
    List<String> titles = new ArrayList<>();
    List<Line> days = new ArrayList<>();
    List<Line> others = new ArrayList<>();
    for (int place = 0; place < sheet.rows().size(); place++) {
      Line line = line(place);
      if (line.isDay()) {
        days.add(line);
      } else if (days.isEmpty()) {
        titles.add(line.heading().date());
      } else if (!line.heading().date().isEmpty()) {
        others.add(line);
      }
    }
    titles.removeIf(String::isEmpty);
    boolean called =
        Stream.concat(titles.stream(), Stream.of(sheet.name(), sheet.file().replace('.', ' ')))
            .anyMatch(name -> TO_COME.matcher(name).matches());
    boolean speaks =
        days.size() >= FEWEST
            && others.isEmpty()
            && days.stream().allMatch(line -> isToCome(line, called));
    return titles.size() <= MOST_TITLES && (speaks || (asked && !days.isEmpty()))
        ? Optional.of(table(titles, days, others))
        : Optional.empty();
  }

  private Line line(int place) {
    Row row = sheet.rows().get(place);
    String words = Numbers.plain(NoteLines.words(row, ", "));
    if (words.length() > NoteLines.LONGEST_LINE) {
      return new Line(row, place, DayHeading.of(""), TimeWithin.of(""), List.of());
    }
    DayHeading heading = DayHeading.inWords(Dates.dayFirst(words));
    if (!Dates.isDate(heading.date())) {
      heading = DayHeading.inWords(Dates.dayFirst(NoteLines.withoutBullet(words)));
    }
    List<String> told = new ArrayList<>();
    heading.water().ifPresent(told::add);
    told.addAll(heading.remarks());
    TimeWithin time = TimeWithin.of(String.join(", ", told));
    List<String> rest = new ArrayList<>();
    for (String word : time.rest().split("\\s*[,;" + StintCounts.TAKEN + "]\\s*", -1)) {
      if (!word.isBlank()) {
        rest.add(word.replaceAll("^[\\s-]+|[\\s-]+$", ""));
      }
    }
    Optional<String> water = rest.stream().findFirst().filter(first -> first.matches(".*\\p{L}.*"));
    water.ifPresent(first -> rest.remove(0));
    return new Line(
        row, place, new DayHeading(heading.date(), water, List.of()), time, List.copyOf(rest));
  }

  /** Whether a line is of a day to come, tells how long, and names no lure. */
  private boolean isToCome(Line line, boolean called) {
    String date = line.heading().date();
    Optional<Dates.Written> day = Dates.parse(date, today, OptionalInt.empty()).value();
    boolean toCome =
        day.map(d -> Stream.of(d.dayFirst(), d.monthFirst()).noneMatch(this::isPast))
            .orElse(called);
    return toCome && line.time().minutes().isPresent() && !line.namesLure();
  }

  private boolean isPast(Optional<LocalDate> day) {
    return day.filter(d -> d.isBefore(today)).isPresent();
  }

  private Table table(List<String> titles, List<Line> days, List<Line> others) {
    ColumnGuess guess =
        new ColumnGuess(
            ListKind.PLAN, Map.of(Field.DATE, 0), Map.of(), Map.of(0, "lines of days to come"), 1);
    Table table = new Table(sheet, List.of(ColumnHeader.of("")), guess);
    Collections.reverse(titles);
    table.under(titles);
    table.assume("A plan without columns: each line tells the day, the water and how long.");
    days.forEach(line -> take(line, table));
    for (Line line : others) {
      String words = NoteLines.words(line.row(), ", ");
      table.note(line.row().number(), 0, words, "was read as a remark and left out.");
    }
    return table;
  }

  private void take(Line line, Table table) {
    ListRow row = ListRow.Columns.of(sheet, Map.of()).row(line.place());
    String words = NoteLines.words(line.row(), ", ");
    int number = line.row().number();
    if (CalledOff.is(ListKind.PLAN, line.row(), row)) {
      table.note(number, 0, words, "was called off or not fished: left out.");
      return;
    }
    row.put(Field.DATE, Cell.text(line.heading().date()), 0);
    line.heading().water().ifPresent(water -> row.put(Field.WATER, Cell.text(water), 0));
    row.put(Field.HOURS, Cell.blank(), 0);
    line.time()
        .minutes()
        .ifPresent(minutes -> row.put(Field.HOURS, Cell.text(minutes + " min"), 0));
    if (line.time().guess()) {
      table.guess(number, line.time().words(), line.time().minutes().orElse(""));
    }
    line.words().forEach(word -> tell(word, row));
    table.rows().add(row);
  }

  /** Puts a word behind the water where it belongs: the fish, the rods, or the note. */
  private void tell(String word, ListRow row) {
    Matcher rods = RODS.matcher(word);
    String fish = word.replaceFirst("^(?i)(?:for|after) ", "");
    if (rods.matches() && row.isBlank(Field.RODS)) {
      row.put(Field.RODS, Cell.text(rods.group(1)), 0);
    } else if (FishByKind.namesKind(WordList.fold(fish)) && row.isBlank(Field.SPECIES)) {
      row.put(Field.SPECIES, Cell.text(fish), 0);
    } else if (asked && row.isBlank(Field.HOURS) && Numbers.parse(word).isPresent()) {
      // In what the person calls a plan, a bare number is how many hours.
      row.put(Field.HOURS, Cell.text(word + " h"), 0);
    } else {
      String before = row.text(Field.NOTE);
      row.put(Field.NOTE, Cell.text(before.isEmpty() ? word : before + ", " + word), 0);
    }
  }
}
