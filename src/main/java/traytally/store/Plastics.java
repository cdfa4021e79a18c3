package traytally.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HashMap;
import java.util.Map;
import traytally.plastic.Plastic;

/** The plastics a box knows and their numbers in it, as of the transaction that read them. */
final class Plastics {
  private static final String SELECT =
      """
      SELECT id, maker, body, colour, length_mm FROM plastics
      """;
  private static final String INSERT =
      """
      INSERT INTO plastics
        (maker, body, colour, length_mm, maker_key, body_key, colour_key)
      VALUES (?, ?, ?, ?, ?, ?, ?) RETURNING id
      """;

  private final Connection connection;
  private final Map<Plastic, Long> ids = new HashMap<>();
  private final Map<Long, Plastic> plastics = new HashMap<>();

  private Plastics(Connection connection) {
    this.connection = connection;
  }

  /** Reads them; the caller holds a transaction. */
  static Plastics read(Connection connection) throws SQLException {
    Plastics known = new Plastics(connection);
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(SELECT)) {
      while (rows.next()) {
        known.put(
            rows.getLong(1),
            Plastic.of(rows.getString(2), rows.getString(3), rows.getString(4), rows.getInt(5)));
      }
    }
    return known;
  }

  /** None of them, for tables that name no plastic. */
  static Plastics none(Connection connection) {
    return new Plastics(connection);
  }

  private void put(long id, Plastic plastic) {
    ids.put(plastic, id);
    plastics.put(id, plastic);
  }

  Plastic plastic(long id) {
    Plastic plastic = plastics.get(id);
    if (plastic == null) {
      throw new IllegalArgumentException("no plastic has the number " + id);
    }
    return plastic;
  }

  /** The number of {@code plastic}, which is written down if it is new. */
  long id(Plastic plastic) throws SQLException {
    Long known = ids.get(plastic);
    if (known != null) {
      return known;
    }
    try (PreparedStatement insert = connection.prepareStatement(INSERT)) {
      Slots slots = new Slots(insert, this);
      slots.name(plastic.maker()).name(plastic.body()).name(plastic.colour());
      slots.whole(plastic.lengthMm());
      slots.text(plastic.maker().key()).text(plastic.body().key()).text(plastic.colour().key());
      try (ResultSet row = insert.executeQuery()) {
        row.next();
        put(row.getLong(1), plastic);
        return row.getLong(1);
      }
    }
  }
}
