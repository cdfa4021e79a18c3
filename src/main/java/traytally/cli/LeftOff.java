package traytally.cli;

/** The person left in the middle of being asked. */
final class LeftOff extends RuntimeException {
  private static final long serialVersionUID = 1;

  private final boolean stopped;

  private LeftOff(boolean stopped) {
    super(stopped ? "stopped" : "nothing more is typed");
    this.stopped = stopped;
  }

  /** By Ctrl-C. */
  static LeftOff stopped() {
    return new LeftOff(true);
  }

  /** By Ctrl-D, or because the terminal is gone. */
  static LeftOff closed() {
    return new LeftOff(false);
  }

  boolean isStopped() {
    return stopped;
  }
}
