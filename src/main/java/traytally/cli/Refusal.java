package traytally.cli;

/** A command that cannot go on, with its exit code and one or two sentences for the person. */
final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final int code;

  Refusal(int code, String message) {
    super(message);
    this.code = code;
  }

  Refusal(int code, String message, Throwable cause) {
    super(message, cause);
    this.code = code;
  }

  String sentence() {
    return String.valueOf(getMessage());
  }

  int code() {
    return code;
  }
}
