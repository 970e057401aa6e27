package passband.build;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import passband.compile.Compiler;
import passband.diagnostic.Diagnostics;
import passband.library.Dependents;
import passband.library.DisplayPaths;
import passband.library.Library;
import passband.library.ParsedFiles;
import passband.library.Snapshot;
import passband.library.UnforeseenException;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.plan.Profile;

/** One side of a comparison of snapshots: which sources depend on what changed, each compiled. */
final class SnapshotSide {
  private final Snapshot snapshot;
  private final Collection<String> changed;
  private final Map<String, String> rootOf = new HashMap<>();
  private final Map<String, ParsedFiles> parsed = new HashMap<>();
  private final TreeMap<String, TreeSet<String>> dependents = new TreeMap<>();

  /**
   * @param changed the changed files that this side has
   */
  SnapshotSide(Snapshot snapshot, Collection<String> changed) throws IOException {
    this(snapshot, changed, snapshot.sources(""));
  }

  /**
   * @param sources those that may depend on them
   */
  SnapshotSide(Snapshot snapshot, Collection<String> changed, Collection<String> sources)
      throws IOException {
    this.snapshot = snapshot;
    this.changed = changed;
    Set<String> files = new TreeSet<>(sources);
    Set<String> all = new TreeSet<>(files);
    all.addAll(changed);
    SnapshotRoots.of(snapshot, all, null).forEach((root, own) -> take(root, own, files));
  }

  private void take(String root, List<String> own, Set<String> sources) {
    List<String> inRoot = new ArrayList<>();
    List<String> changedInRoot = new ArrayList<>();
    for (String file : own) {
      rootOf.put(file, root);
      if (sources.contains(file)) {
        inRoot.add(file.substring(root.length()));
      }
      if (changed.contains(file)) {
        changedInRoot.add(file.substring(root.length()));
      }
    }
    if (changedInRoot.isEmpty()) {
      return;
    }
    Dependents.of(inRoot, snapshot.below(root), changedInRoot)
        .forEach(
            (source, through) -> {
              TreeSet<String> fromTop = new TreeSet<>();
              through.forEach(file -> fromTop.add(root + file));
              dependents.put(root + source, fromTop);
            });
  }

  Snapshot snapshot() {
    return snapshot;
  }

  /** The sources that depend on what changed, each with the changed files that it uses. */
  TreeMap<String, TreeSet<String>> dependents() {
    return dependents;
  }

  /** What a source declares; nothing where the side does not have it. */
  Compiled compiled(String source) throws UsageException, IOException {
    Diagnostics errors = new Diagnostics();
    String root = rootOf.get(source);
    if (root == null) {
      return new Compiled(List.of(), List.of(), errors);
    }
    String name = root.isEmpty() ? snapshot.name() : root.substring(0, root.length() - 1);
    ParsedFiles files =
        parsed.computeIfAbsent(
            root, r -> new ParsedFiles(DisplayPaths.prefixed(name, root), snapshot.below(root)));
    String inRoot = source.substring(root.length());
    Library library = new Library(files, errors);
    try {
      library.load(inRoot);
    } catch (NoSuchFileException e) {
      return new Compiled(List.of(), List.of(), errors);
    }
    Compiler compiler = new Compiler(library, null, errors);
    List<Plan> plans = new ArrayList<>(UnforeseenException.at(source, compiler::compile));
    plans.removeIf(plan -> !plan.name().span().file().path().equals(source));
    List<Profile> declared = compiler.declared(file -> library.pathOf(file).equals(inRoot));
    errors.removeIf(d -> !d.isError());
    return new Compiled(plans, declared, errors);
  }

  record Compiled(List<Plan> plans, List<Profile> declared, Diagnostics errors) {}
}
