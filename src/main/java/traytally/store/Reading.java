package traytally.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import traytally.ledger.Batch;
import traytally.ledger.Book;
import traytally.ledger.Fact;
import traytally.ledger.Ledger;
import traytally.ledger.Movement;
import traytally.ledger.MovementKind;
import traytally.ledger.Recorded;
import traytally.ledger.Setting;
import traytally.ledger.Settings;
import traytally.ledger.Undo;
import traytally.plastic.Plastic;
import traytally.trip.LossCause;

/** Reads a box within a transaction that the caller holds. */
final class Reading {
  private static final String SELECT_BATCHES =
      """
      SELECT id, recorded_at, command, summary, undoes FROM batches ORDER BY id
      """;
  private static final String SELECT_MOVEMENTS =
      """
      SELECT id, batch, date, kind, how, plastic, pieces, stint, reverses, note
      FROM movements ORDER BY id
      """;
  private static final String SELECT_NEWEST =
      """
      SELECT id, batch, date, kind, how, plastic, pieces, stint, reverses, note
      FROM movements WHERE date <= ? ORDER BY id DESC LIMIT ?
      """;
  private static final String SELECT_STOCK =
      """
      SELECT plastic, SUM(CASE WHEN date <= ? THEN pieces ELSE 0 END)
      FROM movements GROUP BY plastic
      """;

  /** The last day whose text sorts as the day does: five-digit years begin with a plus. */
  private static final LocalDate LAST = LocalDate.of(9999, 12, 31);

  private static final String STANDS = "withdrawn_by IS NULL";
  private static final String TOUCHED =
      """
      added_by = ? OR withdrawn_by = ?
        OR id IN (SELECT fact FROM put_back WHERE batch = ? AND fact_table = ?)
      """;

  private final Connection connection;
  private final Plastics plastics;

  Reading(Connection connection) throws SQLException {
    this.connection = connection;
    this.plastics = Plastics.read(connection);
  }

  Book book() throws SQLException {
    List<Batch> batches = batches(connection);
    List<Recorded<? extends Fact>> facts = new ArrayList<>();
    for (FactTable<?> table : FactTable.ALL) {
      facts.addAll(facts(connection, plastics, table, STANDS));
    }
    facts.sort(Comparator.comparingLong(Recorded::batch));
    return new Book(
        batches, new Ledger(movements(), batches), facts, settings(connection), nextStint());
  }

  Ledger ledger() throws SQLException {
    return new Ledger(movements(), batches(connection));
  }

  List<Fact.Fished> stints() throws SQLException {
    return facts(connection, plastics, FactTable.STINT, STANDS).stream()
        .map(recorded -> (Fact.Fished) recorded.what())
        .toList();
  }

  /** The next free stint number, withdrawn stints included. */
  private long nextStint() throws SQLException {
    String sql = "SELECT COALESCE(MAX(number), 0) + 1 FROM stint";
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      row.next();
      return row.getLong(1);
    }
  }

  private List<Recorded<Movement>> movements() throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(SELECT_MOVEMENTS)) {
      return movements(select);
    }
  }

  /** The newest {@code most} movements up to the end of {@code asOf}, in the order recorded. */
  List<Recorded<Movement>> newestMovements(LocalDate asOf, int most) throws SQLException {
    try (PreparedStatement select = connection.prepareStatement(SELECT_NEWEST)) {
      new Slots(select, plastics).date(asOf.isAfter(LAST) ? LAST : asOf).whole(most);
      List<Recorded<Movement>> newest = movements(select);
      Collections.reverse(newest);
      return newest;
    }
  }

  /** How many movements there are up to the end of {@code asOf}. */
  long countMovements(LocalDate asOf) throws SQLException {
    String sql = "SELECT COUNT(*) FROM movements WHERE date <= ?";
    try (PreparedStatement select = connection.prepareStatement(sql)) {
      new Slots(select, plastics).date(asOf.isAfter(LAST) ? LAST : asOf);
      try (ResultSet row = select.executeQuery()) {
        row.next();
        return row.getLong(1);
      }
    }
  }

  private List<Recorded<Movement>> movements(PreparedStatement select) throws SQLException {
    List<Recorded<Movement>> movements = new ArrayList<>();
    try (ResultSet rows = select.executeQuery()) {
      Cells cells = new Cells(rows, plastics);
      while (cells.advance()) {
        movements.add(
            new Recorded<>(
                cells.id(),
                cells.id(),
                new Movement(
                    cells.date(),
                    cells.word(MovementKind.class),
                    cells.wordIfAny(LossCause.class),
                    cells.plastic(),
                    cells.whole(),
                    cells.idIfAny(),
                    cells.flag(),
                    cells.note())));
      }
    }
    return movements;
  }

  /** The facts of one table that {@code where} picks, in the order recorded. */
  static List<Recorded<Fact>> facts(
      Connection connection, Plastics plastics, FactTable<?> table, String where, long... numbers)
      throws SQLException {
    List<Recorded<Fact>> facts = new ArrayList<>();
    try (PreparedStatement select = connection.prepareStatement(table.select(where))) {
      Slots slots = new Slots(select, plastics);
      for (long number : numbers) {
        slots.whole(number);
      }
      try (ResultSet rows = select.executeQuery()) {
        Cells cells = new Cells(rows, plastics);
        while (cells.advance()) {
          long id = cells.id();
          long addedBy = cells.id();
          cells.idIfAny();
          facts.add(new Recorded<>(id, addedBy, table.reader().read(cells)));
        }
      }
    }
    return facts;
  }

  static List<Batch> batches(Connection connection) throws SQLException {
    List<Batch> batches = new ArrayList<>();
    try (PreparedStatement select = connection.prepareStatement(SELECT_BATCHES);
        ResultSet rows = select.executeQuery()) {
      Cells cells = new Cells(rows, Plastics.none(connection));
      while (cells.advance()) {
        batches.add(
            new Batch(
                cells.id(),
                Instant.parse(cells.text()),
                cells.text(),
                cells.text(),
                cells.idIfAny(),
                OptionalLong.empty()));
      }
    }
    return undone(batches);
  }

  /** The number of the last batch and when it was recorded; blank if there is none. */
  static String lastBatch(Connection connection) throws SQLException {
    String sql = "SELECT id || ' ' || recorded_at FROM batches ORDER BY id DESC LIMIT 1";
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      return row.next() ? row.getString(1) : "";
    }
  }

  /** Fills in which batches are undone: those that a standing undo reverses. */
  private static List<Batch> undone(List<Batch> batches) {
    Map<Long, Long> undoneBy = new HashMap<>();
    List<Batch> whole = new ArrayList<>();
    // An undo is always later than what it reverses, so from the last to the first all is known.
    for (int i = batches.size() - 1; i >= 0; i--) {
      Batch batch = batches.get(i);
      Long by = undoneBy.get(batch.id());
      if (by == null) {
        batch.undoes().ifPresent(undone -> undoneBy.put(undone, batch.id()));
      }
      whole.add(
          new Batch(
              batch.id(),
              batch.recordedAt(),
              batch.command(),
              batch.summary(),
              batch.undoes(),
              by == null ? OptionalLong.empty() : OptionalLong.of(by)));
    }
    Collections.reverse(whole);
    return whole;
  }

  static Settings settings(Connection connection) throws SQLException {
    Map<Setting, String> chosen = new EnumMap<>(Setting.class);
    for (Recorded<Fact> fact :
        facts(connection, Plastics.none(connection), FactTable.CHOSEN, STANDS)) {
      if (fact.what() instanceof Fact.Chosen choice) {
        chosen.put(choice.setting(), choice.value());
      }
    }
    return new Settings(chosen);
  }

  SortedMap<Plastic, Integer> stock(LocalDate asOf) throws SQLException {
    SortedMap<Plastic, Integer> stock = new TreeMap<>();
    try (PreparedStatement select = connection.prepareStatement(SELECT_STOCK)) {
      new Slots(select, plastics).date(asOf.isAfter(LAST) ? LAST : asOf);
      try (ResultSet rows = select.executeQuery()) {
        Cells cells = new Cells(rows, plastics);
        while (cells.advance()) {
          stock.put(cells.plastic(), cells.whole());
        }
      }
    }
    return Collections.unmodifiableSortedMap(stock);
  }

  /** What is needed to reverse batch {@code id}, if there is one. */
  Optional<Undo> undo(long id) throws SQLException {
    Optional<Batch> batch = batches(connection).stream().filter(b -> b.id() == id).findFirst();
    if (batch.isEmpty()) {
      return Optional.empty();
    }
    List<Recorded<? extends Fact>> added = new ArrayList<>();
    List<Recorded<? extends Fact>> withdrew = new ArrayList<>();
    SortedSet<Long> overriddenBy = new TreeSet<>();
    for (FactTable<?> table : FactTable.ALL) {
      try (PreparedStatement select = connection.prepareStatement(table.select(TOUCHED))) {
        new Slots(select, plastics).whole(id).whole(id).whole(id).text(table.name());
        try (ResultSet rows = select.executeQuery()) {
          Cells cells = new Cells(rows, plastics);
          while (cells.advance()) {
            long fact = cells.id();
            long addedBy = cells.id();
            OptionalLong withdrawnBy = cells.idIfAny();
            Recorded<Fact> row = new Recorded<>(fact, addedBy, table.reader().read(cells));
            if (withdrawnBy.isEmpty()) {
              added.add(row);
            } else if (withdrawnBy.getAsLong() == id) {
              withdrew.add(row);
            } else {
              overriddenBy.add(withdrawnBy.getAsLong());
            }
          }
        }
      }
    }
    return Optional.of(new Undo(batch.get(), added, withdrew, overriddenBy));
  }
}
