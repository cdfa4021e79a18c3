package traytally.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.List;
import org.sqlite.SQLiteErrorCode;

/**
 * Puts something in the place of a box: it is made in a file of its own first, brought up to date
 * and checked there, and takes the place only then. Until it does, what was there stays.
 */
public final class Replacement {
  private final Path target;
  private final Clock clock;

  Replacement(Path target, Clock clock) {
    this.target = target;
    this.clock = clock;
  }

  /** Makes a file that is to become the box. */
  @FunctionalInterface
  interface Maker {
    void make(Path fresh) throws IOException;
  }

  /** Lets what was made take the place of the box. */
  @FunctionalInterface
  interface Taker<T> {
    T take(Box fresh) throws IOException;
  }

  static Maker copyOf(Path from) {
    return fresh -> Files.copy(from, fresh);
  }

  /**
   * Makes the copy {@code from} the box {@code file}, where there is none yet.
   *
   * @throws BoxException if it is no box or not whole
   */
  public static void restore(Path from, Path file, Clock clock) {
    Path target = file.toAbsolutePath().normalize();
    new Replacement(target, clock)
        .with(copyOf(from), from.toString(), fresh -> fresh.backup(target));
  }

  /**
   * Puts the copy {@code from} in the place of a box that cannot be opened, which is put aside once
   * the copy is whole beside it.
   *
   * @return where what was there lies now
   * @throws BoxException if the copy is no box or not whole
   */
  public static Path restoreAside(Path from, Path file, Clock clock) {
    Path target = file.toAbsolutePath().normalize();
    return new Replacement(target, clock)
        .with(
            copyOf(from),
            from.toString(),
            fresh -> {
              Path whole = fresh.backup(fresh.file().resolveSibling("whole.box"));
              Path aside = putAside(target);
              Part.replace(whole, target);
              return aside;
            });
  }

  /** A second name for what lies at {@code target}, so that something always does. */
  private static Path putAside(Path target) throws IOException {
    Path aside = aside(target);
    secondName(target, aside);
    // A journal left by a crash belongs to the box put aside, and would spoil the new one.
    if (Files.exists(BoxFile.journal(target))) {
      secondName(BoxFile.journal(target), BoxFile.journal(aside));
      Files.delete(BoxFile.journal(target));
    }
    return aside;
  }

  private static void secondName(Path file, Path name) throws IOException {
    try {
      Files.createLink(name, file);
    } catch (UnsupportedOperationException | IOException e) {
      // Not every file system gives a file two names.
      Part.write(name, out -> Files.copy(file, out));
    }
  }

  private static Path aside(Path target) {
    Path aside = target.resolveSibling(target.getFileName() + ".unreadable");
    for (int number = 2; Files.exists(aside); number++) {
      aside = target.resolveSibling(target.getFileName() + ".unreadable-" + number);
    }
    return aside;
  }

  /**
   * Makes the box {@code file} of rows that were handed out once; a box there is empty.
   *
   * @param version the version of the tables they came from
   * @param name what the rows are called, for the person
   * @throws BoxException if they do not make a whole box
   */
  public static void rebuild(TableSource rows, int version, String name, Path file, Clock clock) {
    if (version > Schema.VERSION) {
      throw BoxException.tooNew(name);
    }
    Path target = file.toAbsolutePath().normalize();
    new Replacement(target, clock)
        .with(
            fresh -> fill(fresh, rows, version, name),
            name,
            fresh -> {
              if (!Files.exists(target)) {
                return fresh.backup(target);
              }
              try (Box box = Box.open(target, clock)) {
                box.fillFrom(fresh);
                return target;
              }
            });
  }

  <T> T with(Maker maker, String name, Taker<T> taker) {
    Path folder = target.getParent();
    try {
      if (folder != null) {
        BoxFile.createFolders(folder);
      }
      try (Part scratch = Part.folderBeside(target)) {
        Path fresh = scratch.path().resolve("copy.box");
        maker.make(fresh);
        try (Box copy = Box.connect(fresh, clock, Box.PATIENCE, false)) {
          List<String> problems = copy.check();
          if (!problems.isEmpty()) {
            throw new BoxException(
                BoxException.Kind.NOT_A_BOX, name + " is not whole: " + problems.get(0));
          }
          return taker.take(copy);
        }
      }
    } catch (IOException e) {
      throw BoxFile.cannotCreate(target, e);
    }
  }

  private static void fill(Path fresh, TableSource rows, int version, String name)
      throws IOException {
    BoxFile.create(fresh);
    try (Connection connection = BoxFile.connect(fresh, Box.PATIENCE);
        Statement statement = connection.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      // Tables may come in any order.
      statement.execute("PRAGMA defer_foreign_keys = ON");
      Schema.make(connection, version);
      try (Filling filling = new Filling(connection)) {
        pour(rows, filling, name);
      }
      statement.execute("COMMIT");
    } catch (SQLException e) {
      if ((e.getErrorCode() & 0xff) != SQLiteErrorCode.SQLITE_CONSTRAINT.code) {
        throw BoxException.of(fresh, e);
      }
      throw notWhole(name, e);
    } catch (IllegalArgumentException e) {
      throw notWhole(name, e);
    }
  }

  private static void pour(TableSource rows, Filling filling, String name) {
    try {
      rows.pour((table, columns, cells, place) -> take(filling, table, columns, cells, place));
    } catch (IOException e) {
      throw notWhole(name, e);
    }
  }

  private static BoxException notWhole(String name, Exception e) {
    return new BoxException(
        BoxException.Kind.NOT_A_BOX,
        name + " is not whole: " + e.getMessage() + ". Export the box again.",
        e);
  }

  private static void take(
      Filling filling, String table, List<String> columns, List<String> cells, String place) {
    try {
      filling.row(table, columns, cells);
    } catch (SQLException | IllegalArgumentException e) {
      throw new BoxException(
          BoxException.Kind.NOT_A_BOX,
          place + " is no row of " + table + " (" + e.getMessage() + "). Export the box again.",
          e);
    }
  }
}
