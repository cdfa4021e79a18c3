package traytally.bench;

/** An empty program: what starting Java costs by itself. */
public final class Nothing {
  private Nothing() {}

  /** Does nothing. */
  public static void main(String[] args) {}
}
