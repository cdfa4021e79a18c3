package traytally.store;

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

  public Kind kind() {
    return kind;
  }
}
