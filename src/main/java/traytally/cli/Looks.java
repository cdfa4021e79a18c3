package traytally.cli;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import traytally.ledger.Setting;
import traytally.ledger.Settings;
import traytally.render.LengthUnit;
import traytally.render.Look;
import traytally.render.Paper;

/** How results look to the person at this desk. */
final class Looks {
  /** Columns where nobody tells: text in a file or a pipe may be this wide. */
  private static final int UNTOLD_WIDTH = 100;

  private static final Pattern SIZE = Pattern.compile("\\d+ (\\d+)");

  private Looks() {}

  static Look of(Desk desk, Settings settings) {
    // https://no-color.org: set and not empty means no colour.
    boolean colour =
        desk.terminal()
            && desk.variable("NO_COLOR").isEmpty()
            && !desk.variable("TERM").equals(Optional.of("dumb"));
    LengthUnit unit = LengthUnit.parse(settings.get(Setting.UNITS)).orElse(LengthUnit.MM);
    Paper paper = Paper.parse(settings.get(Setting.PAPER)).orElse(Paper.A4);
    return Look.PLAIN
        .withWidth(width(desk))
        .withColour(colour)
        .withUnit(unit)
        .withLocale(locale())
        .withPaper(paper);
  }

  static Locale locale() {
    Locale locale = Locale.getDefault(Locale.Category.FORMAT);
    return locale.getLanguage().isEmpty() ? Locale.ROOT : locale;
  }

  /** COLUMNS if it is set, else what the terminal says of itself. */
  private static int width(Desk desk) {
    Optional<Integer> told =
        desk.variable("COLUMNS").filter(c -> c.matches("[1-9]\\d{0,4}")).map(Integer::valueOf);
    if (told.isPresent()) {
      return told.get();
    }
    return desk.terminal() ? terminalWidth().orElse(80) : UNTOLD_WIDTH;
  }

  /** POSIX systems: {@code stty size} asks the terminal; others do not answer. */
  private static Optional<Integer> terminalWidth() {
    try {
      Process stty =
          new ProcessBuilder("stty", "size")
              .redirectInput(new File("/dev/tty"))
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      String size = new String(stty.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
      Matcher rowsAndColumns = SIZE.matcher(size.strip());
      boolean told = stty.waitFor(1, TimeUnit.SECONDS) && rowsAndColumns.matches();
      return told ? Optional.of(Integer.parseInt(rowsAndColumns.group(1))) : Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }
}
