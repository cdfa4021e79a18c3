package traytally.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Arrays;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteOpenMode;

/** The file a box lies in: made for its owner only, and connected to. */
final class BoxFile {
  /** The first bytes of every SQLite file (sqlite.org/fileformat2.html, 1.2). */
  private static final byte[] HEADER = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

  /** Where SQLite counts the changes of the file: bytes 24 to 27, big-endian (same page, 1.3.7). */
  private static final int CHANGES = 24;

  /** Where the application id ends in a SQLite file: bytes 68 to 71, big-endian (same page). */
  private static final int MARK_END = 72;

  private BoxFile() {}

  /** Makes an empty file, and the folders on the way to it. */
  static void create(Path file) {
    try {
      Path folder = file.getParent();
      if (folder != null) {
        createFolders(folder);
      }
      Files.createFile(file, ownerOnly(file, "rw-------"));
    } catch (FileAlreadyExistsException e) {
      // Another program made it meanwhile, unless a file stands where the folder should.
      if (!Files.exists(file)) {
        throw cannotCreate(file, e);
      }
    } catch (IOException e) {
      throw cannotCreate(file, e);
    }
  }

  static void createFolders(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      Files.createDirectories(folder, ownerOnly(folder, "rwx------"));
    }
  }

  static BoxException cannotCreate(Path file, IOException cause) {
    return new BoxException(
        BoxException.Kind.CANNOT_CREATE,
        file
            + " cannot be made ("
            + reason(cause)
            + "). Choose another place, or check who may write there.",
        cause);
  }

  /** Why, in the words of the system, without the names of our classes. */
  private static String reason(IOException cause) {
    if (cause instanceof AccessDeniedException) {
      return "you may not write there";
    }
    String reason =
        cause instanceof FileSystemException system ? system.getReason() : cause.getMessage();
    return reason == null ? "the system refuses it" : reason;
  }

  /** Rights for a new file or folder, where the file system knows such rights. */
  static FileAttribute<?>[] ownerOnly(Path file, String rights) {
    return file.getFileSystem().supportedFileAttributeViews().contains("posix")
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(rights))
        }
        : new FileAttribute<?>[0];
  }

  /**
   * How much of the box SQLite may hold, in KiB, which it counts below zero: the index of a million
   * movements, which a long import fills in no order, and which otherwise goes to the disk and
   * back.
   */
  private static final int CACHE_KIB = -32 * 1024;

  /** Connects to the SQLite file, waiting {@code patience} for a lock. */
  static Connection connect(Path file, Duration patience) {
    if (!isSqlite(file)) {
      throw BoxException.notABox(file);
    }
    SQLiteConfig config = new SQLiteConfig();
    config.resetOpenMode(SQLiteOpenMode.CREATE);
    config.enforceForeignKeys(true);
    config.setBusyTimeout(Math.toIntExact(patience.toMillis()));
    config.setCacheSize(CACHE_KIB);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    try {
      // As an address, so that a question mark in a file's name is no option to the driver.
      return config.createConnection("jdbc:sqlite:" + file.toUri());
    } catch (SQLException e) {
      throw BoxException.of(file, e);
    }
  }

  /**
   * Takes the journal of a box away that is about to be replaced, and would spoil the new one. What
   * a crash left in it is put right in the box first, so that another crash now loses nothing.
   */
  static void dropJournal(Path file) throws IOException {
    Path journal = journal(file);
    if (Files.exists(journal) && isBox(file)) {
      try (Connection connection = connect(file, Box.PATIENCE)) {
        Schema.hasTables(connection);
      } catch (SQLException e) {
        throw BoxException.of(file, e);
      }
    }
    Files.deleteIfExists(journal);
  }

  /** SQLite's own name for it (sqlite.org/tempfiles.html, 2.1). */
  static Path journal(Path file) {
    return file.resolveSibling(file.getFileName() + "-journal");
  }

  /** Whether the file begins as a SQLite file does, or is empty, as one just made. */
  static boolean isSqlite(Path file) {
    byte[] start = start(file);
    return Files.isRegularFile(file)
        && (start.length == 0 || Arrays.equals(Arrays.copyOf(start, HEADER.length), HEADER));
  }

  /** Whether the file carries the mark of a box. */
  static boolean isBox(Path file) {
    byte[] start = start(file);
    return isSqlite(file)
        && start.length == MARK_END
        && ByteBuffer.wrap(start).getInt(MARK_END - Integer.BYTES) == Schema.APPLICATION_ID;
  }

  /** What tells one state of the file from another, as far as the file itself can. */
  static String edition(Path file) {
    byte[] start = start(file);
    int changes = start.length == MARK_END ? ByteBuffer.wrap(start).getInt(CHANGES) : 0;
    try {
      return Files.size(file) + " " + Files.getLastModifiedTime(file) + " " + changes;
    } catch (IOException e) {
      throw unreadable(file, e);
    }
  }

  private static byte[] start(Path file) {
    if (!Files.isRegularFile(file)) {
      return new byte[0];
    }
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(MARK_END);
    } catch (IOException e) {
      throw unreadable(file, e);
    }
  }

  private static BoxException unreadable(Path file, IOException cause) {
    return new BoxException(
        BoxException.Kind.IO,
        file + " cannot be read (" + cause + "). Check who may read it.",
        cause);
  }
}
