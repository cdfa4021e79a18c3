package traytally.store;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A file or folder that is written beside its place, and takes its name only when it is whole and
 * on the disk: a crash at any moment leaves what was there, or all of the new. For its owner only.
 *
 * <p>What a crash leaves of it carries the number of the process that made it, and is swept away by
 * the next one that writes there, or opens the box there.
 */
public final class Part implements AutoCloseable {
  private static final String PREFIX = ".traytally-";
  private static final String ENDING = ".part";

  /** A part, or the journal of one that SQLite fills. */
  private static final Pattern NAME =
      Pattern.compile("\\.traytally-(\\d{1,18})-\\d+\\.part(-journal)?");

  private final Path path;
  private final Path target;

  private Part(Path path, Path target) {
    this.path = path;
    this.target = target;
  }

  /** Writes bytes. */
  @FunctionalInterface
  public interface Content {
    void to(OutputStream stream) throws IOException;
  }

  /** Writes the file {@code target} whole or not at all, over what was there. */
  public static void write(Path target, Content content) throws IOException {
    try (Part part = beside(target)) {
      try (OutputStream stream = new BufferedOutputStream(Files.newOutputStream(part.path))) {
        content.to(stream);
      }
      part.take();
    }
  }

  /** An empty file that is to become {@code target}. */
  static Part beside(Path target) throws IOException {
    Path place = place(target);
    Path path = free(place);
    Files.createFile(path, BoxFile.ownerOnly(path, "rw-------"));
    return new Part(path, place);
  }

  /** An empty folder that is to become {@code target}, or to hold what waits. */
  public static Part folderBeside(Path target) throws IOException {
    Path place = target.toAbsolutePath().normalize();
    Path path = free(place);
    Files.createDirectory(path, BoxFile.ownerOnly(path, "rwx------"));
    return new Part(path, place);
  }

  /** Where it lies until it is whole. */
  public Path path() {
    return path;
  }

  /** A file within it, if it is a folder. */
  public OutputStream file(String name) throws IOException {
    Path file = path.resolve(name);
    Files.createFile(file, BoxFile.ownerOnly(file, "rw-------"));
    return new BufferedOutputStream(Files.newOutputStream(file));
  }

  /** Gives it its name, once all of it is on the disk. A folder may take an empty one's place. */
  public void take() throws IOException {
    if (Files.isDirectory(path)) {
      for (Path file : files(path)) {
        force(file);
      }
      forceFolder(path);
      // A rename does not take an empty folder's place everywhere.
      Files.deleteIfExists(target);
    }
    replace(path, target);
  }

  /** Renames {@code from}, whose bytes are brought to the disk first, over {@code target}. */
  static void replace(Path from, Path target) throws IOException {
    if (!Files.isDirectory(from)) {
      force(from);
    }
    Files.move(from, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    Path folder = target.getParent();
    if (folder != null) {
      forceFolder(folder);
    }
  }

  /** Takes away what did not become anything. */
  @Override
  public void close() throws IOException {
    drop(path);
  }

  /** Takes away what processes that are no more left in {@code folder}. */
  static void sweep(Path folder) throws IOException {
    for (Path file : files(folder)) {
      Matcher name = NAME.matcher(String.valueOf(file.getFileName()));
      if (name.matches() && ProcessHandle.of(Long.parseLong(name.group(1))).isEmpty()) {
        drop(file);
      }
    }
  }

  /** A name beside {@code place} that nothing has, once what others left there is swept away. */
  private static Path free(Path place) throws IOException {
    Path folder = place.getParent();
    if (folder == null) {
      throw new IOException("it is no file");
    }
    sweep(folder);
    int number = 1;
    while (Files.exists(named(folder, number), LinkOption.NOFOLLOW_LINKS)) {
      number++;
    }
    return named(folder, number);
  }

  private static Path named(Path folder, int number) {
    return folder.resolve(PREFIX + ProcessHandle.current().pid() + "-" + number + ENDING);
  }

  /** What a link points at is replaced, not the link. */
  private static Path place(Path target) throws IOException {
    return Files.isSymbolicLink(target) && Files.exists(target)
        ? target.toRealPath()
        : target.toAbsolutePath().normalize();
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }

  private static void drop(Path path) throws IOException {
    if (Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS)) {
      for (Path file : files(path)) {
        Files.deleteIfExists(file);
      }
    }
    Files.deleteIfExists(path);
  }

  private static void force(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }

  /** Brings a rename to the disk, where the system lets a folder be opened for that. */
  private static void forceFolder(Path folder) {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // Not every system does that for a folder (Windows, some network drives); then the journal of
      // its own file system has to keep the name.
    }
  }
}
