package passband.build;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import passband.compile.FoundTogether;
import passband.diagnostic.Diagnostics;

/** What was found in all groups, and every file that was read for it. */
public final class Findings {
  private final FoundTogether together = new FoundTogether();
  private final Set<Path> read = new TreeSet<>();

  /** Takes a group's. */
  public void take(CompilationUnit.Found found) {
    together.take(found.diagnostics(), found.usedAllows(), found.takenUp(), found.names());
    for (Path path : found.consulted()) {
      if (!read.contains(path) && Files.exists(path)) {
        read.add(path);
      }
    }
  }

  /** Every file that was read, in order of path. */
  public Set<Path> read() {
    return read;
  }

  /** All of it, as {@link FoundTogether#diagnostics} puts it together. */
  public Diagnostics diagnostics() {
    return together.diagnostics();
  }
}
