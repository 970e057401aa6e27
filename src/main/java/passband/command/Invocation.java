package passband.command;

import java.io.PrintStream;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Where and how the program is called.
 *
 * @param workingDirectory absolute
 * @param mostRuns after how many runs {@code --watch} ends; 0 for never
 * @param program identifies this program among others that may write other bytes; null when that is
 *     not known, or not asked for
 * @param terminal whether a person looks at a terminal: then there are colours and progress
 */
record Invocation(
    Path workingDirectory,
    PrintStream out,
    PrintStream err,
    int mostRuns,
    @Nullable String program,
    boolean terminal) {
  /** The same with another stream for what is printed, which is no terminal. */
  Invocation printingTo(PrintStream other) {
    return new Invocation(workingDirectory, other, err, mostRuns, program, false);
  }
}
