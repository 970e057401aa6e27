package passband.command;

import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.file.Path;

/** Calls of the program for tests. */
final class Processes {
  private Processes() {}

  /** A call whose output goes nowhere. */
  static Invocation nowhere() {
    PrintStream none = new PrintStream(OutputStream.nullOutputStream());
    return new Invocation(Path.of("").toAbsolutePath(), none, none, 0, null, false);
  }
}
