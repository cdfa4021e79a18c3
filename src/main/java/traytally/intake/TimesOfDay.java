package traytally.intake;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.sheet.Cell;

/**
 * Tells a column of times of day from one of lengths of time: 06:30 may be either. Stints are
 * short, and the times of one trip rise from row to row (assumptions).
 */
final class TimesOfDay {
  /** Headers that can only mean how long. */
  private static final Set<String> HOW_LONG =
      Set.of(
          "how long",
          "how long for",
          "how long on",
          "duration",
          "length of time",
          "time fished",
          "fishing time",
          "fished for",
          "time used",
          "fished");

  private static final Pattern CLOCK = Pattern.compile("(\\d{1,2}):(\\d\\d)(?::\\d\\d)?");

  /** Four digits are no minutes a stint can have. */
  private static final Pattern DIGITS = Pattern.compile("([01]\\d|2[0-3])([0-5]\\d)");

  private static final Pattern SURE =
      Pattern.compile(
          "(?:about |~)?\\d{1,2}(?:[:.]\\d\\d)? ?[ap]\\.?m\\.?"
              + "|(?:first light|dawn|sunrise|early|(?:early |late )?(?:morning|afternoon|evening)"
              + "|midday|noon|sunset|dusk|night|dark|[ap]\\.?m\\.?)");

  private static final int HOUR = 60;
  private static final int EARLIEST = 4 * HOUR;
  private static final int LONG_STINT = 8 * HOUR;

  /** Fewer rises than this from row to row may be chance. */
  private static final int MANY_RISES = 3;

  private int least = Integer.MAX_VALUE;
  private int most = -1;
  private int rises;
  private int falls;
  private boolean sure;
  private boolean padded;

  private TimesOfDay() {}

  /** Whether the times under {@code field} are times of day, said; refused if that is unclear. */
  static boolean stand(Table table, Field field, ImportOptions options) {
    Optional<ColumnHeader> header = table.header(field);
    if (header.isEmpty()
        || options.map().containsKey(header.get().folded())
        || header.get().saysHours()
        || header.get().saysMinutes()
        || HOW_LONG.contains(header.get().folded())) {
      return false;
    }
    TimesOfDay times = new TimesOfDay();
    times.look(table, field);
    int column = table.guess().columns().getOrDefault(field, 0);
    boolean before = HeaderSearch.AS_BEFORE.equals(table.guess().why().get(column));
    boolean stand = times.stand(header.get().folded().equals("time of day"));
    if (!stand && times.areUnclear() && !before) {
      throw new ListRefusedException(
          ColumnHabits.where(table, field)
              + ": times such as "
              + shown(times.most)
              + " may be times of day or lengths of time. Say which with --map '"
              + header.get().text()
              + "=start' or --map '"
              + header.get().text()
              + "="
              + field.word()
              + "'.");
    }
    if (stand) {
      table.passOver(field, "times of day: passed over");
      table.assume(
          "\"" + header.get().text() + "\" tells times of day, not how long: it was passed over.");
    }
    return stand;
  }

  private static String shown(int minutes) {
    return String.format(Locale.ROOT, "%d:%02d", minutes / HOUR, minutes % HOUR);
  }

  /** Whether one cell tells a time of day, or a length that could as well be one. */
  static boolean isOne(Cell cell) {
    return cell instanceof Cell.Time || isSure(cell) || clock(cell) >= 0;
  }

  private static boolean isSure(Cell cell) {
    return cell instanceof Cell.Text text
        && SURE.matcher(Numbers.plain(text.text()).toLowerCase(Locale.ROOT)).matches();
  }

  /** Minutes since midnight; below 0 if it tells none. */
  private static int clock(Cell cell) {
    if (cell instanceof Cell.Time time) {
      return (int) Math.min(Integer.MAX_VALUE, time.length().toMinutes());
    }
    if (!(cell instanceof Cell.Text text)) {
      return -1;
    }
    String plain = Numbers.plain(text.text());
    Matcher clock = CLOCK.matcher(plain);
    Matcher digits = DIGITS.matcher(plain);
    if (clock.matches()) {
      return Integer.parseInt(clock.group(1)) * HOUR + Integer.parseInt(clock.group(2));
    }
    return digits.matches()
        ? Integer.parseInt(digits.group(1)) * HOUR + Integer.parseInt(digits.group(2))
        : -1;
  }

  private void look(Table table, Field field) {
    String trip = "";
    int last = -1;
    for (ListRow row : table.rows()) {
      Cell cell = row.cell(field);
      sure |= isSure(cell);
      int clock = clock(cell);
      String here = row.text(Field.DATE) + "/" + row.text(Field.WATER);
      if (clock >= 0) {
        least = Math.min(least, clock);
        most = Math.max(most, clock);
        padded |= cell instanceof Cell.Text && cell.shown().strip().startsWith("0");
        if (last >= 0 && here.equals(trip)) {
          rises += clock > last ? 1 : 0;
          falls += clock > last ? 0 : 1;
        }
        last = clock;
      } else if (!here.equals(trip)) {
        last = -1;
      }
      trip = here;
    }
  }

  private boolean stand(boolean saysSo) {
    if (most >= 24 * HOUR) {
      return false;
    }
    boolean rising = rises > 0 && falls == 0;
    boolean late = least >= EARLIEST && (most > LONG_STINT || padded || rising);
    return sure || (most >= 0 && (saysSo || late || (most > LONG_STINT && rising)));
  }

  /** Whether what is not clearly of the day is not clearly a length either. */
  private boolean areUnclear() {
    if (most < 0 || most >= 24 * HOUR) {
      return false;
    }
    if (least >= EARLIEST || most > LONG_STINT) {
      return true;
    }
    return least >= HOUR && falls == 0 && (rises >= MANY_RISES || most >= EARLIEST);
  }
}
