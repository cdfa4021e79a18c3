package traytally.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Movement;
import traytally.ledger.Recorded;

/** Boxes made by every version of the schema: what an angler wrote must open for ever. */
final class OldBoxTest {
  private static final Path BOXES = Path.of("src/test/resources/boxes");
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-05-01T12:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;

  static List<Integer> versions() {
    return java.util.stream.IntStream.rangeClosed(1, Schema.VERSION).boxed().toList();
  }

  /** Writes the newest version's box anew, while that version is not released yet. */
  private void makeNewest() throws IOException {
    Path made = folder.resolve("made.box");
    try (Box box = Box.open(made, CLOCK)) {
      box.record(Sample.entry(Sample.movements(), Sample.facts()));
      box.record(
          new Entry(
              "keep",
              "kept",
              OptionalLong.empty(),
              List.of(),
              List.of(new Fact.Kept(Sample.WORM)),
              List.of()));
      box.record(box.undo(2).entry(box.book()));
    }
    Files.copy(
        made, BOXES.resolve("v" + Schema.VERSION + ".box"), StandardCopyOption.REPLACE_EXISTING);
  }

  private Path copyOf(int version) throws IOException {
    Path file = folder.resolve("tray.box");
    return Files.copy(BOXES.resolve("v" + version + ".box"), file);
  }

  @ParameterizedTest
  @MethodSource("versions")
  void boxOfEachVersionOpensAndHoldsWhatItHeld(int version) throws IOException {
    if (version == Schema.VERSION && Boolean.getBoolean("box.update")) {
      makeNewest();
    }
    Path file = copyOf(version);
    try (Box box = Box.open(file, CLOCK)) {
      Book book = box.book();
      assertEquals(
          Sample.facts(version).toString(),
          book.facts().stream().<Fact>map(Recorded::what).toList().toString());
      assertEquals(
          Sample.movements().toString(),
          book.ledger().movements().stream().<Movement>map(Recorded::what).toList().toString());
      assertEquals(3, book.batches().size());
      assertEquals(OptionalLong.of(3), book.batches().get(1).undoneBy());
      assertEquals(List.of(), box.check());
      // It can still be undone, redone and written to.
      assertEquals(4, box.record(box.undo(3).entry(book)));
      assertEquals(2, box.book().kept().size());
    }
  }

  @ParameterizedTest
  @MethodSource("versions")
  void boxOfEachVersionHasTheTablesOfANewOne(int version) throws IOException, SQLException {
    Path file = copyOf(version);
    Path fresh = folder.resolve("fresh.box");
    Box.open(file, CLOCK).close();
    Box.open(fresh, CLOCK).close();
    assertEquals(tables(fresh), tables(file));
  }

  private static Map<String, String> tables(Path file) throws SQLException {
    Map<String, String> tables = new TreeMap<>();
    try (Connection box = BoxFile.connect(file, Duration.ZERO);
        var select = box.prepareStatement("SELECT name, COALESCE(sql, '') FROM sqlite_schema");
        var rows = select.executeQuery()) {
      while (rows.next()) {
        tables.put(rows.getString(1), rows.getString(2));
      }
    }
    assertTrue(tables.containsKey("movements"));
    return tables;
  }

  @Test
  void boxOfAnOlderVersionIsCopiedBeforeItIsBroughtUpToDate() throws IOException {
    Path file = copyOf(1);
    byte[] before = Files.readAllBytes(file);
    Path copy;
    try (Box box = Box.open(file, CLOCK)) {
      copy = box.asItWas().orElseThrow();
    }
    assertEquals(folder.resolve("tray.box.before-update"), copy.getParent());
    // Written page by page, so not the same bytes; but it is a whole box of the old version.
    assertEquals(version(before), version(Files.readAllBytes(copy)));
    assertEquals(2, version(Files.readAllBytes(file)));
    Files.delete(file);
    Replacement.restore(copy, file, CLOCK);
    try (Box box = Box.open(file, CLOCK)) {
      assertEquals(Optional.empty(), box.asItWas());
      assertEquals(Sample.facts(1).size(), box.book().facts().size());
    }
  }

  /** The user version: bytes 60 to 63 of the file (sqlite.org/fileformat2.html, 1.3). */
  private static int version(byte... file) {
    return java.nio.ByteBuffer.wrap(file).getInt(60);
  }
}
