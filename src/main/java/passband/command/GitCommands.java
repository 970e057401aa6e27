package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import passband.compile.Compiler;
import passband.diagnostic.Diagnostics;
import passband.diff.PlanDiff;
import passband.library.Disk;
import passband.library.Library;
import passband.library.Paths;
import passband.library.SourceReader;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.render.DiffReport;

/**
 * What git calls: {@code passband git-diff} as an external diff, {@code passband git-text} as a
 * textconv. Git gives one file in two versions; what it uses is taken from the work tree.
 */
final class GitCommands {
  /** What git names a version that is not there. */
  private static final String ABSENT = "/dev/null";

  private final Path workingDirectory;
  private final PrintStream out;

  GitCommands(Path workingDirectory, PrintStream out) {
    this.workingDirectory = workingDirectory;
    this.out = out;
  }

  /**
   * {@code PATH OLD-FILE OLD-HEX OLD-MODE NEW-FILE NEW-HEX NEW-MODE …}, run at the top of the work
   * tree.
   */
  int diff(List<String> words) throws UsageException, IOException {
    if (words.size() < 7) {
      throw new UsageException("git-diff is for git's diff.<driver>.command");
    }
    String path = words.get(0);
    Diagnostics oldFaults = new Diagnostics();
    Diagnostics newFaults = new Diagnostics();
    out.println("passband " + path);
    boolean came = words.get(1).equals(ABSENT);
    boolean went = words.get(4).equals(ABSENT);
    List<Plan> was = came ? List.of() : plans(path, words.get(1), went, oldFaults);
    List<Plan> now = went ? List.of() : plans(path, words.get(4), came, newFaults);
    if ((came || went) && was.isEmpty() && now.isEmpty() && !oldFaults.hasErrors()) {
      out.println(came ? "  new, with no procedure of its own" : "  gone; it had no procedure");
      return Main.FINE;
    }
    if (oldFaults.hasErrors() || newFaults.hasErrors()) {
      out.println(
          "  not compared: "
              + oldFaults.errorCount()
              + " errors before, "
              + newFaults.errorCount()
              + " now");
      return Main.FINE;
    }
    List<PlanDiff> diffs = PlanDiff.between(was, now);
    out.print(diffs.isEmpty() ? "  the meaning is the same\n" : DiffReport.text(diffs));
    return Main.FINE;
  }

  /** {@code FILE}: the facts of its procedures, a line each. */
  int text(List<String> words) throws UsageException, IOException {
    if (words.size() != 1) {
      throw new UsageException("git-text is for git's diff.<driver>.textconv");
    }
    Path file = workingDirectory.resolve(words.get(0));
    Diagnostics faults = new Diagnostics();
    String path = home(file);
    List<Plan> plans = path == null ? List.of() : plans(path, words.get(0), true, faults);
    List<Plan> own =
        plans.stream().filter(p -> p.name().span().file().path().equals(path)).toList();
    if (own.isEmpty() || faults.hasErrors()) {
      out.write(Files.readAllBytes(file));
    } else {
      own.forEach(p -> out.print(DiffReport.facts(p)));
    }
    return Main.FINE;
  }

  /** Where in the work tree a version of a file belongs; null when that is not plain. */
  private String home(Path file) throws IOException {
    if (file.normalize().startsWith(workingDirectory)) {
      return Paths.of(workingDirectory.relativize(file.normalize()));
    }
    String name = file.getFileName().toString();
    List<String> found =
        sources().stream().filter(s -> s.equals(name) || s.endsWith("/" + name)).toList();
    return found.size() == 1 ? found.get(0) : null;
  }

  /**
   * The procedures that one version of a file says something of: its own, or where it declares
   * none, all of the work tree.
   *
   * @param ownOnly whether its own are enough
   */
  private List<Plan> plans(String path, String version, boolean ownOnly, Diagnostics faults)
      throws IOException {
    byte[] bytes = Files.readAllBytes(workingDirectory.resolve(version));
    Disk disk = new Disk(workingDirectory);
    SourceReader reader = asked -> asked.equals(path) ? bytes : disk.read(asked);
    List<Plan> own = compile(List.of(path), reader, faults);
    if (ownOnly || !own.isEmpty() || faults.hasErrors()) {
      return own;
    }
    return compile(sources(), reader, faults);
  }

  private static List<Plan> compile(List<String> paths, SourceReader reader, Diagnostics faults)
      throws IOException {
    Library library = new Library("", reader, faults);
    for (String path : paths) {
      try {
        library.load(path);
      } catch (NoSuchFileException e) {
        return List.of();
      }
    }
    return new Compiler(library, null, faults).compile();
  }

  private List<String> sources() throws IOException {
    List<String> sources = new ArrayList<>();
    Files.walkFileTree(
        workingDirectory,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
            boolean hidden =
                !folder.equals(workingDirectory) && folder.getFileName().toString().startsWith(".");
            return hidden ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            if (file.toString().endsWith(".pband")) {
              sources.add(Paths.of(workingDirectory.relativize(file)));
            }
            return FileVisitResult.CONTINUE;
          }
        });
    sources.sort(null);
    return sources;
  }
}
