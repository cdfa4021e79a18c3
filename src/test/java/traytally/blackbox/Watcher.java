package traytally.blackbox;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.SocketPermission;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.Permission;

/**
 * Refuses and writes down every use of the network, every program started and every look at a file
 * whose name has the word bait; set by {@code -Djava.security.manager}.
 */
@SuppressWarnings("removal") // Java has nothing else that sees all of it; up to Java 23 it works.
public final class Watcher extends SecurityManager {
  private final Path record = Path.of(System.getProperty("watched"));

  @Override
  public void checkPermission(Permission permission) {
    if (permission instanceof SocketPermission) {
      refuse(permission.toString());
    }
  }

  @Override
  public void checkPermission(Permission permission, Object context) {
    checkPermission(permission);
  }

  @Override
  public void checkRead(String file) {
    if (file.contains("bait")) {
      refuse("read " + file);
    }
  }

  @Override
  public void checkExec(String program) {
    refuse("start " + program);
  }

  private void refuse(String what) {
    try {
      Files.write(
          record,
          (what + "\n").getBytes(StandardCharsets.UTF_8),
          StandardOpenOption.CREATE,
          StandardOpenOption.APPEND);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    throw new SecurityException(what);
  }
}
