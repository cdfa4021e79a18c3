package traytally.cli;

import java.io.PrintStream;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;

/**
 * A line on standard error that says how far a long command has come: from one second on, only for
 * a person at a terminal, and gone when the command ends.
 */
final class Progress implements AutoCloseable {
  /** What ends sooner needs no word (common practice). */
  private static final Duration PATIENCE = Duration.ofSeconds(1);

  /** Faster than this nobody reads (an assumption). */
  private static final Duration BETWEEN = Duration.ofMillis(200);

  private final Desk desk;
  private Instant next;
  private int shown;

  Progress(Desk desk) {
    this.desk = desk;
    this.next = desk.clock().instant().plus(PATIENCE);
  }

  /** Says that so many rows of a file are read. */
  void read(String file, int rows) {
    say("Reading %s: %,d rows", file, rows);
  }

  /** Says that what was read is being compared with the box. */
  void compare() {
    say("Comparing with the box");
  }

  /** Says that so many changes are being recorded. */
  void record(int changes) {
    say("Recording %,d changes", changes);
  }

  /** Says that so many trips of a log are gone through again. */
  void replay(int done, int of) {
    say("Replaying trip %,d of %,d", done, of);
  }

  private void say(String words, Object... values) {
    if (!desk.terminal() || desk.clock().instant().isBefore(next)) {
      return;
    }
    next = desk.clock().instant().plus(BETWEEN);
    String line = String.format(Locale.ROOT, words, values);
    PrintStream err = desk.err();
    err.print("\r" + line + " ".repeat(Math.max(0, shown - line.length())));
    err.flush();
    shown = line.length();
  }

  /** Wipes the line. */
  @Override
  public void close() {
    if (shown > 0) {
      desk.err().print("\r" + " ".repeat(shown) + "\r");
      desk.err().flush();
      shown = 0;
    }
  }
}
