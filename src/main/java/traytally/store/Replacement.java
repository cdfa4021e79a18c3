package traytally.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.List;
import org.sqlite.SQLiteErrorCode;

/**
 * Puts something in the place of a box: it is made in a file of its own first, brought up to date
 * and checked there, and takes the name only then. Until it does, what was there stays.
 */
public final class Replacement {
  private final Path target;
  private final Clock clock;

  private Replacement(Path target, Clock clock) {
    this.target = target;
    this.clock = clock;
  }

  /** Makes a file that is to become the box. */
  @FunctionalInterface
  private interface Maker {
    void make(Path fresh) throws IOException;
  }

  /**
   * Puts the copy {@code from} in the place of the box {@code file}.
   *
   * @throws BoxException if it is no box or not whole
   */
  public static void restore(Path from, Path file, Clock clock) {
    new Replacement(file.toAbsolutePath().normalize(), clock)
        .with(
            fresh -> Files.copy(from, fresh, StandardCopyOption.REPLACE_EXISTING), from.toString());
  }

  /**
   * Puts the copy {@code from} in the place of a box that cannot be opened, which is moved aside
   * once the copy is whole beside it.
   *
   * @return where what was there lies now
   * @throws BoxException if the copy is no box or not whole
   */
  public static Path restoreAside(Path from, Path file, Clock clock) {
    Path target = file.toAbsolutePath().normalize();
    Path fresh = target.resolveSibling(target.getFileName() + ".restored");
    restore(from, fresh, clock);
    try {
      Path aside = aside(target);
      // A journal left by a crash belongs to the box moved, and would spoil the new one.
      Path journal = target.resolveSibling(target.getFileName() + "-journal");
      if (Files.exists(journal)) {
        Files.move(journal, aside.resolveSibling(aside.getFileName() + "-journal"));
      }
      Files.move(target, aside);
      Files.move(fresh, target);
      return aside;
    } catch (IOException e) {
      throw BoxFile.cannotCreate(target, e);
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
   * Makes the box {@code file} of rows that were handed out once.
   *
   * @param version the version of the tables they came from
   * @param name what the rows are called, for the person
   * @throws BoxException if they do not make a whole box
   */
  public static void rebuild(TableSource rows, int version, String name, Path file, Clock clock) {
    if (version > Schema.VERSION) {
      throw BoxException.tooNew(name);
    }
    new Replacement(file.toAbsolutePath().normalize(), clock)
        .with(fresh -> fill(fresh, rows, version, name), name);
  }

  private void with(Maker maker, String name) {
    Path folder = target.resolveSibling(target.getFileName() + ".restoring");
    Path fresh = folder.resolve("copy.box");
    try {
      BoxFile.createFolders(folder);
      try {
        maker.make(fresh);
        try (Box copy = Box.connect(fresh, clock, Box.PATIENCE, false)) {
          List<String> problems = copy.check();
          if (!problems.isEmpty()) {
            throw new BoxException(
                BoxException.Kind.NOT_A_BOX, name + " is not whole: " + problems.get(0));
          }
          copy.backup(target);
        }
      } finally {
        Files.deleteIfExists(fresh.resolveSibling(fresh.getFileName() + "-journal"));
        Files.deleteIfExists(fresh);
        Files.deleteIfExists(folder);
      }
    } catch (IOException e) {
      throw BoxFile.cannotCreate(target, e);
    }
  }

  private static void fill(Path fresh, TableSource rows, int version, String name)
      throws IOException {
    Files.deleteIfExists(fresh);
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
