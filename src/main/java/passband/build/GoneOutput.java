package passband.build;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import passband.library.Paths;

/**
 * The output of procedures that are gone from the sources: a technician could still print it. It is
 * named, or with {@code --prune} removed as far as Passband wrote it.
 *
 * @param prune whether to remove it
 * @param looked whether this build looked at all procedures of a source that is there
 */
record GoneOutput(boolean prune, Predicate<Path> looked) {

  /**
   * A line for each procedure that is gone.
   *
   * @param written what is removed is forgotten there
   * @param built the procedures that are there
   */
  List<String> said(Path out, WrittenFiles written, Set<String> built) throws IOException {
    List<String> said = new ArrayList<>();
    for (String procedure : gone(out, written, built)) {
      if (!OutputFolder.exists(out.resolve(procedure))) {
        written.forget(procedure);
      } else if (prune) {
        said.add(pruned(out, procedure, written));
      } else {
        said.add(
            "warning: "
                + out.resolve(procedure)
                + ": no source declares the procedure '"
                + procedure
                + "' any more (build with --prune to remove its output)");
      }
    }
    return said;
  }

  /** The procedures that are gone, in order. */
  Set<String> gone(Path out, WrittenFiles written, Set<String> built) {
    Set<String> gone = new TreeSet<>();
    for (Map.Entry<String, String> made : written.sources().entrySet()) {
      Path source = Paths.resolve(out.toAbsolutePath().normalize(), made.getValue()).normalize();
      boolean absent = !Files.exists(source) || looked.test(source);
      if (absent && !built.contains(made.getKey())) {
        gone.add(made.getKey());
      }
    }
    return gone;
  }

  private static String pruned(Path out, String procedure, WrittenFiles written)
      throws IOException {
    TreeSet<Path> folders = new TreeSet<>();
    Path folder = out.resolve(procedure);
    folders.add(folder);
    for (String path : written.of(procedure)) {
      Path file = Paths.resolve(out, path);
      if (behindLink(folder, file)) {
        continue;
      }
      folders.add(Paths.folder(file));
      if (written.asWritten(path, file)) {
        Files.delete(file);
      }
    }
    written.forget(procedure);
    boolean empty = true;
    for (Path made : folders.descendingSet()) {
      empty = OutputFolder.isFolder(made) && OutputFolder.in(made).isEmpty();
      if (empty) {
        Files.delete(made);
      }
    }
    return empty
        ? "removed " + folder
        : "warning: " + folder + ": what Passband wrote is removed; other or changed files stay";
  }

  /** Whether a folder on the way to a file is a link, and the file so outside. */
  private static boolean behindLink(Path folder, Path file) {
    for (Path way = Paths.folder(file);
        way.startsWith(folder.toAbsolutePath());
        way = Paths.folder(way)) {
      if (!OutputFolder.isFolder(way)) {
        return true;
      }
    }
    return false;
  }
}
