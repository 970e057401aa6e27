package passband.command;

import java.io.IOException;

/** What was printed did not arrive: the pipe is closed or the disk full. */
final class OutputFailure extends IOException {
  private static final long serialVersionUID = 1L;

  private OutputFailure(String message) {
    super(message);
  }

  /** Writes out what is printed so far, and fails where it could not be written. */
  static void check(Invocation invocation) throws OutputFailure {
    boolean out = invocation.out().checkError();
    boolean err = invocation.err().checkError();
    if (out || err) {
      throw new OutputFailure(
          "cannot write to the standard "
              + (out ? "output" : "error output")
              + ": the pipe is closed or the disk is full");
    }
  }
}
