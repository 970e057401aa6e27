package passband.build;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.resolve.Scope;
import passband.source.Span;
import passband.syntax.Word;

/** What was found in all groups, put together. */
public final class Findings {
  private final Diagnostics diagnostics = new Diagnostics();
  private final Set<Span> usedAllows = new HashSet<>();
  private final Map<String, Word> names = new HashMap<>();
  private final Set<Path> read = new TreeSet<>();

  /** Takes a group's. */
  public void take(CompilationUnit.Found found) {
    diagnostics.take(found.diagnostics());
    usedAllows.addAll(found.usedAllows());
    for (Path path : found.consulted()) {
      if (!read.contains(path) && Files.exists(path)) {
        read.add(path);
      }
    }
    Set<String> own = new HashSet<>();
    for (Word name : found.names()) {
      boolean twin = !own.add(name.text()); // the compiler has said so
      Word first = names.putIfAbsent(name.text(), name);
      if (first != null && !twin) {
        Scope.duplicate(diagnostics, "procedure ", first, name);
      }
    }
  }

  /** Every file that was read, in order of path. */
  public Set<Path> read() {
    return read;
  }

  /**
   * All of it. An allow in a shared file is unused when no group has a use for it, and while there
   * are errors none is reported: it may be for what was not reached.
   */
  public Diagnostics diagnostics() {
    boolean faults = diagnostics.hasErrors();
    if (faults || !usedAllows.isEmpty()) {
      diagnostics.removeIf(
          d -> d.code() == Code.ALLOW_UNUSED && (faults || usedAllows.contains(d.span())));
    }
    return diagnostics;
  }
}
