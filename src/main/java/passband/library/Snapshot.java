package passband.library;

import java.io.IOException;
import java.util.Collection;
import java.util.List;
import java.util.Set;

/**
 * All files of a repository as they are in a commit, in git's index or in the work tree. Paths are
 * from the repository's top.
 */
public interface Snapshot extends SourceReader {

  /** What a person calls it. */
  String name();

  /** The sources under a path, which may be one itself or empty; empty where there are none. */
  List<String> sources(String path) throws IOException;

  /** Those of the paths that are there. */
  Set<String> present(Collection<String> paths) throws IOException;

  /**
   * The files of one folder.
   *
   * @param folder empty for the top, else with a closing {@code /}
   */
  default SourceReader below(String folder) {
    return path -> read(folder + path);
  }
}
