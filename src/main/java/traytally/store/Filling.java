package traytally.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Types;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import traytally.plastic.Plastic;

/** Fills the tables of a new box with the rows that {@link Tables} once handed out. */
final class Filling implements AutoCloseable {
  private final Connection connection;
  private final Tables tables;
  private final Plastics plastics;
  private final Map<String, Insert> inserts = new HashMap<>();

  /** One table's statement. */
  private record Insert(List<TableColumn> own, List<String> columns, PreparedStatement statement) {}

  Filling(Connection connection) throws SQLException {
    this.connection = connection;
    this.tables = new Tables(connection);
    this.plastics = Plastics.read(connection);
  }

  /**
   * Takes one row in.
   *
   * @throws IllegalArgumentException if the box has no such table or columns, or a cell does not
   *     fit
   */
  void row(String table, List<String> columns, List<String> cells) throws SQLException {
    Insert insert = inserts.get(table);
    if (insert == null) {
      insert = insert(table);
      inserts.put(table, insert);
    }
    set(insert, ordered(insert.columns(), columns, cells));
    insert.statement().executeUpdate();
  }

  /** The cells in the order of the box's columns. */
  private static List<String> ordered(
      List<String> wanted, List<String> columns, List<String> cells) {
    if (cells.size() != columns.size() || !new HashSet<>(columns).equals(new HashSet<>(wanted))) {
      throw new IllegalArgumentException(
          "wanted " + wanted + ", got " + cells.size() + " cells under " + columns);
    }
    return columns.equals(wanted)
        ? cells
        : wanted.stream().map(column -> cells.get(columns.indexOf(column))).toList();
  }

  private void set(Insert insert, List<String> cells) throws SQLException {
    int next = 0;
    for (int i = 0; i < insert.own().size(); i++) {
      TableColumn column = insert.own().get(i);
      if (column.name().equals(Tables.PLASTIC)) {
        insert.statement().setLong(i + 1, plastics.id(plastic(cells.subList(next, next + 4))));
        next += Tables.PLASTIC_COLUMNS.size();
      } else {
        set(insert.statement(), i + 1, column, cells.get(next++));
      }
    }
  }

  private Insert insert(String table) throws SQLException {
    List<TableColumn> own = tables.own(table);
    if (own.isEmpty() || !tables.names().contains(table)) {
      throw new IllegalArgumentException("a box of that version has no such table");
    }
    // The names come from the schema itself.
    String sql =
        "INSERT INTO %s (%s) VALUES (%s)"
            .formatted(
                table, Tables.joined(own), String.join(", ", Collections.nCopies(own.size(), "?")));
    return new Insert(
        own,
        tables.columns(table).stream().map(TableColumn::name).toList(),
        connection.prepareStatement(sql));
  }

  private static Plastic plastic(List<String> cells) {
    return Plastic.of(cells.get(0), cells.get(1), cells.get(2), Integer.parseInt(cells.get(3)));
  }

  private static void set(PreparedStatement row, int at, TableColumn column, String cell)
      throws SQLException {
    if (cell.isEmpty() && column.optional()) {
      row.setNull(at, Types.NULL);
      return;
    }
    switch (column.kind()) {
      case WHOLE -> row.setLong(at, Long.parseLong(cell));
      case REAL -> row.setDouble(at, Double.parseDouble(cell));
      case TEXT -> row.setString(at, cell);
    }
  }

  @Override
  public void close() throws SQLException {
    for (Insert insert : inserts.values()) {
      insert.statement().close();
    }
  }
}
