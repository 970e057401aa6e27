package passband.build;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.library.LibraryRoot;
import passband.library.Snapshot;

/** The library roots of a snapshot: the folders that are marked, else the repository's top. */
final class SnapshotRoots {
  private SnapshotRoots() {}

  /**
   * Files by the root of the library that they belong to.
   *
   * @param given the root of all; null for the rule's. Empty for the top, else with a closing
   *     {@code /}, as are the roots
   */
  static Map<String, List<String>> of(
      Snapshot snapshot, Collection<String> files, @Nullable String given) throws IOException {
    Set<String> marked = given == null ? marked(snapshot, files) : Set.of();
    Map<String, List<String>> byRoot = new TreeMap<>();
    for (String file : files) {
      String root =
          given == null
              ? LibraryRoot.of(folder(file), SnapshotRoots::above, marked::contains, "")
              : given;
      byRoot.computeIfAbsent(root, r -> new ArrayList<>()).add(file);
    }
    return byRoot;
  }

  /** The folders above the files that the library's own marker is in. */
  private static Set<String> marked(Snapshot snapshot, Collection<String> files)
      throws IOException {
    Set<String> asked = new TreeSet<>();
    for (String file : files) {
      for (String folder = folder(file); folder != null; folder = above(folder)) {
        asked.add(folder + LibraryRoot.MARKER);
      }
    }
    Set<String> marked = new TreeSet<>();
    snapshot.present(asked).forEach(marker -> marked.add(folder(marker)));
    return marked;
  }

  /** The folder of a file: empty for the top, else with a closing {@code /}. */
  private static String folder(String file) {
    return file.substring(0, file.lastIndexOf('/') + 1);
  }

  private static @Nullable String above(String folder) {
    return folder.isEmpty() ? null : folder(folder.substring(0, folder.length() - 1));
  }
}
