package passband.library;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The command of git that this program was called by, as far as the system tells. */
public final class CallingGit {
  /** Git's own options that a value follows. */
  private static final Set<String> OWN =
      Set.of("-C", "-c", "--git-dir", "--work-tree", "--namespace");

  /** Options of its commands whose value could pass for a revision. */
  private static final Set<String> VALUED =
      Set.of("-S", "-G", "-O", "-l", "--output", "--diff-filter");

  private CallingGit() {}

  /** The nearest git above this process: its command and what follows it; empty for none. */
  public static List<String> words(Path folder) throws IOException {
    Optional<ProcessHandle> above = ProcessHandle.current().parent();
    while (above.isPresent()) {
      ProcessHandle.Info info = above.get().info();
      String command = info.command().orElse("");
      String name =
          command.substring(Math.max(command.lastIndexOf('/'), command.lastIndexOf('\\')) + 1);
      if (name.equals("git") || name.equals("git.exe")) {
        return command(
            Arrays.asList(info.arguments().orElse(new String[0])), new GitProgram(folder));
      }
      above = above.get().parent();
    }
    return List.of();
  }

  private static List<String> command(List<String> arguments, GitProgram git) throws IOException {
    int at = 0;
    while (at < arguments.size() && arguments.get(at).startsWith("-")) {
      at += OWN.contains(arguments.get(at)) ? 2 : 1;
    }
    if (at >= arguments.size()) {
      return List.of();
    }
    List<String> words = new ArrayList<>(arguments.subList(at, arguments.size()));
    String alias = git.line("config", "--get", "alias." + words.get(0));
    if (alias != null && !alias.startsWith("!")) {
      words.remove(0);
      words.addAll(0, Arrays.asList(alias.strip().split(" +")));
    }
    return words;
  }

  /**
   * The folder that the paths start at which git passes on: empty for the top, else with a closing
   * {@code /}.
   *
   * @param folder the one that git was called in, as it tells; null where it does not
   */
  public static String relativeTo(List<String> words, @Nullable String folder) {
    String relative = "--relative";
    for (String word : words) {
      if (word.startsWith(relative + "=")) {
        String given = word.substring(relative.length() + 1);
        return given.isEmpty() || given.endsWith("/") ? given : given + "/";
      }
    }
    return folder != null && words.contains(relative) ? folder : "";
  }

  /** The words between a command and its paths that may name revisions. */
  static List<String> revisions(List<String> words) {
    List<String> revisions = new ArrayList<>();
    for (int i = 1; i < words.size() && !words.get(i).equals("--"); i++) {
      if (VALUED.contains(words.get(i))) {
        i++;
      } else {
        revisions.add(words.get(i));
      }
    }
    return revisions;
  }
}
