package traytally.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.DateTimeException;

/** Work on a box's database, all or nothing, its failures told as a box's. */
final class Transactions {
  private final Path file;
  private final Connection connection;

  /** On {@code file}, which {@code connection} leads to. */
  Transactions(Path file, Connection connection) {
    this.file = file;
    this.connection = connection;
  }

  /** Something done with the database. */
  interface Work<T> {
    T run() throws SQLException;
  }

  /** Work that writes, and so waits its turn first. */
  <T> T writing(Work<T> work) {
    try {
      return transaction("BEGIN IMMEDIATE", work);
    } catch (SQLException e) {
      throw BoxException.of(file, e);
    }
  }

  /** Work that sees the box as it is at its first look. */
  <T> T reading(Work<T> work) {
    try {
      return transaction("BEGIN", work);
    } catch (SQLException e) {
      throw BoxException.of(file, e);
    } catch (IllegalArgumentException | DateTimeException | ArithmeticException e) {
      // What this program writes, it can read: somebody else wrote, or the disk forgot.
      throw BoxException.damaged(file, e);
    }
  }

  /** Work between {@code begin} and its commit; rolled back if it fails. */
  <T> T transaction(String begin, Work<T> work) throws SQLException {
    execute(begin);
    try {
      T result = work.run();
      execute("COMMIT");
      return result;
    } catch (SQLException | RuntimeException | Error e) {
      try {
        execute("ROLLBACK");
      } catch (SQLException again) {
        // SQLite has rolled back by itself, as it does on a full disk.
        e.addSuppressed(again);
      }
      throw e;
    }
  }

  void execute(String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }
}
