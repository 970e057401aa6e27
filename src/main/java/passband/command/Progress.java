package passband.command;

import java.io.PrintStream;

/** Tells on a terminal how far a long run has come; elsewhere nothing. */
final class Progress {
  private static final long FIRST_NANOS = 1_000_000_000;
  private static final long BETWEEN_NANOS = 100_000_000;

  private final PrintStream err;
  private final boolean terminal;
  private final int all;
  private final long start = System.nanoTime();
  private long last = start;
  private int done;
  private boolean shown;

  /**
   * @param all how many pieces there are
   */
  Progress(PrintStream err, boolean terminal, int all) {
    this.err = err;
    this.terminal = terminal;
    this.all = all;
  }

  /** One more is done. */
  void step() {
    done++;
    long now = System.nanoTime();
    if (terminal && now - start > FIRST_NANOS && now - last > BETWEEN_NANOS) {
      err.print("\r" + done + " of " + all);
      err.flush();
      last = now;
      shown = true;
    }
  }

  /** Takes the line away again. */
  void end() {
    if (shown) {
      err.print("\r" + " ".repeat((all + " of " + all).length()) + "\r");
      err.flush();
    }
  }
}
