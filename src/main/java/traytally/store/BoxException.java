package traytally.store;

import java.nio.file.Path;
import java.sql.SQLException;
import org.sqlite.SQLiteErrorCode;

/** The box cannot be read or written; the message says what is wrong, where, and what to do. */
public final class BoxException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** What is wrong with it. */
  public enum Kind {
    /** Another program holds it, or changed it meanwhile. */
    BUSY,
    /** The file is something else, or is damaged. */
    NOT_A_BOX,
    /** A newer traytally wrote it. */
    TOO_NEW,
    /** The file, its folder or a copy cannot be made. */
    CANNOT_CREATE,
    /** Reading or writing failed. */
    IO
  }

  private final Kind kind;

  BoxException(Kind kind, String message) {
    super(message);
    this.kind = kind;
  }

  BoxException(Kind kind, String message, Throwable cause) {
    super(message, cause);
    this.kind = kind;
  }

  static BoxException notABox(Path file) {
    return new BoxException(
        Kind.NOT_A_BOX,
        file + " is not a traytally box. Name the box with --box, or another place for a new one.");
  }

  static BoxException tooNew(String what) {
    return new BoxException(
        Kind.TOO_NEW, what + " was made by a newer traytally. Install that version to open it.");
  }

  static BoxException damaged(Path file, Exception cause) {
    return new BoxException(
        Kind.NOT_A_BOX, damage(file, String.valueOf(cause.getMessage())), cause);
  }

  static BoxException damaged(Path file, String fault) {
    return new BoxException(Kind.NOT_A_BOX, damage(file, fault));
  }

  private static String damage(Path file, String fault) {
    return "The box "
        + file
        + " is damaged ("
        + fault
        + "). Put a copy back with restore; copies from before each import are in "
        + Copies.folder(file)
        + ".";
  }

  /** What SQLite's result code means for the angler. */
  static BoxException of(Path file, SQLException cause) {
    // The low byte is the primary result code (sqlite.org/rescode.html).
    int code = cause.getErrorCode() & 0xff;
    if (code == SQLiteErrorCode.SQLITE_BUSY.code || code == SQLiteErrorCode.SQLITE_LOCKED.code) {
      return new BoxException(
          Kind.BUSY,
          "Another program is using the box " + file + ". Try again in a moment.",
          cause);
    }
    if (code == SQLiteErrorCode.SQLITE_CORRUPT.code || code == SQLiteErrorCode.SQLITE_NOTADB.code) {
      return damaged(file, cause);
    }
    return new BoxException(
        Kind.IO,
        "The box "
            + file
            + " cannot be read or written ("
            + cause.getMessage()
            + "). Check the disk, and who may write there.",
        cause);
  }

  public Kind kind() {
    return kind;
  }
}
