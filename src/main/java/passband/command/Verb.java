package passband.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Set;
import passband.library.UsageException;

/** What one command does. */
interface Verb {
  /** Does it; the exit status. */
  int run(Arguments arguments) throws UsageException, IOException;

  /** The files that the last run read, for {@code --watch}. */
  default Set<Path> read() {
    return Set.of();
  }
}
