package traytally.intake;

/** A list that cannot be read as it is; the message tells the person why and what to do. */
public final class ListRefusedException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  ListRefusedException(String message) {
    super(message);
  }
}
