package traytally.blackbox;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A disk of a few hundred kilobytes, which can be filled and made read-only; Linux, as root. */
final class SmallDisk implements AutoCloseable {
  private final Path at;

  private SmallDisk(Path at) {
    this.at = at;
  }

  /** Mounts one in {@code folder}, or skips the test where that may not be. */
  static SmallDisk in(Path folder) throws IOException {
    Path at = Files.createDirectory(folder.resolve("disk"));
    assumeTrue(
        Files.isExecutable(Path.of("/bin/mount"))
            && run("mount", "-t", "tmpfs", "-o", "size=600k", "tmpfs", at.toString()) == 0,
        "cannot mount a small disk here (that takes root): a full disk is not tried");
    return new SmallDisk(at);
  }

  Path folder() {
    return at;
  }

  /** Leaves {@code free} bytes on it, to the page. */
  void fill(long free) throws IOException {
    Path filler = at.resolve("filler");
    Files.deleteIfExists(filler);
    long usable = Files.getFileStore(at).getUsableSpace();
    Files.write(filler, new byte[(int) Math.max(0, usable - free)]);
  }

  void makeReadOnly() throws IOException {
    assertEquals(0, run("mount", "-o", "remount,ro", at.toString()));
  }

  private static int run(String... command) throws IOException {
    try {
      return new ProcessBuilder(command)
          .redirectErrorStream(true)
          .redirectOutput(ProcessBuilder.Redirect.DISCARD)
          .start()
          .waitFor();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException(e);
    }
  }

  @Override
  public void close() throws IOException {
    assertEquals(0, run("umount", at.toString()));
  }
}
