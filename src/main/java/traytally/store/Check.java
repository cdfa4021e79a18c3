package traytally.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Ledger;
import traytally.ledger.Posting;

/** Looks for what is wrong within a box: in the file, in its references, in its sums. */
final class Check {
  private static final String BY_DAY =
      """
      SELECT plastic, SUM(pieces), date FROM movements GROUP BY plastic, date ORDER BY plastic, date
      """;
  private static final String STRAY_STINTS =
      """
      SELECT DISTINCT stint FROM movements
      WHERE stint IS NOT NULL AND stint NOT IN (SELECT number FROM stint) ORDER BY stint
      """;

  private final Connection connection;

  Check(Connection connection) {
    this.connection = connection;
  }

  /** What is wrong, one sentence each. */
  List<String> problems() throws SQLException {
    List<String> problems = new ArrayList<>(integrity(connection));
    if (problems.isEmpty()) {
      strayReferences(problems);
      belowZero(problems);
      strayStints(problems);
    }
    if (problems.isEmpty()) {
      disagreements(problems);
    }
    return List.copyOf(problems);
  }

  /** What SQLite finds wrong in the file. */
  static List<String> integrity(Connection connection) throws SQLException {
    return faults(connection, "PRAGMA integrity_check");
  }

  /** The same of the stints alone, where nothing else is to be read. */
  static List<String> stints(Connection connection) throws SQLException {
    return faults(connection, "PRAGMA integrity_check(stint)");
  }

  private static List<String> faults(Connection connection, String pragma) throws SQLException {
    List<String> problems = new ArrayList<>();
    try (PreparedStatement check = connection.prepareStatement(pragma);
        ResultSet rows = check.executeQuery()) {
      while (rows.next()) {
        if (!rows.getString(1).equals("ok")) {
          problems.add("The file is damaged: " + rows.getString(1).replace('\n', ' ') + ".");
        }
      }
    }
    return problems;
  }

  private void strayReferences(List<String> problems) throws SQLException {
    try (PreparedStatement check = connection.prepareStatement("PRAGMA foreign_key_check");
        ResultSet rows = check.executeQuery()) {
      while (rows.next()) {
        problems.add(
            "Row %d of %s refers to a row of %s that is missing."
                .formatted(rows.getLong(2), rows.getString(1), rows.getString(3)));
      }
    }
  }

  private void belowZero(List<String> problems) throws SQLException {
    Plastics plastics = Plastics.read(connection);
    try (PreparedStatement select = connection.prepareStatement(BY_DAY);
        ResultSet rows = select.executeQuery()) {
      Cells cells = new Cells(rows, plastics);
      long last = -1;
      int held = 0;
      while (cells.advance()) {
        long plastic = cells.id();
        held = (plastic == last ? held : 0) + cells.whole();
        last = plastic;
        if (held < 0) {
          problems.add(
              "The ledger holds fewer than no pieces of %s on %s: %d."
                  .formatted(plastics.plastic(plastic), cells.text(), held));
        }
      }
    }
  }

  private void strayStints(List<String> problems) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(STRAY_STINTS);
        ResultSet rows = select.executeQuery()) {
      while (rows.next()) {
        problems.add("Movements belong to stint %d, which is missing.".formatted(rows.getLong(1)));
      }
    }
  }

  /** Whether each tray is what the counts and what happened since come to. */
  private void disagreements(List<String> problems) throws SQLException {
    Book book = new Reading(connection).book();
    Ledger ledger = book.ledger();
    Posting posting = new Posting(ledger, book.recorded(Fact.Counted.class));
    ledger
        .stock(LocalDate.MAX)
        .forEach(
            (plastic, held) -> {
              int wanted = posting.balance(plastic, LocalDate.MAX);
              if (held.count() != wanted) {
                problems.add(
                    ("The ledger holds %d pieces of %s, but its counts and what happened since"
                            + " come to %d.")
                        .formatted(held.count(), plastic, wanted));
              }
            });
  }
}
