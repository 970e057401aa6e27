package passband.build;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import passband.library.Paths;
import passband.library.UsageException;

/** A rule in Make's format: every file that was written depends on every one that was read. */
public final class Dependencies {
  private Dependencies() {}

  /**
   * The rule, with paths from the working folder where that holds them. The sheets come first: a
   * tool that compares one output with its own rule takes the first.
   *
   * @param folder the output folder as the user wrote it
   * @param names of the procedures; at least one
   * @param files the output, by path below that folder
   */
  public static String rule(
      String folder, List<String> names, Set<String> files, Set<Path> read, Path workingDirectory) {
    Set<String> written = new LinkedHashSet<>();
    names.forEach(name -> written.add(name + "/checklist.html"));
    written.addAll(files);
    String below = Paths.of(workingDirectory.getFileSystem().getPath(folder));
    StringBuilder rule = new StringBuilder();
    written.forEach(file -> rule.append(escaped(below + "/" + file)).append(" \\\n"));
    rule.replace(rule.length() - " \\\n".length(), rule.length(), ":");
    for (Path file : read) {
      Path shown = file.startsWith(workingDirectory) ? workingDirectory.relativize(file) : file;
      rule.append(" \\\n  ").append(escaped(Paths.of(shown)));
    }
    return rule.append('\n').toString();
  }

  /**
   * Refuses to write a rule over a file that holds something else.
   *
   * @param file where the rule is to go
   */
  public static void refuseOther(Path file) throws UsageException, IOException {
    if (Files.isRegularFile(file) && Files.size(file) > 0) {
      String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
      String first = text.substring(0, Math.max(0, text.indexOf('\n')));
      if (!first.contains("/checklist.html")) {
        throw new UsageException(
            file + ": this is no rule of an earlier build and is not replaced; name another file");
      }
    }
  }

  private static String escaped(String path) {
    return path.replace("$", "$$").replace(" ", "\\ ").replace("#", "\\#");
  }
}
