package passband.build;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.library.DisplayPaths;
import passband.library.LibraryRoot;
import passband.library.Paths;
import passband.library.Root;
import passband.library.SourceFiles;
import passband.library.UsageException;
import passband.library.UseGraph;

/**
 * Turns the paths of a command line into units of files, each in the library that it belongs to.
 */
public final class SourceSelection {
  private final Path workingDirectory;
  private final @Nullable Path givenRoot;
  private final Map<Path, Path> roots = new HashMap<>();
  private final Map<Path, TreeSet<String>> byRoot = new LinkedHashMap<>();

  private SourceSelection(Path workingDirectory, @Nullable Path givenRoot) {
    this.workingDirectory = workingDirectory;
    this.givenRoot = givenRoot;
  }

  /**
   * The units of files that the paths name, in order; {@code root} and {@code analyzer} are null
   * where none is given.
   */
  public static List<CompilationUnit> units(
      List<String> paths, Path workingDirectory, @Nullable String root, @Nullable String analyzer)
      throws UsageException, IOException {
    if (paths.isEmpty()) {
      throw new UsageException("no file or folder is named");
    }
    Path givenRoot = root == null ? null : workingDirectory.resolve(root).normalize();
    if (givenRoot != null && !Files.isDirectory(givenRoot)) {
      throw new UsageException("no such folder: " + root);
    }
    SourceSelection sources = new SourceSelection(workingDirectory, givenRoot);
    for (String path : paths) {
      sources.add(path);
    }
    List<CompilationUnit> units = new ArrayList<>();
    sources.byRoot.forEach(
        (folder, given) ->
            addUnits(
                new Root(folder, DisplayPaths.from(workingDirectory, folder)),
                given,
                analyzer != null,
                units));
    return units;
  }

  private static void addUnits(
      Root root, TreeSet<String> given, boolean retargeted, List<CompilationUnit> units) {
    if (given.size() == 1) {
      units.add(new CompilationUnit(root, given.first(), Set.of(), Set.of(), Set.of(), Set.of()));
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
      units.add(
          new CompilationUnit(
              root, start, files, own, named, retargeted ? graph.withAnalyzers() : Set.of()));
    }
  }

  private void add(String written) throws UsageException, IOException {
    Path path = workingDirectory.resolve(written).normalize();
    if (!Files.exists(path)) {
      throw new UsageException("no such file or folder: " + written);
    }
    if (!Files.isDirectory(path)) {
      add(path, Paths.folder(path));
      return;
    }
    List<Path> found = SourceFiles.in(path);
    if (found.isEmpty()) {
      throw new UsageException("no " + SourceFiles.EXTENSION + " file in " + written);
    }
    for (Path file : found) {
      add(file, path);
    }
  }

  /**
   * Adds a file to those of its library.
   *
   * @param own its root where no rule names another
   */
  private void add(Path file, Path own) throws UsageException {
    Path root = givenRoot == null ? root(Paths.folder(file), own) : givenRoot;
    if (!file.startsWith(root)) {
      throw new UsageException(LibraryRoot.outside(file.toString(), root.toString()));
    }
    byRoot.computeIfAbsent(root, r -> new TreeSet<>()).add(Paths.of(root.relativize(file)));
  }

  private Path root(Path folder, Path own) {
    Path root = roots.get(folder);
    if (root == null) {
      root = LibraryRoot.of(folder, workingDirectory, own);
      roots.put(folder, root);
    }
    return root;
  }
}
