package passband.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import passband.diagnostic.Diagnostics;
import passband.resolve.Library;

/**
 * Turns the paths of a command line into loaded libraries: a folder is its own root, a file belongs
 * to the working directory.
 */
final class Sources {
  private static final String EXTENSION = ".pband";

  private final Path workingDirectory;
  private final Path givenRoot;
  private final Set<Path> read = new TreeSet<>();

  /**
   * @param givenRoot the library root from the command line; null when none is given
   */
  Sources(Path workingDirectory, Path givenRoot) {
    this.workingDirectory = workingDirectory;
    this.givenRoot = givenRoot;
  }

  /**
   * The libraries that the paths name, each root once, with every file loaded; faults in them go to
   * the diagnostics.
   */
  List<Library> load(List<String> paths, Diagnostics diagnostics) throws Usage, IOException {
    if (paths.isEmpty()) {
      throw new Usage("no file or folder is named");
    }
    Map<Path, TreeSet<String>> byRoot = new LinkedHashMap<>();
    for (String path : paths) {
      add(path, byRoot);
    }
    List<Library> libraries = new ArrayList<>();
    for (Map.Entry<Path, TreeSet<String>> entry : byRoot.entrySet()) {
      Library library =
          new Library(shown(entry.getKey()), new Disk(entry.getKey(), read::add), diagnostics);
      for (String file : entry.getValue()) {
        load(library, file, entry.getKey());
      }
      libraries.add(library);
    }
    return libraries;
  }

  /** Every file that was read, tables and records among them. */
  Set<Path> read() {
    return read;
  }

  private void load(Library library, String file, Path root) throws Usage {
    try {
      library.load(file);
    } catch (IOException e) {
      throw new Usage("cannot read " + shown(root) + file + ": " + e.getMessage());
    }
  }

  private void add(String written, Map<Path, TreeSet<String>> byRoot) throws Usage, IOException {
    Path path = workingDirectory.resolve(written).normalize();
    if (!Files.exists(path)) {
      throw new Usage("there is no file or folder " + written);
    }
    if (Files.isDirectory(path)) {
      Path root = givenRoot == null ? path : givenRoot;
      List<Path> found = sourcesIn(path);
      if (found.isEmpty()) {
        throw new Usage("there is no " + EXTENSION + " file in " + written);
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

  static List<Path> sourcesIn(Path folder) throws IOException {
    try (Stream<Path> walk = Files.walk(folder)) {
      return walk.filter(
              p -> p.getFileName().toString().endsWith(EXTENSION) && Files.isRegularFile(p))
          .toList();
    }
  }

  private static String relative(Path root, Path file) throws Usage {
    if (!file.startsWith(root)) {
      throw new Usage(file + " is not under the library root " + root);
    }
    return root.relativize(file).toString().replace(file.getFileSystem().getSeparator(), "/");
  }

  /** What stands before a file's path in messages. */
  private String shown(Path root) {
    if (root.equals(workingDirectory)) {
      return "";
    }
    Path shown = root.startsWith(workingDirectory) ? workingDirectory.relativize(root) : root;
    return shown.toString().replace(root.getFileSystem().getSeparator(), "/") + "/";
  }
}
