package traytally.sheet;

/** A file whose cells cannot be had; the message tells the person why and what to do. */
public final class UnreadableSheetException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String message;

  UnreadableSheetException(String message) {
    super(message);
    this.message = message;
  }

  UnreadableSheetException(String message, Throwable cause) {
    super(message, cause);
    this.message = message;
  }

  /** One or two plain sentences, never absent. */
  @Override
  public String getMessage() {
    return message;
  }
}
