package traytally.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;

/**
 * A command that was run in this process, at noon on 1 May 2026, as nobody's terminal.
 *
 * @param code exit code
 */
public record Ran(int code, String out, String err) {
  private static final Clock NOON =
      Clock.fixed(Instant.parse("2026-05-01T12:00:00Z"), ZoneOffset.UTC);

  /** Runs {@code args} with the box {@code tray.box} in {@code folder}. */
  public static Ran in(Path folder, String... args) {
    return with(
        Map.of(
            "TRAYTALLY_BOX",
            folder.resolve("tray.box").toString(),
            "XDG_STATE_HOME",
            folder.resolve("state").toString()),
        args);
  }

  /** Runs {@code args} with these environment variables and no others. */
  public static Ran with(Map<String, String> environment, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Desk desk =
        new Desk(
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            NOON,
            environment,
            false);
    int code = new Program(desk).run(args);
    return new Ran(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}
