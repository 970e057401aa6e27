package passband.build;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.TextReport;
import passband.library.Dependents;
import passband.library.Snapshot;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.plan.Profile;

/**
 * Both sides of a change of some files of a repository: the sources that depend on them, on either
 * side, each compiled with what it uses from the side's own snapshot. No other source is compiled.
 */
public final class SnapshotDiff {
  private final Side was;
  private final Side now;
  private final TreeMap<String, TreeSet<String>> dependents = new TreeMap<>();
  private final List<String> failed = new ArrayList<>();
  private final Map<String, String> renamed;

  /** What of one side is compared, and the errors that kept the rest from it. */
  public static final class Side {
    private final SnapshotSide side;
    private final List<Plan> plans = new ArrayList<>();
    private final List<Profile> declared = new ArrayList<>();
    private final Set<String> errors = new LinkedHashSet<>();

    private Side(SnapshotSide side) {
      this.side = side;
    }

    /** The procedures that depend on what changed. */
    public List<Plan> plans() {
      return plans;
    }

    /** What the changed files declare besides procedures. */
    public List<Profile> declared() {
      return declared;
    }

    /** Each error once, as text. */
    public Set<String> errors() {
      return errors;
    }

    /** What the side is called. */
    public String name() {
      return side.snapshot().name();
    }
  }

  /**
   * Compiles.
   *
   * @param wasChanged the changed files that the old side has; likewise {@code nowChanged}
   * @param renamed the new path of a file by its old one
   */
  public SnapshotDiff(
      Snapshot was,
      Collection<String> wasChanged,
      Snapshot now,
      Collection<String> nowChanged,
      Map<String, String> renamed)
      throws UsageException, IOException {
    this.renamed = renamed;
    this.was = new Side(new SnapshotSide(was, wasChanged));
    this.now = new Side(new SnapshotSide(now, nowChanged));
    Map<String, String> before = new TreeMap<>();
    renamed.forEach((from, to) -> before.put(to, from));
    this.now.side.dependents().forEach((file, through) -> note(file, through));
    this.was
        .side
        .dependents()
        .forEach((file, through) -> note(renamed.getOrDefault(file, file), through));
    for (Map.Entry<String, TreeSet<String>> one : dependents.entrySet()) {
      String file = one.getKey();
      compile(before.getOrDefault(file, file), file, one.getValue());
    }
  }

  /** A source's own procedures; none where there is an error in what it uses. */
  public static List<Plan> own(Snapshot snapshot, String source)
      throws UsageException, IOException {
    SnapshotSide.Compiled compiled =
        new SnapshotSide(snapshot, List.of(), List.of(source)).compiled(source);
    return compiled.errors().stopComparison() ? List.of() : compiled.plans();
  }

  private void note(String file, TreeSet<String> through) {
    TreeSet<String> noted = dependents.computeIfAbsent(file, f -> new TreeSet<>());
    through.forEach(one -> noted.add(newPath(one)));
  }

  private void compile(String oldPath, String newPath, Set<String> through)
      throws UsageException, IOException {
    SnapshotSide.Compiled old = was.side.compiled(oldPath);
    SnapshotSide.Compiled fresh = now.side.compiled(newPath);
    if (old.errors().stopComparison() || fresh.errors().stopComparison()) {
      failed.add(newPath);
      say(was, old);
      say(now, fresh);
      return;
    }
    was.plans.addAll(old.plans());
    now.plans.addAll(fresh.plans());
    if (through.contains(newPath)) {
      was.declared.addAll(old.declared());
      now.declared.addAll(fresh.declared());
    }
  }

  private static void say(Side side, SnapshotSide.Compiled compiled) {
    for (Diagnostic error : compiled.errors().list()) {
      side.errors.add(TextReport.of(List.of(error)));
    }
  }

  /** The old side. */
  public Side was() {
    return was;
  }

  /** The new side. */
  public Side now() {
    return now;
  }

  /** The sources that depend on what changed, by their new path, each with what it uses of it. */
  public TreeMap<String, TreeSet<String>> dependents() {
    return dependents;
  }

  /** Those of them with an error on either side: they are not compared. */
  public List<String> failed() {
    return failed;
  }

  /** The path that a source has on the new side, where that has it. */
  public String newPath(String path) {
    return renamed.getOrDefault(path, path);
  }

  /** The new side's procedures that depend on nothing that changed, as their sources name them. */
  public List<String> unaffected() throws IOException {
    List<String> unaffected = new ArrayList<>();
    Snapshot snapshot = now.side.snapshot();
    for (String source : snapshot.sources("")) {
      if (!dependents.containsKey(source)) {
        for (String name : Dependents.procedures(snapshot.read(source))) {
          unaffected.add(name + ", " + source);
        }
      }
    }
    return unaffected;
  }
}
