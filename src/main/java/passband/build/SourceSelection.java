package passband.build;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import passband.library.Paths;
import passband.library.Root;
import passband.library.UsageException;
import passband.library.UseGraph;

/**
 * Turns the paths of a command line into groups of files: a folder is its own root, a file belongs
 * to the working directory.
 */
public final class SourceSelection {
  private static final String EXTENSION = ".pband";

  private final Path workingDirectory;
  private final Path givenRoot;
  private final String analyzer;

  private SourceSelection(Path workingDirectory, Path givenRoot, String analyzer) {
    this.workingDirectory = workingDirectory;
    this.givenRoot = givenRoot;
    this.analyzer = analyzer;
  }

  /**
   * The groups of files that the paths name, in order; {@code root} and {@code analyzer} are null
   * where none is given.
   */
  public static List<CompilationUnit> groups(
      List<String> paths, Path workingDirectory, String root, String analyzer)
      throws UsageException, IOException {
    if (paths.isEmpty()) {
      throw new UsageException("no file or folder is named");
    }
    Path givenRoot = root == null ? null : workingDirectory.resolve(root).normalize();
    SourceSelection sources = new SourceSelection(workingDirectory, givenRoot, analyzer);
    Map<Path, TreeSet<String>> byRoot = new LinkedHashMap<>();
    for (String path : paths) {
      sources.add(path, byRoot);
    }
    List<CompilationUnit> groups = new ArrayList<>();
    byRoot.forEach((folder, given) -> sources.addGroups(folder, given, groups));
    return groups;
  }

  private void addGroups(Path folder, TreeSet<String> given, List<CompilationUnit> groups) {
    Root root = new Root(folder, shown(folder));
    if (given.size() == 1) {
      groups.add(new CompilationUnit(root, given.first(), Set.of(), Set.of(), Set.of(), Set.of()));
      return;
    }
    UseGraph graph = new UseGraph(given, root.disk());
    Set<String> taken = new HashSet<>();
    for (String start : graph.starts(given)) {
      Set<String> files = graph.from(start);
      Set<String> own = new TreeSet<>(files);
      own.removeAll(taken);
      taken.addAll(files);
      Set<String> named = new TreeSet<>(files);
      named.retainAll(given);
      root.expect(files);
      groups.add(
          new CompilationUnit(
              root, start, files, own, named, analyzer == null ? Set.of() : graph.withAnalyzers()));
    }
  }

  private void add(String written, Map<Path, TreeSet<String>> byRoot)
      throws UsageException, IOException {
    Path path = workingDirectory.resolve(written).normalize();
    if (!Files.exists(path)) {
      throw new UsageException("there is no file or folder " + written);
    }
    if (Files.isDirectory(path)) {
      Path root = givenRoot == null ? path : givenRoot;
      List<Path> found = sourcesIn(path);
      if (found.isEmpty()) {
        throw new UsageException("there is no " + EXTENSION + " file in " + written);
      }
      for (Path file : found) {
        byRoot.computeIfAbsent(root, r -> new TreeSet<>()).add(relative(root, file));
      }
      return;
    }
    Path root =
        givenRoot != null
            ? givenRoot
            : path.startsWith(workingDirectory) ? workingDirectory : path.getParent();
    byRoot.computeIfAbsent(root, r -> new TreeSet<>()).add(relative(root, path));
  }

  public static List<Path> sourcesIn(Path folder) throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(
              p -> p.getFileName().toString().endsWith(EXTENSION) && Files.isRegularFile(p))
          .toList();
    }
  }

  private static String relative(Path root, Path file) throws UsageException {
    if (!file.startsWith(root)) {
      throw new UsageException(file + " is not under the library root " + root);
    }
    return Paths.of(root.relativize(file));
  }

  /** What stands before a file's path in messages. */
  private String shown(Path root) {
    if (root.equals(workingDirectory)) {
      return "";
    }
    Path shown = root.startsWith(workingDirectory) ? workingDirectory.relativize(root) : root;
    return Paths.of(shown) + "/";
  }
}
