package traytally.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteJDBCLoader;
import org.sqlite.util.LibraryLoaderUtil;

/** SQLite's own code is unpacked once for a person. */
class SqliteCodeTest {
  private static final String FOLDER = "org.sqlite.lib.path";
  private static final String NAME = "org.sqlite.lib.name";

  @TempDir private Path cache;

  private final Map<String, String> before = new HashMap<>();

  @BeforeEach
  void forget() {
    for (String property : List.of(FOLDER, NAME)) {
      String value = System.clearProperty(property);
      if (value != null) {
        before.put(property, value);
      }
    }
  }

  @AfterEach
  void remember() {
    System.clearProperty(FOLDER);
    System.clearProperty(NAME);
    before.forEach(System::setProperty);
  }

  @Test
  void whatTheDriverCarriesLiesWhereItLooksFirst() throws IOException {
    assertTrue(SqliteCode.in(cache));
    Path code = Path.of(System.getProperty(FOLDER), System.getProperty(NAME));
    assertTrue(code.startsWith(cache));
    String resource =
        LibraryLoaderUtil.getNativeLibResourcePath() + '/' + LibraryLoaderUtil.getNativeLibName();
    try (InputStream packed = SQLiteJDBCLoader.class.getResourceAsStream(resource)) {
      assertArrayEquals(packed.readAllBytes(), Files.readAllBytes(code));
    }
    try (Stream<Path> beside = Files.list(code.getParent())) {
      assertEquals(List.of(code), beside.toList());
    }
  }

  @Test
  void itIsUnpackedOnce() throws IOException {
    assertTrue(SqliteCode.in(cache));
    Path code = Path.of(System.getProperty(FOLDER), System.getProperty(NAME));
    FileTime longAgo = FileTime.fromMillis(1_000_000);
    Files.setLastModifiedTime(code, longAgo);
    System.clearProperty(FOLDER);
    assertTrue(SqliteCode.in(cache));
    assertEquals(longAgo, Files.getLastModifiedTime(code));
  }

  @Test
  void anInstalledProgramHasItsOwn() throws IOException {
    String own = Files.createDirectory(cache.resolve("own")).toString();
    System.setProperty(FOLDER, own);
    assertTrue(SqliteCode.in(cache));
    assertEquals(own, System.getProperty(FOLDER));
  }

  @Test
  void aFolderThatIsGoneIsNoHelp() {
    System.setProperty(FOLDER, cache.resolve("gone").toString());
    assertTrue(SqliteCode.in(cache));
    assertTrue(Files.isDirectory(Path.of(System.getProperty(FOLDER))));
  }

  @Test
  void whereItCannotLieTheDriverHelpsItself() throws IOException {
    Path file = Files.writeString(cache.resolve("file"), "");
    assertFalse(SqliteCode.in(file));
    assertNull(System.getProperty(FOLDER));
  }
}
