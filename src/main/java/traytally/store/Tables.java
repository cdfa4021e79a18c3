package traytally.store;

import java.io.IOException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import traytally.plastic.Plastic;
import traytally.store.TableColumn.Kind;

/**
 * The tables of a box as rows of text. A row that names a plastic holds its maker, body, colour and
 * length in place of its number, so the table of plastics need not be handed out.
 */
final class Tables {
  private static final String NAMES =
      """
      SELECT name FROM sqlite_schema
      WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name <> 'plastics' ORDER BY rowid
      """;
  private static final String COLUMNS =
      """
      SELECT name, type, "notnull" = 0 AND pk = 0 FROM pragma_table_info(?) ORDER BY cid
      """;
  static final String PLASTIC = "plastic";
  static final List<TableColumn> PLASTIC_COLUMNS =
      List.of(
          new TableColumn("maker", Kind.TEXT, false),
          new TableColumn("body", Kind.TEXT, false),
          new TableColumn("colour", Kind.TEXT, false),
          new TableColumn("length_mm", Kind.WHOLE, false));

  private final Connection connection;
  private final Plastics plastics;

  Tables(Connection connection) throws SQLException {
    this.connection = connection;
    this.plastics = Plastics.read(connection);
  }

  /** The tables but that of the plastics, in the order they were made. */
  List<String> names() throws SQLException {
    List<String> names = new ArrayList<>();
    try (PreparedStatement select = connection.prepareStatement(NAMES);
        ResultSet rows = select.executeQuery()) {
      while (rows.next()) {
        names.add(rows.getString(1));
      }
    }
    return names;
  }

  /** The columns as they lie in the box; none if there is no such table. */
  List<TableColumn> own(String table) throws SQLException {
    List<TableColumn> columns = new ArrayList<>();
    try (PreparedStatement select = connection.prepareStatement(COLUMNS)) {
      select.setString(1, table);
      try (ResultSet rows = select.executeQuery()) {
        while (rows.next()) {
          Kind kind =
              switch (rows.getString(2)) {
                case "INTEGER" -> Kind.WHOLE;
                case "REAL" -> Kind.REAL;
                default -> Kind.TEXT;
              };
          columns.add(new TableColumn(rows.getString(1), kind, rows.getBoolean(3)));
        }
      }
    }
    return columns;
  }

  /** The columns of a table as they are handed out. */
  List<TableColumn> columns(String table) throws SQLException {
    List<TableColumn> columns = new ArrayList<>();
    for (TableColumn column : own(table)) {
      if (column.name().equals(PLASTIC)) {
        columns.addAll(PLASTIC_COLUMNS);
      } else {
        columns.add(column);
      }
    }
    return List.copyOf(columns);
  }

  /** Hands every row of every table out. */
  void pour(TableSink sink) throws SQLException, IOException {
    for (String table : names()) {
      List<TableColumn> own = own(table);
      List<TableColumn> columns = columns(table);
      sink.row(table, columns, List.of());
      // The table's and columns' names come from the schema itself.
      String select =
          "SELECT %s FROM %s ORDER BY %s"
              .formatted(joined(own), table, own.get(0).name().equals("id") ? "id" : joined(own));
      try (PreparedStatement rows = connection.prepareStatement(select);
          ResultSet row = rows.executeQuery()) {
        while (row.next()) {
          sink.row(table, columns, cells(row, own));
        }
      }
    }
  }

  static String joined(List<TableColumn> columns) {
    return columns.stream().map(TableColumn::name).collect(Collectors.joining(", "));
  }

  private List<String> cells(ResultSet row, List<TableColumn> own) throws SQLException {
    List<String> cells = new ArrayList<>(own.size() + PLASTIC_COLUMNS.size());
    for (int i = 0; i < own.size(); i++) {
      if (own.get(i).name().equals(PLASTIC)) {
        Plastic plastic = plastics.plastic(row.getLong(i + 1));
        cells.add(plastic.maker().text());
        cells.add(plastic.body().text());
        cells.add(plastic.colour().text());
        cells.add(String.valueOf(plastic.lengthMm()));
      } else if (row.getObject(i + 1) == null) {
        cells.add("");
      } else {
        // SQLite's own text of a real number has fewer digits than the number.
        cells.add(
            own.get(i).kind() == Kind.REAL
                ? Double.toString(row.getDouble(i + 1))
                : row.getString(i + 1));
      }
    }
    return cells;
  }
}
