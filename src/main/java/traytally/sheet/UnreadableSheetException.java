package traytally.sheet;

/** A file whose cells cannot be had; the message tells the person why and what to do. */
public final class UnreadableSheetException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  UnreadableSheetException(String message) {
    super(message);
  }

  UnreadableSheetException(String message, Throwable cause) {
    super(message, cause);
  }
}
