package traytally.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Map;

/**
 * A command that was run in this process, at noon on 1 May 2026, as nobody's terminal.
 *
 * @param code exit code
 */
public record Ran(int code, String out, String err) {
  private static final Clock NOON =
      Clock.fixed(Instant.parse("2026-05-01T12:00:00Z"), ZoneOffset.UTC);

  private static final String CACHE = "XDG_CACHE_HOME";

  /** Runs {@code args} with the box {@code tray.box} in {@code folder}. */
  public static Ran in(Path folder, String... args) {
    return with(environment(folder), args);
  }

  /**
   * The same at a terminal, where a person types {@code keys}; what stands between two NUL
   * characters is not typed but waited for.
   */
  public static Ran typing(Path folder, String keys, String... args) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    return run(environment(folder), new Typist(keys, err), err, true, args);
  }

  /** In what is typed: waits until {@code shown} has been shown. */
  public static String once(String shown) {
    return '\0' + shown + '\0';
  }

  /** The same with {@code lines} piped in. */
  public static Ran piping(Path folder, String lines, String... args) {
    return run(environment(folder), bytes(lines), new ByteArrayOutputStream(), false, args);
  }

  private static Map<String, String> environment(Path folder) {
    return Map.of(
        "TRAYTALLY_BOX",
        folder.resolve("tray.box").toString(),
        "XDG_STATE_HOME",
        folder.resolve("state").toString(),
        CACHE,
        folder.resolve("cache").toString());
  }

  /** Imports the lists of {@code demo-data} into that box, the tray counted in March. */
  public static void importDemo(Path folder) {
    Ran ran =
        in(
            folder,
            "import",
            "demo-data/tray.xlsx",
            "demo-data/trips.xlsx",
            "demo-data/plan.xlsx",
            "demo-data/prices.xlsx",
            "--count-date",
            "2026-03-15");
    assertEquals(0, ran.code(), ran.err());
  }

  /**
   * Runs {@code args} with these environment variables and, for what is worked out, the build's.
   */
  public static Ran with(Map<String, String> environment, String... args) {
    Map<String, String> whole = new HashMap<>(environment);
    whole.putIfAbsent(CACHE, Path.of("target", "cache").toAbsolutePath().toString());
    return run(whole, bytes(""), new ByteArrayOutputStream(), false, args);
  }

  private static InputStream bytes(String text) {
    return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
  }

  private static Ran run(
      Map<String, String> environment,
      InputStream in,
      ByteArrayOutputStream err,
      boolean terminal,
      String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Desk desk =
        new Desk(
            in,
            new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8),
            NOON,
            environment,
            terminal,
            () -> {});
    int code = new Program(desk).run(args);
    return new Ran(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}
