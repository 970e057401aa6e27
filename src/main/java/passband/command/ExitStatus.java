package passband.command;

/** The exit statuses of the program. */
final class ExitStatus {
  /** No errors; there may be warnings. */
  static final int FINE = 0;

  /** Errors in sources, a difference, or a reading that does not pass. */
  static final int FAULTS = 1;

  /** The command could not do its work. */
  static final int CANNOT_RUN = 2;

  private ExitStatus() {}
}
