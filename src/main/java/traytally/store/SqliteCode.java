package traytally.store;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.sqlite.SQLiteJDBCLoader;
import org.sqlite.util.LibraryLoaderUtil;

/**
 * SQLite's own code for this system, unpacked once for a person and not at every start, which takes
 * its driver longer than to open a box.
 */
public final class SqliteCode {
  /** The driver looks there first; an installed program has its code in a folder of its own. */
  private static final String FOLDER = "org.sqlite.lib.path";

  private static final String NAME = "org.sqlite.lib.name";
  private static final String FILE = "sqlite.code";

  private SqliteCode() {}

  /**
   * Lets the driver take its code from within {@code cache}, unpacked there first if it is not yet.
   *
   * @return whether the driver needs to unpack nothing
   */
  public static boolean in(Path cache) {
    String known = System.getProperty(FOLDER);
    if (known != null && Files.isDirectory(Path.of(known))) {
      return true;
    }
    String system = System.getProperty("os.name") + " " + System.getProperty("os.arch");
    Path folder =
        cache.resolve(("sqlite " + SQLiteJDBCLoader.getVersion() + " " + system).replace(' ', '-'));
    Path code = folder.resolve(FILE);
    try {
      if (!Files.exists(code)) {
        Files.createDirectories(folder);
        Part.write(code, SqliteCode::unpack);
      }
    } catch (IOException e) {
      // No room, no rights, no such system: the driver says what is wrong, if it cannot either.
      return false;
    }
    System.setProperty(FOLDER, folder.toString());
    System.setProperty(NAME, FILE);
    return true;
  }

  private static void unpack(OutputStream to) throws IOException {
    String resource =
        LibraryLoaderUtil.getNativeLibResourcePath() + '/' + LibraryLoaderUtil.getNativeLibName();
    try (InputStream packed = SQLiteJDBCLoader.class.getResourceAsStream(resource)) {
      if (packed == null) {
        throw new FileNotFoundException(resource);
      }
      packed.transferTo(to);
    }
  }
}
