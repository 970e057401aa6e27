package passband.build;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;

/** A rule in Make's format: the sheets depend on every file that was read. */
public final class Dependencies {
  private Dependencies() {}

  /**
   * The rule, with paths from the working folder where that holds them.
   *
   * @param folder the output folder as the user wrote it
   * @param names of the procedures; at least one
   */
  public static String rule(
      String folder, List<String> names, Set<Path> read, Path workingDirectory) {
    StringBuilder rule = new StringBuilder();
    for (String name : names) {
      rule.append(escaped(folder + "/" + name + "/checklist.html")).append(' ');
    }
    rule.setCharAt(rule.length() - 1, ':');
    for (Path file : read) {
      Path shown = file.startsWith(workingDirectory) ? workingDirectory.relativize(file) : file;
      rule.append(" \\\n  ").append(escaped(shown.toString()));
    }
    return rule.append('\n').toString();
  }

  private static String escaped(String path) {
    return path.replace("$", "$$").replace(" ", "\\ ").replace("#", "\\#");
  }
}
