package traytally.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import traytally.ledger.Entry;
import traytally.ledger.Fact;
import traytally.ledger.Movement;
import traytally.ledger.Recorded;

/** Writes one entry within a write transaction that the caller holds. */
final class Recording {
  /** Rows sent to SQLite at a time: bounds the memory a long import takes; measured flat above. */
  private static final int ROWS_AT_A_TIME = 2_000;

  private static final String INSERT_BATCH =
      """
      INSERT INTO batches (recorded_at, command, summary, undoes) VALUES (?, ?, ?, ?) RETURNING id
      """;
  private static final String INSERT_MOVEMENT =
      """
      INSERT INTO movements (batch, date, kind, how, plastic, pieces, stint, reverses, note)
      VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)
      """;
  private static final String INSERT_PUT_BACK =
      """
      INSERT INTO put_back (batch, fact_table, fact) VALUES (?, ?, ?)
      """;

  private final Connection connection;
  private final Plastics plastics;

  Recording(Connection connection) throws SQLException {
    this.connection = connection;
    this.plastics = Plastics.read(connection);
  }

  /** Writes all of {@code entry} and returns the number of its batch. */
  long write(Entry entry, Instant now) throws SQLException {
    long batch = insertBatch(entry, now);
    insertMovements(batch, entry.movements());
    OptionalLong undone = entry.undoes();
    insertFacts(
        batch,
        undone.isPresent() ? putBack(batch, undone.getAsLong(), entry.added()) : entry.added());
    withdraw(batch, entry.withdrawn());
    return batch;
  }

  private long insertBatch(Entry entry, Instant now) throws SQLException {
    try (PreparedStatement insert = connection.prepareStatement(INSERT_BATCH)) {
      new Slots(insert, plastics)
          .text(now.toString())
          .text(entry.command())
          .text(entry.summary())
          .whole(entry.undoes());
      try (ResultSet row = insert.executeQuery()) {
        row.next();
        return row.getLong(1);
      }
    }
  }

  private void insertMovements(long batch, List<Movement> movements) throws SQLException {
    try (Rows rows = new Rows(INSERT_MOVEMENT)) {
      for (Movement m : movements) {
        rows.next().whole(batch).date(m.date()).word(m.kind()).word(m.how()).plastic(m.plastic());
        rows.slots.whole(m.pieces()).whole(m.stint()).flag(m.reverses()).text(m.note());
        rows.add();
      }
      rows.done();
    }
  }

  /**
   * Lets the facts that batch {@code undone} withdrew stand again under their first batch, so that
   * undoing that first batch still finds them. Returns those that it never withdrew.
   */
  private List<Fact> putBack(long batch, long undone, List<Fact> facts) throws SQLException {
    Map<Fact, Deque<Recorded<Fact>>> withdrawn = new HashMap<>();
    for (FactTable<?> table : FactTable.ALL) {
      Reading.facts(connection, plastics, table, "withdrawn_by = ?", undone)
          .forEach(f -> withdrawn.computeIfAbsent(f.what(), w -> new ArrayDeque<>()).add(f));
    }
    List<Fact> fresh = new ArrayList<>();
    Map<FactTable<?>, List<Long>> again = new LinkedHashMap<>();
    for (Fact fact : facts) {
      Deque<Recorded<Fact>> alike = withdrawn.getOrDefault(fact, new ArrayDeque<>());
      Recorded<Fact> row = alike.pollFirst();
      if (row == null) {
        fresh.add(fact);
      } else {
        again.computeIfAbsent(FactTable.of(fact), t -> new ArrayList<>()).add(row.id());
      }
    }
    for (Map.Entry<FactTable<?>, List<Long>> table : again.entrySet()) {
      try (Rows update = new Rows(table.getKey().putBack());
          Rows note = new Rows(INSERT_PUT_BACK)) {
        for (long id : table.getValue()) {
          update.next().whole(id);
          update.add();
          note.next().whole(batch).text(table.getKey().name()).whole(id);
          note.add();
        }
        update.done();
        note.done();
      }
    }
    return fresh;
  }

  private void insertFacts(long batch, List<Fact> facts) throws SQLException {
    Map<FactTable<?>, List<Fact>> byTable = new LinkedHashMap<>();
    facts.forEach(
        fact -> byTable.computeIfAbsent(FactTable.of(fact), t -> new ArrayList<>()).add(fact));
    for (Map.Entry<FactTable<?>, List<Fact>> table : byTable.entrySet()) {
      try (Rows rows = new Rows(table.getKey().insert())) {
        for (Fact fact : table.getValue()) {
          table.getKey().write(fact, rows.next().whole(batch));
          rows.add();
        }
        rows.done();
      }
    }
  }

  private void withdraw(long batch, List<Recorded<? extends Fact>> facts) throws SQLException {
    Map<FactTable<?>, List<Long>> byTable = new LinkedHashMap<>();
    facts.forEach(
        fact ->
            byTable
                .computeIfAbsent(FactTable.of(fact.what()), t -> new ArrayList<>())
                .add(fact.id()));
    for (Map.Entry<FactTable<?>, List<Long>> table : byTable.entrySet()) {
      try (Rows rows = new Rows(table.getKey().withdraw())) {
        for (long id : table.getValue()) {
          rows.next().whole(batch).whole(id);
          rows.add();
        }
        rows.done();
      }
    }
  }

  /** Many rows for one statement, sent some at a time; each must change exactly one. */
  private final class Rows implements AutoCloseable {
    private final PreparedStatement statement;
    final Slots slots;
    private int waiting;

    Rows(String sql) throws SQLException {
      statement = connection.prepareStatement(sql);
      slots = new Slots(statement, plastics);
    }

    Slots next() {
      return slots.rewound();
    }

    void add() throws SQLException {
      statement.addBatch();
      if (++waiting == ROWS_AT_A_TIME) {
        send();
      }
    }

    private void send() throws SQLException {
      for (int changed : statement.executeBatch()) {
        if (changed != 1) {
          throw new IllegalStateException("a fact to withdraw does not stand");
        }
      }
      waiting = 0;
    }

    /** Sends what is waiting. */
    void done() throws SQLException {
      if (waiting > 0) {
        send();
      }
    }

    @Override
    public void close() throws SQLException {
      statement.close();
    }
  }
}
