package passband.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import passband.Compiler;
import passband.diagnostic.Diagnostics;
import passband.plan.Plan;
import passband.resolve.Library;
import passband.resolve.Scope;

/**
 * The compiled procedures of a command line's paths, and what was found in them.
 *
 * @param read every file that was read, in order of path
 */
record Compilation(List<Plan> plans, Diagnostics diagnostics, Set<Path> read) {

  /** Loads and compiles; {@code root} and {@code analyzer} are null where none is given. */
  static Compilation of(List<String> paths, Path workingDirectory, String root, String analyzer)
      throws Usage, IOException {
    Diagnostics diagnostics = new Diagnostics();
    Path given = root == null ? null : workingDirectory.resolve(root).normalize();
    List<Plan> plans = new ArrayList<>();
    Sources sources = new Sources(workingDirectory, given);
    for (Library library : sources.load(paths, diagnostics)) {
      plans.addAll(new Compiler(library, analyzer, diagnostics).compile());
    }
    plans.sort(Comparator.comparing(p -> p.name().text()));
    for (int i = 1; i < plans.size(); i++) {
      if (plans.get(i).name().text().equals(plans.get(i - 1).name().text())) {
        Scope.duplicate(diagnostics, "procedure ", plans.get(i - 1).name(), plans.get(i).name());
      }
    }
    return new Compilation(plans, diagnostics, sources.read());
  }
}
