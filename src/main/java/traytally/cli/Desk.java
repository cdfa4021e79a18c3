package traytally.cli;

import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;

/**
 * What a command works with: where it writes, what time it is, what surrounds it.
 *
 * @param in what a person types or a pipe brings
 * @param out results and nothing else
 * @param err everything else
 * @param terminal whether a person at a terminal types what it reads and sees what it writes
 * @param apart makes a place ready for files that wait, such as a workbook's rows
 */
record Desk(
    InputStream in,
    PrintStream out,
    PrintStream err,
    Clock clock,
    Map<String, String> environment,
    boolean terminal,
    Runnable apart) {
  Desk {
    environment = Map.copyOf(environment);
  }

  /** The same desk, where results go nowhere: for steps whose results nobody asked for. */
  Desk quiet() {
    PrintStream nowhere =
        new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8);
    return new Desk(InputStream.nullInputStream(), nowhere, err, clock, environment, false, apart);
  }

  /** The variable's value, unless it is unset or empty. */
  Optional<String> variable(String name) {
    return Optional.ofNullable(environment.get(name)).filter(value -> !value.isEmpty());
  }
}
