package traytally.cli;

/**
 * Exit codes: those of sysexits.h (4.3BSD) where it has one.
 *
 * <p>0 done; 1 done, but something needs attention and the person asked to be told.
 */
final class Exit {
  static final int OK = 0;
  static final int ATTENTION = 1;
  static final int USAGE = 2;

  /** EX_DATAERR. */
  static final int DATA = 65;

  /** EX_NOINPUT. */
  static final int NO_INPUT = 66;

  /** EX_SOFTWARE: a fault of our own. */
  static final int FAULT = 70;

  /** EX_CANTCREAT. */
  static final int CANNOT_CREATE = 73;

  /** EX_IOERR. */
  static final int IO = 74;

  /** EX_TEMPFAIL. */
  static final int BUSY = 75;

  /** Stopped by Ctrl-C, as a shell reports it: 128 and the number of SIGINT (POSIX). */
  static final int STOPPED = 130;

  private Exit() {}
}
