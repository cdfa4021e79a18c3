package traytally.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import traytally.ledger.Batch;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Posting;
import traytally.ledger.Recorded;
import traytally.ledger.Setting;
import traytally.ledger.Settings;
import traytally.plastic.Pieces;
import traytally.plastic.Plastic;

final class BoxTest {
  private static final Instant NOON = Instant.parse("2026-05-01T12:00:00Z");
  private static final Clock CLOCK = Clock.fixed(NOON, ZoneOffset.UTC);

  @TempDir Path folder;
  private Path file = Path.of("");

  @BeforeEach
  void nameTheBox() {
    file = folder.resolve("angler.box");
  }

  private Box open() {
    return Box.open(file, CLOCK);
  }

  private static Entry undo(Box box, long batch) {
    return box.undo(batch).entry(box.book());
  }

  /** Changes the file behind the box's back. */
  private static void tamper(Path box, String sql) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + box);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  private static BoxException.Kind refusal(Path box) {
    return assertThrows(BoxException.class, () -> Box.open(box, CLOCK).close()).kind();
  }

  @Test
  void everyFactComesBackAsItWasTold() {
    try (Box box = open()) {
      box.record(Sample.entry(List.of(), Sample.facts()));
    }
    try (Box box = open()) {
      List<Fact> read = box.book().facts().stream().<Fact>map(Recorded::what).toList();
      assertEquals(Sample.facts(), read);
      // Names are equal when folded, so their text is compared as well.
      assertEquals(Sample.facts().toString(), read.toString());
    }
  }

  @Test
  void everyKindOfFactIsInTheSample() {
    Set<Class<?>> kinds = new HashSet<>();
    Sample.facts().forEach(fact -> kinds.add(fact.getClass()));
    assertEquals(Set.of(Fact.class.getPermittedSubclasses()), kinds);
  }

  @Test
  void everyMovementComesBackInTheOrderRecorded() {
    try (Box box = open()) {
      box.record(Sample.entry(Sample.movements(), List.of()));
      List<Movement> read = box.book().ledger().movements().stream().map(Recorded::what).toList();
      assertEquals(Sample.movements(), read);
      assertEquals(Sample.movements().toString(), read.toString());
    }
  }

  @Test
  void batchesAreNumberedDatedAndKept() {
    try (Box box = open()) {
      assertEquals(1, box.record(Sample.opening(12)));
      assertEquals(2, box.record(Sample.entry(List.of(), List.of(new Fact.Kept(Sample.PADDLE)))));
      assertEquals(
          new Batch(1, NOON, "import", "sample", OptionalLong.empty(), OptionalLong.empty()),
          box.batches().get(0));
      assertEquals(List.of(1L, 2L), box.book().facts().stream().map(Recorded::batch).toList());
    }
  }

  @Test
  void twoSpellingsOfANameAreOnePlastic() throws SQLException {
    try (Box box = open()) {
      box.record(Sample.opening(12));
      Plastic shouted = Plastic.of("PLIMWICK", "Paddle", "Motor-Oil", 75);
      box.record(
          Sample.entry(
              List.of(Movement.of(Sample.MAY, MovementKind.BOUGHT, shouted, 3)), List.of()));
      assertEquals(
          "[paddle, motor oil, 75 mm (Plimwick)]", box.stock(Sample.MAY).keySet().toString());
      assertEquals(15, box.stock(Sample.MAY).get(Sample.PADDLE));
    }
  }

  @Test
  void stockAtADateIsWhatTheLedgerSays() {
    try (Box box = open()) {
      box.record(Sample.entry(Sample.movements(), List.of()));
      for (int day = -1; day < 8; day++) {
        var asOf = Sample.MAY.plusDays(day);
        var sums = new TreeMap<Plastic, Integer>();
        box.book().ledger().stock(asOf).forEach((p, pieces) -> sums.put(p, pieces.count()));
        assertEquals(sums, box.stock(asOf));
      }
      assertEquals(17, box.stock(LocalDate.MAX).get(Sample.PADDLE));
    }
  }

  @Test
  void settingsChosenLastHold() {
    try (Box box = open()) {
      assertEquals(Settings.standard(), box.settings());
      box.record(Sample.entry(List.of(), List.of(new Fact.Chosen(Setting.UNITS, "in"))));
      box.record(
          Sample.entry(
              List.of(),
              List.of(
                  new Fact.Chosen(Setting.UNITS, "mm"), new Fact.Chosen(Setting.CURRENCY, "GBP"))));
      assertEquals("mm", box.settings().get(Setting.UNITS));
      assertEquals("GBP", box.settings().get(Setting.CURRENCY));
      assertEquals(box.settings(), box.book().settings());
    }
  }

  @Test
  void entryThatFailsHalfWayLeavesNothing() {
    try (Box box = open()) {
      box.record(Sample.opening(12));
      Book before = box.book();
      Recorded<Fact> stranger =
          new Recorded<>(99, 1, new Fact.Kept(Plastic.of("", "worm", "black", 100)));
      List<Movement> many = new ArrayList<>();
      for (int i = 0; i < 5_000; i++) {
        many.add(Movement.of(Sample.MAY, MovementKind.BOUGHT, Sample.WORM, 1));
      }
      Entry entry =
          new Entry("import", "", OptionalLong.empty(), many, Sample.facts(), List.of(stranger));
      assertThrows(IllegalStateException.class, () -> box.record(entry));
      assertEquals(before.facts(), box.book().facts());
      assertEquals(before.batches(), box.book().batches());
      assertEquals(before.ledger().movements(), box.book().ledger().movements());
      assertEquals(2, box.record(Sample.entry(many, Sample.facts())));
    }
  }

  @Test
  void emptyEntryIsRefused() {
    try (Box box = open()) {
      assertThrows(
          IllegalArgumentException.class, () -> box.record(Sample.entry(List.of(), List.of())));
      assertEquals(List.of(), box.batches());
    }
  }

  @Test
  void movementsAreNeitherEditedNorDeleted() throws SQLException {
    try (Box box = open()) {
      box.record(Sample.opening(12));
    }
    for (String sql : List.of("UPDATE movements SET pieces = 99", "DELETE FROM movements")) {
      SQLException refused = assertThrows(SQLException.class, () -> tamper(file, sql));
      assertTrue(refused.toString().contains("a movement is never"), refused.toString());
    }
    try (Box box = open()) {
      assertEquals(12, box.stock(Sample.MAY).get(Sample.PADDLE));
    }
  }

  @Test
  void withdrawnFactIsGoneAndUndoPutsItBack() {
    try (Box box = open()) {
      box.record(Sample.entry(List.of(), List.of(new Fact.Kept(Sample.PADDLE))));
      Book before = box.book();
      long ended =
          box.record(
              new Entry(
                  "keep", "ends", OptionalLong.empty(), List.of(), List.of(), before.facts()));
      assertEquals(List.of(), box.book().facts());
      box.record(undo(box, ended));
      assertEquals(before.facts(), box.book().facts());
    }
  }

  @Test
  void undoOfAnUndoMakesTheFirstBatchStandAgain() {
    try (Box box = open()) {
      long first = box.record(Sample.entry(Sample.movements(), Sample.facts()));
      Book before = box.book();
      long undo = box.record(undo(box, first));
      assertEquals(List.of(), box.book().facts());
      assertEquals(0, box.stock(Sample.MAY.plusDays(9)).get(Sample.PADDLE));
      assertEquals(OptionalLong.of(undo), box.batches().get(0).undoneBy());
      assertEquals(OptionalLong.of(first), box.batches().get(1).undoes());

      long redo = box.record(undo(box, undo));
      assertEquals(before.facts(), box.book().facts());
      assertEquals(
          before.ledger().stock(Sample.MAY.plusDays(9)),
          box.book().ledger().stock(Sample.MAY.plusDays(9)));
      assertTrue(box.batches().get(0).stands());
      assertFalse(box.batches().get(1).stands());
      assertEquals(Set.of(redo), box.undo(first).blockers(box.book()));

      box.record(undo(box, redo));
      assertEquals(List.of(), box.book().facts());
      assertFalse(box.batches().get(0).stands());
      assertEquals(List.of(), box.check());
    }
  }

  @Test
  void editedStintMustBeRestoredBeforeItsBatchIsUndone() {
    try (Box box = open()) {
      Fact.Fished before =
          new Fact.Fished(Sample.fullStint(), box.book().nextStint(), 1, "trips.csv");
      long logged = box.record(fish(box, before, List.of()));
      Fact.Fished after = new Fact.Fished(Sample.fullStint(), before.number(), 2, "trips.csv");
      long edited = box.record(fish(box, after, box.book().recorded(Fact.Fished.class)));
      assertEquals(Set.of(edited), box.undo(logged).blockers(box.book()));
      box.record(undo(box, edited));
      assertEquals(List.of(before), box.book().facts(Fact.Fished.class));
      box.record(undo(box, logged));
      assertEquals(List.of(), box.book().facts());
      assertEquals(new Pieces(0), box.book().ledger().stock(Sample.PADDLE, Sample.MAY));
      assertEquals(2, box.book().nextStint());
    }
  }

  private static Entry fish(Box box, Fact.Fished fished, List<Recorded<Fact.Fished>> instead) {
    Book book = box.book();
    Posting posting = new Posting(book.ledger(), book.recorded(Fact.Counted.class));
    instead.forEach(
        old -> posting.takeBackStint(old.what().number(), old.what().stint().plastic(), "edited"));
    posting.fish(fished);
    return new Entry(
        "import",
        "log",
        OptionalLong.empty(),
        posting.movements(),
        List.of(fished),
        List.copyOf(instead));
  }

  @Test
  void batchUndoneAlreadyIsNotUndoneAgain() {
    try (Box box = open()) {
      long first = box.record(Sample.opening(12));
      Entry undo = undo(box, first);
      box.record(undo);
      assertThrows(IllegalStateException.class, () -> box.record(undo));
      assertThrows(IllegalStateException.class, () -> undo(box, first));
      assertThrows(IllegalArgumentException.class, () -> box.undo(7));
      assertEquals(2, box.batches().size());
    }
  }

  @Test
  void entryWorkedOutFromAnOldBookIsRefused() {
    try (Box mine = open();
        Box other = open()) {
      mine.book();
      other.record(Sample.opening(12));
      BoxException refused = assertThrows(BoxException.class, () -> mine.record(Sample.opening(5)));
      assertEquals(BoxException.Kind.BUSY, refused.kind());
      mine.book();
      assertEquals(2, mine.record(Sample.entry(List.of(), List.of(new Fact.Kept(Sample.WORM)))));
      assertEquals(3, mine.record(Sample.entry(List.of(), List.of(new Fact.Kept(Sample.PADDLE)))));
    }
  }

  @Test
  void boxThatAnotherProgramWritesIsBusy() throws SQLException {
    try (Box box = Box.open(file, CLOCK, Duration.ofMillis(50));
        Connection other = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement lock = other.createStatement()) {
      lock.execute("BEGIN EXCLUSIVE");
      BoxException busy = assertThrows(BoxException.class, () -> box.record(Sample.opening(1)));
      assertEquals(BoxException.Kind.BUSY, busy.kind());
      assertEquals(BoxException.Kind.BUSY, assertThrows(BoxException.class, box::book).kind());
      lock.execute("ROLLBACK");
      assertEquals(1, box.record(Sample.opening(1)));
    }
  }

  @Test
  void boxOfANewerProgramIsRefused() throws SQLException {
    open().close();
    tamper(file, "PRAGMA user_version = " + (Schema.VERSION + 1));
    assertEquals(BoxException.Kind.TOO_NEW, refusal(file));
  }

  @Test
  void fileThatIsNoBoxIsRefusedAndLeftAlone() throws Exception {
    Files.writeString(file, "Colour,Pieces\nmotor oil,12\n");
    byte[] before = Files.readAllBytes(file);
    assertEquals(BoxException.Kind.NOT_A_BOX, refusal(file));
    assertEquals(BoxException.Kind.NOT_A_BOX, refusal(folder));
    assertEquals(
        BoxException.Kind.NOT_A_BOX,
        assertThrows(BoxException.class, () -> Box.openExisting(file, CLOCK)).kind());
    assertEquals(-1, Arrays.mismatch(before, Files.readAllBytes(file)));
  }

  @Test
  void databaseOfAnotherProgramIsRefusedAndLeftAlone() throws Exception {
    tamper(file, "CREATE TABLE songs (title TEXT)");
    byte[] before = Files.readAllBytes(file);
    assertEquals(BoxException.Kind.NOT_A_BOX, refusal(file));
    try (Box box = Box.open(folder.resolve("other.box"), CLOCK)) {
      box.record(Sample.opening(12));
      assertEquals(
          BoxException.Kind.CANNOT_CREATE,
          assertThrows(BoxException.class, () -> box.backup(file)).kind());
    }
    assertEquals(-1, Arrays.mismatch(before, Files.readAllBytes(file)));
  }

  @Test
  void truncatedBoxIsSaidToBeDamaged() throws Exception {
    try (Box box = open()) {
      for (int i = 0; i < 20; i++) {
        box.record(Sample.entry(Sample.movements(), Sample.facts()));
      }
    }
    byte[] whole = Files.readAllBytes(file);
    for (int length : new int[] {50, 4_096, whole.length / 2, whole.length - 4_096}) {
      Files.write(file, Arrays.copyOf(whole, length));
      BoxException damaged =
          assertThrows(
              BoxException.class,
              () -> {
                try (Box box = open()) {
                  box.book();
                }
              },
              "length " + length);
      assertEquals(BoxException.Kind.NOT_A_BOX, damaged.kind(), "length " + length);
    }
  }

  @Test
  void valueNoProgramWroteIsSaidToBeDamage() throws Exception {
    try (Box box = open()) {
      box.record(Sample.entry(Sample.movements(), Sample.facts()));
    }
    tamper(file, "UPDATE stint SET date = 'yesterday'");
    try (Box box = open()) {
      BoxException damaged = assertThrows(BoxException.class, box::book);
      assertEquals(BoxException.Kind.NOT_A_BOX, damaged.kind());
      assertTrue(damaged.toString().contains("yesterday"), damaged.toString());
    }
  }

  @Test
  void newBoxAndItsFolderAreItsOwnersOnly() throws Exception {
    Path deep = folder.resolve("data/traytally/angler.box");
    Box.open(deep, CLOCK).close();
    if (folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      assertEquals("rw-------", rights(deep));
      assertEquals("rwx------", rights(folder.resolve("data")));
      assertEquals("rwx------", rights(folder.resolve("data/traytally")));
    }
  }

  private static String rights(Path path) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
  }

  @Test
  void boxThatCannotBeMadeIsSaidSo() throws Exception {
    Path blocked = Files.createFile(folder.resolve("blocked"));
    assertEquals(BoxException.Kind.CANNOT_CREATE, refusal(blocked.resolve("angler.box")));
  }

  @Test
  void readingMakesNoBox() {
    assertTrue(Box.openExisting(file, CLOCK).isEmpty());
    assertFalse(Files.exists(file));
    open().close();
    assertEquals(List.of(), Box.openExisting(file, CLOCK).orElseThrow().batches());
  }

  @Test
  void oddFileNamesAreNoOptionsToTheDriver() {
    file = folder.resolve("Köder? cache=shared&x #1 100%20.box");
    try (Box box = open()) {
      box.record(Sample.opening(12));
    }
    assertTrue(Files.exists(file));
    try (Box box = open()) {
      assertEquals(12, box.stock(Sample.MAY).get(Sample.PADDLE));
    }
  }

  @Test
  void nothingLiesBesideAClosedBox() throws Exception {
    try (Box box = open()) {
      box.record(Sample.opening(12));
      box.book();
    }
    try (var files = Files.list(folder)) {
      assertEquals(List.of(file), files.toList());
    }
  }
}
