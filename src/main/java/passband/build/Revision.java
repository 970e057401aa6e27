package passband.build;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.compile.Compiler;
import passband.diagnostic.Diagnostics;
import passband.library.DisplayPaths;
import passband.library.Git;
import passband.library.GitObjects;
import passband.library.Library;
import passband.library.LibraryRoot;
import passband.library.Paths;
import passband.library.UnforeseenException;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.plan.Profile;

/**
 * Compiles sources of a commit. Its libraries have the roots that they would have on a disk, with
 * the repository's top for git's.
 */
public final class Revision {
  private final Path workingDirectory;
  private final String revision;
  private final GitObjects objects;
  private final Git git;

  /**
   * @param revision whatever names a commit to git
   */
  public Revision(Path workingDirectory, String revision) {
    this.workingDirectory = workingDirectory;
    this.revision = revision;
    this.objects = new GitObjects(workingDirectory);
    this.git = new Git(workingDirectory, revision, objects);
  }

  /**
   * The procedures of a file or folder.
   *
   * @param path from the repository's top
   * @param root the library's root on the disk; null for the rule's
   * @param analyzer null for each procedure's own
   */
  public Compilation<Plan> compiled(String path, @Nullable String root, @Nullable String analyzer)
      throws UsageException, IOException {
    try (objects) {
      return compilation(path, root, analyzer);
    }
  }

  private Compilation<Plan> compilation(
      String path, @Nullable String root, @Nullable String analyzer)
      throws UsageException, IOException {
    List<String> sources = git.sources(path);
    if (sources.isEmpty()) {
      throw new UsageException("no .pband file at " + revision + ":" + path);
    }
    Diagnostics diagnostics = new Diagnostics();
    List<Plan> plans = new ArrayList<>();
    List<Profile> declared = new ArrayList<>();
    for (Map.Entry<String, List<String>> one :
        SnapshotRoots.of(git, sources, given(root)).entrySet()) {
      String folder = one.getKey();
      String shown = revision + ":" + folder;
      String name = folder.isEmpty() ? shown : shown.substring(0, shown.length() - 1);
      Library library =
          new Library(
              DisplayPaths.prefixed(name, shown), file -> git.read(folder + file), diagnostics);
      for (String source : one.getValue()) {
        if (!source.startsWith(folder)) {
          throw new UsageException(LibraryRoot.outside(revision + ":" + source, name));
        }
        library.load(source.substring(folder.length()));
      }
      Compiler compiler = new Compiler(library, analyzer, diagnostics);
      plans.addAll(UnforeseenException.at(revision + ":" + path, compiler::compile));
      Set<String> named = new TreeSet<>();
      one.getValue().forEach(source -> named.add(source.substring(folder.length())));
      declared.addAll(compiler.declared(file -> named.contains(library.pathOf(file))));
    }
    return new Compilation<>(plans, declared, diagnostics, Set.of());
  }

  /** The given root from the repository's top, as {@link #folder} writes it; null for none. */
  private @Nullable String given(@Nullable String root) throws UsageException, IOException {
    if (root == null) {
      return null;
    }
    Path top = workingDirectory.getFileSystem().getPath("/");
    Path here = top.resolve(git.below());
    Path there = workingDirectory.resolve(root).normalize();
    if (!Objects.equals(there.getRoot(), workingDirectory.getRoot())) {
      throw new UsageException("the library root " + root + " is outside the repository");
    }
    for (Path part : workingDirectory.relativize(there)) {
      here = part.toString().equals("..") ? here.getParent() : here.resolve(part);
      if (here == null) {
        throw new UsageException("the library root " + root + " is outside the repository");
      }
    }
    String folder = Paths.of(top.relativize(here.normalize()));
    return folder.isEmpty() ? "" : folder + "/";
  }
}
