package passband.library;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What changed from one commit to another.
 *
 * @param was the earlier commit's name; of {@code A...B} where the two parted
 * @param now the later commit's name
 * @param wasPaths the changed files that the earlier has, from the top; likewise {@code nowPaths}
 * @param renamed the new path of a file by its old one
 */
public record CommitRange(
    String was,
    String now,
    List<String> wasPaths,
    List<String> nowPaths,
    Map<String, String> renamed) {

  /**
   * Asks git.
   *
   * @param folder somewhere in the work tree
   * @param written {@code A..B} or {@code A...B}
   * @return null where git knows no such commits
   */
  public static @Nullable CommitRange of(Path folder, String written) throws IOException {
    GitProgram git = new GitProgram(folder);
    List<String> named =
        git.lines("rev-parse", "--revs-only", "--no-flags", "--end-of-options", written);
    String last = named.isEmpty() ? "" : named.get(named.size() - 1);
    if (named.size() < 2 || !last.startsWith("^")) {
      return null;
    }
    CommitRange range =
        new CommitRange(
            last.substring(1), named.get(0), new ArrayList<>(), new ArrayList<>(), new TreeMap<>());
    range.take(
        git.names(
            List.of(
                "diff",
                "--no-ext-diff",
                "--no-relative",
                "--name-status",
                "-z",
                "-M",
                range.was,
                range.now)));
    return range;
  }

  /** Takes the states and paths that git lists; a renamed file has two paths. */
  private void take(List<String> listed) {
    for (int i = 0; i + 1 < listed.size(); i += 2) {
      char state = listed.get(i).charAt(0);
      String path = listed.get(i + 1);
      if (state != 'A') {
        wasPaths.add(path);
      }
      if (state == 'R') {
        String to = listed.get(++i + 1);
        renamed.put(path, to);
        nowPaths.add(to);
      } else if (state != 'D') {
        nowPaths.add(path);
      }
    }
  }
}
