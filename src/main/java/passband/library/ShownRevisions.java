package passband.library;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * From which revisions the two versions of a file are that git shows. Git tells an external diff
 * only the blobs; its own command line says more, and where it does not, the history.
 */
public final class ShownRevisions {
  private static final Set<String> LOGS = Set.of("show", "log", "whatchanged", "format-patch");
  private static final Set<String> DIFFS = Set.of("diff", "diff-index", "diff-files", "diff-tree");
  private static final String FROM = " (from ";

  /** One version of a file; the blob's name, null where it is only in the work tree. */
  public record Version(String path, boolean absent, @Nullable String blob) {}

  /**
   * Where a version is from.
   *
   * @param revision a commit's name or {@link Git#INDEX}; null for the work tree
   * @param doubt why it may be another one; empty where it is certain
   */
  public record Origin(@Nullable String revision, String doubt) {
    private static final Origin WORK_TREE = new Origin(null, "");

    private static Origin of(String revision) {
      return new Origin(revision, "");
    }

    private Origin but(String doubt) {
      return new Origin(revision, doubt);
    }
  }

  /** The origins of both versions. */
  public record Pair(Origin was, Origin now) {}

  private final GitProgram git;
  private final List<String> words;

  /**
   * @param folder the top of the work tree
   * @param words of the command of git, itself first; empty where it is not known
   */
  public ShownRevisions(Path folder, List<String> words) {
    this.git = new GitProgram(folder);
    this.words = words;
  }

  /** The origins of the two versions that an external diff is called with. */
  public Pair of(Version was, Version now) throws IOException {
    boolean reversed = words.contains("-R");
    List<Pair> fitting = new ArrayList<>();
    for (Pair pair : reversed ? candidates(now, was) : candidates(was, now)) {
      Pair shown = reversed ? new Pair(pair.now, pair.was) : pair;
      if (holds(shown.was, was) && holds(shown.now, now)) {
        fitting.add(shown);
      }
    }
    if (!fitting.isEmpty()) {
      Pair first = fitting.get(0);
      String doubt =
          fitting.size() == 1 ? "" : "one of " + fitting.size() + " commits with this change";
      return new Pair(first.was.but(doubt), first.now.but(doubt));
    }
    Origin old = searched(was);
    Origin fresh = searched(now);
    if (was.absent) {
      old = fresh.revision == null ? Origin.of("HEAD") : Origin.of(before(fresh.revision));
      old = old.but(old.doubt.isEmpty() ? fresh.doubt : old.doubt);
    }
    return new Pair(old, now.absent ? Origin.WORK_TREE.but("the file is deleted") : fresh);
  }

  private @Nullable String parent(String commit) throws IOException {
    return git.line("rev-parse", "--verify", "--quiet", commit + "^1^{commit}");
  }

  /** A commit's first parent; of one that has none, the tree without a file. */
  private String before(String commit) throws IOException {
    String parent = parent(commit);
    String empty = parent == null ? git.line("hash-object", "-t", "tree", "--stdin") : parent;
    return empty == null ? commit : empty;
  }

  private List<Pair> candidates(Version was, Version now) throws IOException {
    String command = words.isEmpty() ? "" : words.get(0);
    if (DIFFS.contains(command)) {
      return diffed();
    }
    return LOGS.contains(command) ? logged(was, now) : List.of();
  }

  // ---- a diff's revisions ----

  private List<Pair> diffed() throws IOException {
    boolean cached = words.contains("--cached") || words.contains("--staged");
    List<String> positive = new ArrayList<>();
    List<String> negative = new ArrayList<>();
    for (String one : named()) {
      if (one.startsWith("^")) {
        negative.add(one.substring(1));
      } else {
        positive.add(one);
      }
    }
    if (words.contains("--merge-base") && negative.isEmpty() && !positive.isEmpty()) {
      String other = positive.size() == 1 ? "HEAD" : positive.get(1);
      String base = git.line("merge-base", positive.get(0), other);
      positive.set(0, base == null ? positive.get(0) : base);
    }
    Origin rest = cached ? Origin.of(Git.INDEX) : Origin.WORK_TREE;
    return switch (positive.size() * 2 + negative.size()) {
      case 0 -> List.of(new Pair(Origin.of(cached ? "HEAD" : Git.INDEX), rest));
      case 2 -> List.of(new Pair(Origin.of(positive.get(0)), rest));
      case 3 -> List.of(new Pair(Origin.of(negative.get(0)), Origin.of(positive.get(0))));
      case 4 -> List.of(new Pair(Origin.of(positive.get(0)), Origin.of(positive.get(1))));
      case 5 -> List.of(new Pair(Origin.of(negative.get(0)), Origin.of(positive.get(0))));
      default -> List.of();
    };
  }

  private List<String> named() throws IOException {
    List<String> arguments = new ArrayList<>(List.of("rev-parse", "--revs-only", "--no-flags"));
    arguments.addAll(CallingGit.revisions(words));
    return git.lines(arguments.toArray(new String[0]));
  }

  // ---- the commits of a log ----

  private List<Pair> logged(Version was, Version now) throws IOException {
    List<String> revisions = new ArrayList<>(named());
    if (revisions.isEmpty()) {
      revisions.add("HEAD");
    }
    boolean walk = !words.get(0).equals("show");
    for (String one : revisions) {
      walk |= one.startsWith("^");
    }
    List<String> arguments =
        new ArrayList<>(
            List.of(
                "log", "-m", "--root", "--raw", "--no-abbrev", "--no-renames", "--full-history"));
    arguments.addAll(List.of("--format=oneline", "--no-color", walk ? "--do-walk" : "--no-walk"));
    arguments.addAll(revisions);
    List<Pair> pairs = matching(arguments, List.of("--", was.path, now.path), was, now);
    return pairs.isEmpty() ? matching(arguments, List.of("--"), was, now) : pairs;
  }

  /** The commits, each against one of its parents, in which a raw line has the version's blob. */
  private List<Pair> matching(List<String> arguments, List<String> paths, Version was, Version now)
      throws IOException {
    List<String> all = new ArrayList<>(arguments);
    all.addAll(paths);
    List<Pair> pairs = new ArrayList<>();
    String commit = "";
    String from = null;
    String blob = (now.absent ? was : now).blob;
    boolean taken = false;
    for (String line : git.lines(all.toArray(new String[0]))) {
      if (!line.startsWith(":")) {
        commit = line.substring(0, Math.max(line.indexOf(' '), 0));
        boolean merge = line.startsWith(FROM, commit.length());
        int start = commit.length() + FROM.length();
        from = merge ? line.substring(start, start + commit.length()) : null;
        taken = false;
      } else if (!taken && blob != null && line.split(" ")[now.absent ? 2 : 3].equals(blob)) {
        taken = true;
        pairs.add(new Pair(Origin.of(from == null ? before(commit) : from), Origin.of(commit)));
      }
    }
    return pairs;
  }

  // ---- one version alone ----

  /** A version's path from the top and where it is from. */
  public record Found(String path, Origin origin) {}

  /**
   * What a textconv is called with.
   *
   * @param file in the work tree, or a copy of a blob under the same name
   * @param blob its name
   */
  public @Nullable Found of(String file, @Nullable String blob) throws IOException {
    boolean copied = file.startsWith("/") || file.contains(":");
    if (!copied || blob == null) {
      return copied ? null : new Found(file, Origin.WORK_TREE);
    }
    String name = file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
    List<Origin> origins = new ArrayList<>();
    Version version = new Version(":(glob)**/" + name, false, blob);
    for (Pair pair : candidates(version, version)) {
      origins.add(pair.now);
      origins.add(pair.was);
    }
    for (Pair pair : candidates(version, new Version(version.path, true, null))) {
      origins.add(pair.was);
    }
    List<Found> found = found(origins, name, blob);
    if (!found.isEmpty()) {
      String doubt =
          found.size() == 1 ? "" : "one of " + found.size() + " revisions with this version";
      return new Found(found.get(0).path, found.get(0).origin.but(doubt));
    }
    origins = new ArrayList<>(List.of(Origin.of("HEAD"), Origin.of(Git.INDEX)));
    String listed = git.line("log", "--all", "-m", "--format=%H", "--find-object=" + blob);
    if (listed != null) {
      origins.add(Origin.of(listed));
      origins.add(Origin.of(before(listed)));
    }
    found = found(origins, name, blob);
    return found.isEmpty()
        ? null
        : new Found(found.get(0).path, found.get(0).origin.but("it has this version of the file"));
  }

  private List<Found> found(List<Origin> origins, String name, String blob) throws IOException {
    List<Found> found = new ArrayList<>();
    Set<Origin> seen = new HashSet<>();
    for (Origin origin : origins) {
      String path = seen.add(origin) ? path(origin, name, blob) : null;
      if (path != null) {
        found.add(new Found(path, origin));
      }
    }
    return found;
  }

  /** The path of a blob under this name; null where there is none. */
  private @Nullable String path(Origin origin, String name, String blob) throws IOException {
    if (origin.revision == null) {
      return null;
    }
    List<String> arguments =
        origin.revision.equals(Git.INDEX)
            ? List.of("ls-files", "-s", "-z", "--full-name", "--", ":(top)")
            : List.of("ls-tree", "-r", "-z", "--full-tree", origin.revision);
    for (String line : git.names(arguments)) {
      String path = line.substring(line.indexOf('\t') + 1);
      if (line.contains(" " + blob) && (path.equals(name) || path.endsWith("/" + name))) {
        return path;
      }
    }
    return null;
  }

  // ---- by the blob alone ----

  private boolean holds(Origin origin, Version version) throws IOException {
    if (version.absent) {
      return true;
    }
    if (origin.revision == null || version.blob == null) {
      return origin.revision == null && (version.blob == null || onDisk(version));
    }
    String there =
        git.line("rev-parse", "--verify", "--quiet", origin.revision + ":" + version.path);
    return version.blob.equals(there);
  }

  private boolean onDisk(Version version) throws IOException {
    return version.blob != null && version.blob.equals(git.line("hash-object", "--", version.path));
  }

  /** The work tree for what is nowhere else, else the newest commit that has this version. */
  private Origin searched(Version version) throws IOException {
    if (version.absent || version.blob == null) {
      return Origin.WORK_TREE;
    }
    for (String one : List.of("HEAD", Git.INDEX)) {
      if (holds(Origin.of(one), version)) {
        return Origin.of(one).but("it has this version of the file");
      }
    }
    for (String commit :
        git.lines(
            "log",
            "--all",
            "-m",
            "--format=%H",
            "--find-object=" + version.blob,
            "--",
            version.path)) {
      if (holds(Origin.of(commit), version)) {
        return Origin.of(commit).but("the newest commit that has this version of the file");
      }
      String parent = parent(commit);
      if (parent != null && holds(Origin.of(parent), version)) {
        return Origin.of(parent).but("the newest commit that has this version of the file");
      }
    }
    return Origin.WORK_TREE.but("no commit with this version of the file was found");
  }
}
