package traytally.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.ledger.Book;
import traytally.ledger.Fact;

final class CopiesTest {
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-05-01T12:00:00Z"), ZoneOffset.UTC);

  @TempDir Path folder;

  /** A clock that a test moves on. */
  private static final class Hands extends Clock {
    private Instant now = Instant.parse("2026-05-01T12:00:00Z");

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return now;
    }
  }

  private static void assertSameBook(Book expected, Book actual) {
    assertEquals(expected.batches(), actual.batches());
    assertEquals(expected.facts(), actual.facts());
    assertEquals(expected.ledger().movements(), actual.ledger().movements());
    assertEquals(expected.settings(), actual.settings());
  }

  private static List<Path> list(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }

  @Test
  void backupHoldsAllThatTheBoxHolds() throws IOException {
    try (Box box = Box.open(folder.resolve("angler.box"), CLOCK)) {
      box.record(Sample.entry(Sample.movements(), Sample.facts()));
      Path copy = box.backup(folder.resolve("safe/copy.box"));
      try (Box other = Box.openExisting(copy, CLOCK).orElseThrow()) {
        assertSameBook(box.book(), other.book());
        assertEquals(List.of(), other.check());
      }
      assertEquals(List.of(copy), list(folder.resolve("safe")));
    }
  }

  @Test
  void backupReplacesAnOlderOneAndPutsItBack() {
    Path file = folder.resolve("angler.box");
    Path copy = folder.resolve("copy.box");
    Book kept;
    try (Box box = Box.open(file, CLOCK)) {
      box.record(Sample.opening(12));
      box.backup(copy);
      box.record(Sample.entry(List.of(), List.of(new Fact.Kept(Sample.PADDLE))));
      box.backup(copy);
      kept = box.book();
      box.record(Sample.entry(List.of(), List.of(new Fact.Kept(Sample.WORM))));
    }
    try (Box other = Box.openExisting(copy, CLOCK).orElseThrow()) {
      assertSameBook(kept, other.book());
      other.backup(file);
    }
    try (Box back = Box.open(file, CLOCK)) {
      assertSameBook(kept, back.book());
    }
  }

  @Test
  void backupNeverReplacesTheBoxItselfOrAnythingElse() throws IOException {
    Path file = folder.resolve("angler.box");
    Path list = Files.writeString(folder.resolve("tray.csv"), "Colour,Pieces\n");
    try (Box box = Box.open(file, CLOCK)) {
      box.record(Sample.opening(12));
      for (Path target : List.of(file, list, folder)) {
        BoxException refused =
            assertThrows(BoxException.class, () -> box.backup(target), target.toString());
        assertEquals(BoxException.Kind.CANNOT_CREATE, refused.kind());
      }
      assertEquals("Colour,Pieces\n", Files.readString(list));
      assertEquals(List.of(file, list), list(folder));
    }
  }

  @Test
  void emptyBoxNeedsNoCopy() {
    Path file = folder.resolve("angler.box");
    try (Box box = Box.open(file, CLOCK)) {
      assertEquals(Optional.empty(), box.keepCopy());
      assertFalse(Files.exists(Copies.folder(file)));
    }
  }

  @Test
  void lastTwentyCopiesAreKept() throws IOException {
    Hands clock = new Hands();
    Path file = folder.resolve("angler.box");
    try (Box box = Box.open(file, clock)) {
      for (int i = 1; i <= 23; i++) {
        box.record(Sample.entry(List.of(), List.of(new Fact.Kept(Sample.WORM))));
        // Two imports within one second now and then.
        clock.now = clock.now.plusSeconds(i % 2 == 0 ? 0 : 3_600);
        Path copy = box.keepCopy().orElseThrow();
        assertEquals(Copies.folder(file), copy.getParent());
      }
      Path mine = Files.createFile(Copies.folder(file).resolve("mine.txt"));
      box.keepCopy();
      assertTrue(Files.exists(mine));
      Files.delete(mine);
    }
    List<Path> copies = list(Copies.folder(file));
    assertEquals(20, copies.size());
    try (Box oldest = Box.openExisting(copies.get(0), clock).orElseThrow();
        Box newest = Box.openExisting(copies.get(19), clock).orElseThrow()) {
      assertEquals(5, oldest.batches().size());
      assertEquals(23, newest.batches().size());
    }
  }

  @Test
  void checkTellsWhatIsWrong() throws SQLException {
    Path file = folder.resolve("angler.box");
    try (Box box = Box.open(file, CLOCK)) {
      box.record(Sample.opening(12));
      assertEquals(List.of(), box.check());
      tamper(
          file,
          """
          INSERT INTO movements (batch, date, kind, plastic, pieces, stint, reverses, note)
          VALUES (1, '2026-05-02', 'lost', 1, -13, 99, 0, '')
          """);
      assertEquals(
          List.of(
              "The ledger holds fewer than no pieces of paddle, motor oil, 75 mm (Plimwick)"
                  + " on 2026-05-02: -1.",
              "Movements belong to stint 99, which is missing."),
          box.check());
      tamper(file, "INSERT INTO kept (added_by, plastic) VALUES (77, 1)");
      assertEquals("Row 1 of kept refers to a row of batches that is missing.", box.check().get(0));
    }
  }

  @Test
  void checkTellsWhereTheLedgerLeftACount() throws SQLException {
    Path file = folder.resolve("angler.box");
    try (Box box = Box.open(file, CLOCK)) {
      box.record(Sample.opening(12));
      tamper(file, "UPDATE counted SET pieces = 11");
      assertEquals(
          List.of(
              "The ledger holds 12 pieces of paddle, motor oil, 75 mm (Plimwick), but its counts"
                  + " and what happened since come to 11."),
          box.check());
    }
  }

  private static void tamper(Path box, String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + box);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }
}
