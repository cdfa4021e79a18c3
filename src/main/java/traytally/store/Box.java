package traytally.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.stream.Stream;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteErrorCode;
import traytally.ledger.Batch;
import traytally.ledger.Book;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Ledger;
import traytally.ledger.Movement;
import traytally.ledger.Recorded;
import traytally.ledger.Settings;
import traytally.ledger.Undo;
import traytally.plastic.Plastic;

/**
 * The angler's box on disk: one SQLite file.
 *
 * <p>The journal is SQLite's rollback journal, not its write-ahead log: a command writes once and
 * leaves, so the log's faster commits buy little, and with it a copied or synchronised file could
 * miss what still lies in the log beside it.
 *
 * <p>Not for use by several threads. Several programs may have one box open.
 */
public final class Box implements AutoCloseable {
  /** How long to wait for another program's write, which takes a second or two at most. */
  public static final Duration PATIENCE = Duration.ofSeconds(5);

  private final Path file;
  private final Clock clock;
  private final Connection connection;
  private final Transactions transactions;
  private OptionalInt seen = OptionalInt.empty();
  private Optional<Path> asItWas = Optional.empty();

  private Box(Path file, Clock clock, Connection connection) {
    this.file = file;
    this.clock = clock;
    this.connection = connection;
    this.transactions = new Transactions(file, connection);
  }

  /**
   * Opens the box in {@code file}, and makes it first if there is none: readable by its owner only.
   *
   * @throws BoxException if that cannot be
   */
  public static Box open(Path file, Clock clock) {
    return open(file, clock, PATIENCE);
  }

  /** The same, waiting {@code patience} for another program's write. */
  public static Box open(Path file, Clock clock, Duration patience) {
    Path whole = file.toAbsolutePath().normalize();
    sweep(whole);
    if (!Files.exists(whole)) {
      BoxFile.create(whole);
    }
    return connect(whole, clock, patience, true);
  }

  /**
   * Opens the box in {@code file} if there is one, and makes nothing.
   *
   * @throws BoxException if the file is not a box, or cannot be read
   */
  public static Optional<Box> openExisting(Path file, Clock clock) {
    return openExisting(file, clock, PATIENCE);
  }

  /** The same, waiting {@code patience} for another program's write. */
  public static Optional<Box> openExisting(Path file, Clock clock, Duration patience) {
    Path whole = file.toAbsolutePath().normalize();
    sweep(whole);
    return Files.exists(whole)
        ? Optional.of(connect(whole, clock, patience, true))
        : Optional.empty();
  }

  /** Takes away what a crash left of copies beside the box and in the folders named after it. */
  private static void sweep(Path file) {
    Path folder = file.getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      return;
    }
    try (Stream<Path> files = Files.list(folder)) {
      Part.sweep(folder);
      for (Path each : files.toList()) {
        if (each.getFileName().toString().startsWith(file.getFileName() + ".")
            && Files.isDirectory(each, LinkOption.NOFOLLOW_LINKS)) {
          Part.sweep(each);
        }
      }
    } catch (IOException | UncheckedIOException e) {
      // It is not for this to say that a folder cannot be read or written: the box itself can tell.
    }
  }

  /** Connects to a box; one of an older version is brought up to date, with a copy if asked. */
  static Box connect(Path file, Clock clock, Duration patience, boolean keepOld) {
    Box box = new Box(file, clock, BoxFile.connect(file, patience));
    try {
      box.prepare(keepOld);
      return box;
    } catch (SQLException e) {
      box.close();
      throw BoxException.of(file, e);
    } catch (RuntimeException e) {
      box.close();
      throw e;
    }
  }

  /** Checks that it is a box this program knows, and brings an older or empty one up to date. */
  private void prepare(boolean keepOld) throws SQLException {
    int found = found();
    if (found == Schema.VERSION) {
      return;
    }
    if (keepOld && found > 0) {
      asItWas = Optional.of(new Copies(file, connection).keepOld(clock.instant()));
    }
    transactions.transaction(
        "BEGIN IMMEDIATE",
        () -> {
          // Asked again: another program may have done it while this one waited for its turn.
          int version = found();
          if (version < Schema.VERSION) {
            Schema.migrate(connection, version);
          }
          return version;
        });
  }

  private int found() throws SQLException {
    int version = Schema.pragma(connection, "user_version");
    boolean marked = Schema.pragma(connection, "application_id") == Schema.APPLICATION_ID;
    if (!marked && (version != 0 || Schema.hasTables(connection))) {
      throw BoxException.notABox(file);
    }
    if (version > Schema.VERSION) {
      throw BoxException.tooNew("The box " + file);
    }
    return version;
  }

  /** The copy of the box as it was, if opening it brought an older one up to date. */
  public Optional<Path> asItWas() {
    return asItWas;
  }

  /**
   * Records one entry, all or nothing, and returns the number of its batch.
   *
   * @throws IllegalArgumentException if it would change nothing
   * @throws BoxException if another program has recorded something since this one read the book
   */
  public long record(Entry entry) {
    if (entry.isEmpty()) {
      throw new IllegalArgumentException("nothing to record: " + entry.command());
    }
    return transactions.writing(
        () -> {
          if (seen.isPresent() && seen.getAsInt() != state()) {
            throw new BoxException(
                BoxException.Kind.BUSY,
                "Another traytally changed the box " + file + " meanwhile. Try again.");
          }
          checkUndo(entry);
          return new Recording(connection)
              .write(entry, clock.instant().truncatedTo(ChronoUnit.MILLIS));
        });
  }

  private void checkUndo(Entry entry) throws SQLException {
    if (entry.undoes().isEmpty()) {
      return;
    }
    long undone = entry.undoes().getAsLong();
    if (Reading.batches(connection).stream().noneMatch(b -> b.id() == undone && b.stands())) {
      throw new IllegalStateException("no standing batch " + undone);
    }
  }

  /** A number that changes with every change by another program (sqlite.org/pragma.html). */
  private int state() throws SQLException {
    return Schema.pragma(connection, "data_version");
  }

  /**
   * A word for all that the box holds, another one after every change by whatever program: the
   * file's size, its time, SQLite's own count of changes, and the last batch.
   */
  public String edition() {
    return transactions.reading(() -> BoxFile.edition(file) + ' ' + Reading.lastBatch(connection));
  }

  /** All that stands in the box. */
  public Book book() {
    return transactions.reading(
        () -> {
          lookOver(Check.integrity(connection));
          Book book = new Reading(connection).book();
          seen = OptionalInt.of(state());
          return book;
        });
  }

  /** Looks over what is about to be read, which takes a fraction of reading it. */
  private void lookOver(List<String> faults) {
    if (!faults.isEmpty()) {
      throw BoxException.damaged(file, faults.get(0).replaceFirst("\\.$", ""));
    }
  }

  /** Every movement, without the rest of the book. */
  public Ledger ledger() {
    return transactions.reading(
        () -> {
          lookOver(Check.integrity(connection));
          return new Reading(connection).ledger();
        });
  }

  /**
   * The end of the ledger.
   *
   * @param newest the movements recorded last, in the order recorded
   * @param earlier how many there are before them
   */
  public record Newest(List<Recorded<Movement>> newest, long earlier) {
    public Newest {
      newest = List.copyOf(newest);
    }
  }

  /**
   * The newest {@code most} movements up to the end of {@code asOf}, without the others, and
   * without looking the file over for damage.
   */
  public Newest newestMovements(LocalDate asOf, int most) {
    return transactions.reading(
        () -> {
          Reading reading = new Reading(connection);
          List<Recorded<Movement>> newest = reading.newestMovements(asOf, most);
          return new Newest(newest, reading.countMovements(asOf) - newest.size());
        });
  }

  /** The stints that stand, in the order recorded, without the rest of the book. */
  public List<Fact.Fished> stints() {
    return transactions.reading(
        () -> {
          lookOver(Check.stints(connection));
          return new Reading(connection).stints();
        });
  }

  /**
   * Pieces by plastic at the end of {@code asOf}; a plastic that never moved is not in it. Read
   * from an index alone, without the rest of the book.
   */
  public SortedMap<Plastic, Integer> stock(LocalDate asOf) {
    return transactions.reading(() -> new Reading(connection).stock(asOf));
  }

  /** Every batch, in the order recorded. */
  public List<Batch> batches() {
    return transactions.reading(() -> List.copyOf(Reading.batches(connection)));
  }

  /** The angler's settings. */
  public Settings settings() {
    return transactions.reading(() -> Reading.settings(connection));
  }

  /**
   * What is needed to reverse a batch.
   *
   * @throws IllegalArgumentException if there is no such batch
   */
  public Undo undo(long batch) {
    return transactions
        .reading(() -> new Reading(connection).undo(batch))
        .orElseThrow(() -> new IllegalArgumentException("no batch " + batch));
  }

  /** What is wrong within the box, one sentence each; empty if nothing is. */
  public List<String> check() {
    return transactions.reading(() -> new Check(connection).problems());
  }

  /**
   * Writes a copy of the box to {@code target}, checked before it takes that name. An older box of
   * that name is replaced, so that putting a copy back is {@code backup} the other way round.
   *
   * @throws BoxException if it cannot be made, or if what is there is no box
   */
  public Path backup(Path target) {
    return new Copies(file, connection).copyTo(target.toAbsolutePath().normalize());
  }

  /**
   * Keeps a copy of the box in a folder beside it, and the last twenty such copies; none of an
   * empty box.
   */
  public Optional<Path> keepCopy() {
    return batches().isEmpty()
        ? Optional.empty()
        : Optional.of(new Copies(file, connection).keep(clock.instant()));
  }

  /** Keeps a dated copy of the box in {@code folder}, and the last {@code kept} such copies. */
  public Path backup(Path folder, int kept) {
    Path whole = folder.toAbsolutePath().normalize();
    return new Copies(file, connection).keep(whole, kept, clock.instant());
  }

  /**
   * Puts the copy {@code from} in the place of all that the box holds, which is kept as a dated
   * copy in {@code folder} first, one of the last {@code kept}.
   *
   * @return the box as it was
   * @throws BoxException if the copy is no box or not whole
   */
  public Path restore(Path from, Path folder, int kept) {
    Replacement replacement = new Replacement(file, clock);
    return replacement.with(
        Replacement.copyOf(from),
        from.toString(),
        copy -> {
          alone();
          Path before = backup(folder, kept);
          fillFrom(copy);
          return before;
        });
  }

  /** Keeps every other program out until the box is closed. */
  private void alone() {
    try {
      transactions.execute("PRAGMA main.locking_mode = EXCLUSIVE");
      transactions.execute("BEGIN EXCLUSIVE");
      transactions.execute("COMMIT");
    } catch (SQLException e) {
      throw BoxException.of(file, e);
    }
  }

  /**
   * Takes over all that {@code other} holds in one transaction of SQLite's: programs that have this
   * box open see it changed, which they would not if another file took its name.
   */
  void fillFrom(Box other) {
    try {
      int code =
          connection
              .unwrap(SQLiteConnection.class)
              .getDatabase()
              .restore("main", other.file().toString(), (remaining, pages) -> {});
      if (code != SQLiteErrorCode.SQLITE_OK.code) {
        throw new SQLException("the copy cannot be taken over", "", code);
      }
    } catch (SQLException e) {
      throw BoxException.of(file, e);
    }
  }

  /** Hands the rows of every table out. */
  public void export(TableSink sink) throws IOException {
    try {
      transactions.execute("BEGIN");
      try {
        new Tables(connection).pour(sink);
      } finally {
        transactions.execute("ROLLBACK");
      }
    } catch (SQLException e) {
      throw BoxException.of(file, e);
    }
  }

  Path file() {
    return file;
  }

  /** The version of the tables that every open box has. */
  public static int version() {
    return Schema.VERSION;
  }

  @Override
  public void close() {
    try {
      connection.close();
    } catch (SQLException e) {
      throw BoxException.of(file, e);
    }
  }
}
