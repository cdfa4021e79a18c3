package traytally.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/** The tables of a box, and the steps from each version of them to the next. */
final class Schema {
  /**
   * What marks a SQLite file as a box: the letters "TrTy" in its header (sqlite.org/fileformat).
   */
  static final int APPLICATION_ID = 0x54725479;

  /** Step n makes version n + 1 of version n; a step, once released, is never edited. */
  private static final List<String> STEPS =
      List.of(
          """
          CREATE TABLE batches (
            id INTEGER PRIMARY KEY,
            recorded_at TEXT NOT NULL,
            command TEXT NOT NULL,
            summary TEXT NOT NULL,
            undoes INTEGER UNIQUE REFERENCES batches (id) CHECK (undoes < id)
          ) STRICT;

          -- The keys are the folded names: two spellings of one name are one plastic.
          CREATE TABLE plastics (
            id INTEGER PRIMARY KEY,
            maker TEXT NOT NULL,
            body TEXT NOT NULL,
            colour TEXT NOT NULL,
            length_mm INTEGER NOT NULL CHECK (length_mm BETWEEN 0 AND 500),
            maker_key TEXT NOT NULL,
            body_key TEXT NOT NULL CHECK (body_key <> ''),
            colour_key TEXT NOT NULL CHECK (colour_key <> ''),
            UNIQUE (maker_key, body_key, colour_key, length_mm)
          ) STRICT;

          CREATE TABLE movements (
            id INTEGER PRIMARY KEY,
            batch INTEGER NOT NULL REFERENCES batches (id),
            date TEXT NOT NULL,
            kind TEXT NOT NULL,
            how TEXT,
            plastic INTEGER NOT NULL REFERENCES plastics (id),
            pieces INTEGER NOT NULL CHECK (pieces <> 0),
            stint INTEGER,
            reverses INTEGER NOT NULL CHECK (reverses IN (0, 1)),
            note TEXT NOT NULL
          ) STRICT;
          -- Stock by plastic is read from the index alone.
          CREATE INDEX movements_stock ON movements (plastic, date, pieces);

          CREATE TRIGGER movements_stay BEFORE UPDATE ON movements
          BEGIN SELECT RAISE (ABORT, 'a movement is never edited'); END;
          CREATE TRIGGER movements_last BEFORE DELETE ON movements
          BEGIN SELECT RAISE (ABORT, 'a movement is never deleted'); END;

          CREATE TABLE counted (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            plastic INTEGER NOT NULL REFERENCES plastics (id),
            date TEXT NOT NULL,
            pieces INTEGER NOT NULL CHECK (pieces >= 0),
            listed INTEGER NOT NULL CHECK (listed IN (0, 1))
          ) STRICT;

          CREATE TABLE stint (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            number INTEGER NOT NULL,
            ordinal INTEGER NOT NULL,
            source TEXT NOT NULL,
            date TEXT NOT NULL,
            water TEXT NOT NULL,
            species TEXT NOT NULL,
            clarity TEXT,
            plastic INTEGER NOT NULL REFERENCES plastics (id),
            minutes REAL,
            casts INTEGER,
            follows INTEGER NOT NULL,
            takes INTEGER NOT NULL,
            hooked INTEGER NOT NULL,
            landed INTEGER NOT NULL,
            lost INTEGER NOT NULL,
            lost_how TEXT,
            worn INTEGER NOT NULL,
            rods INTEGER NOT NULL,
            note TEXT NOT NULL
          ) STRICT;

          CREATE TABLE plan (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            date TEXT NOT NULL,
            water TEXT NOT NULL,
            species TEXT NOT NULL,
            clarity TEXT,
            hours REAL NOT NULL,
            rods INTEGER NOT NULL,
            note TEXT NOT NULL,
            source TEXT NOT NULL
          ) STRICT;

          -- Money is in hundredths of the ISO 4217 currency beside it.
          CREATE TABLE offer (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            shop TEXT NOT NULL,
            plastic INTEGER NOT NULL REFERENCES plastics (id),
            pack_size INTEGER NOT NULL,
            pack_price_cents INTEGER NOT NULL,
            pack_price_currency TEXT NOT NULL,
            in_stock INTEGER NOT NULL CHECK (in_stock IN (0, 1))
          ) STRICT;

          CREATE TABLE shop (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            name TEXT NOT NULL,
            postage_cents INTEGER,
            postage_currency TEXT,
            free_over_cents INTEGER,
            free_over_currency TEXT,
            delivery_days INTEGER
          ) STRICT;

          CREATE TABLE colour (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            name TEXT NOT NULL,
            base INTEGER,
            flake INTEGER,
            finish TEXT
          ) STRICT;

          CREATE TABLE described (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            plastic INTEGER NOT NULL REFERENCES plastics (id),
            tray TEXT NOT NULL,
            pack_size INTEGER,
            pack_price_cents INTEGER,
            pack_price_currency TEXT,
            note TEXT NOT NULL
          ) STRICT;

          CREATE TABLE kept (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            plastic INTEGER NOT NULL REFERENCES plastics (id)
          ) STRICT;

          CREATE TABLE agreed (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            spelling TEXT NOT NULL,
            name TEXT NOT NULL
          ) STRICT;

          CREATE TABLE mapped (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            headers TEXT NOT NULL,
            reading TEXT NOT NULL
          ) STRICT;

          CREATE TABLE chosen (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            setting TEXT NOT NULL,
            value TEXT NOT NULL
          ) STRICT;

          -- Which facts an undo put back: fact is the id in the table named.
          CREATE TABLE put_back (
            batch INTEGER NOT NULL REFERENCES batches (id),
            fact_table TEXT NOT NULL,
            fact INTEGER NOT NULL,
            PRIMARY KEY (batch, fact_table, fact)
          ) STRICT, WITHOUT ROWID;
          """,
          """
          -- Months as numbers and runs of them: 2-4,11.
          CREATE TABLE closed (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            water TEXT NOT NULL,
            months TEXT NOT NULL
          ) STRICT;

          -- What an everyday word for a colour stands for; without a swatch it is not used.
          CREATE TABLE colour_word (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            word TEXT NOT NULL,
            swatch INTEGER
          ) STRICT;

          -- The starting guide where the angler changed it; months as in closed, all where blank.
          CREATE TABLE guided (
            id INTEGER PRIMARY KEY,
            added_by INTEGER NOT NULL REFERENCES batches (id),
            withdrawn_by INTEGER REFERENCES batches (id),
            species TEXT NOT NULL,
            clarity TEXT,
            months TEXT NOT NULL,
            tone TEXT NOT NULL,
            strength INTEGER NOT NULL
          ) STRICT;
          """);

  /** The newest version this program knows. */
  static final int VERSION = STEPS.size();

  private Schema() {}

  static int pragma(Connection connection, String name) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA " + name)) {
      return row.next() ? row.getInt(1) : 0;
    }
  }

  /** Whether the file has anything in it at all. */
  static boolean hasTables(Connection connection) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SELECT 1 FROM sqlite_schema LIMIT 1")) {
      return row.next();
    }
  }

  /** Brings the tables from {@code version} to the newest; the caller holds a write transaction. */
  static void migrate(Connection connection, int version) throws SQLException {
    step(connection, version, VERSION);
  }

  /**
   * Makes the tables of {@code version} in an empty file; the caller holds a write transaction.
   *
   * @throws IllegalArgumentException if there is no such version
   */
  static void make(Connection connection, int version) throws SQLException {
    if (version < 1 || version > VERSION) {
      throw new IllegalArgumentException("there is no version " + version + " of a box");
    }
    step(connection, 0, version);
  }

  private static void step(Connection connection, int from, int to) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      for (String step : STEPS.subList(from, to)) {
        // The driver runs a whole script in one call, triggers and all.
        statement.executeUpdate(step);
      }
      statement.executeUpdate("PRAGMA application_id = " + APPLICATION_ID);
      statement.executeUpdate("PRAGMA user_version = " + to);
    }
  }
}
