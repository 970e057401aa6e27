package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import passband.build.Compilation;
import passband.build.Revision;
import passband.diagnostic.Diagnostics;
import passband.diff.PlanDiff;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.render.DiffPage;
import passband.render.DiffReport;

/** {@code passband diff}: what changed in meaning. */
final class DiffCommand {
  private static final List<String> FORMS = List.of("text", "markdown", "json", "html");

  private final Path workingDirectory;
  private final PrintStream out;
  private final PrintStream err;

  DiffCommand(Path workingDirectory, PrintStream out, PrintStream err) {
    this.workingDirectory = workingDirectory;
    this.out = out;
    this.err = err;
  }

  int run(List<String> words) throws UsageException, IOException {
    Arguments arguments = Arguments.of(words, Set.of("--as", "--root", "--analyzer"), Set.of());
    String as = arguments.oneOf("--as", "text", FORMS);
    if (arguments.paths().size() != 2) {
      throw new UsageException(
          "diff takes two: the old and the new, each a file, a folder or REVISION:PATH");
    }
    Compilation<Plan> was = side(arguments.paths().get(0), arguments);
    Compilation<Plan> now = side(arguments.paths().get(1), arguments);
    if (was.diagnostics().hasErrors() || now.diagnostics().hasErrors()) {
      for (Diagnostics faults : List.of(was.diagnostics(), now.diagnostics())) {
        faults.removeIf(d -> !d.isError());
        CheckCommand.report(faults, "text", err, err);
      }
      return Main.CANNOT_RUN;
    }
    List<PlanDiff> diffs = PlanDiff.between(was.procedures(), now.procedures());
    out.print(shown(diffs, as));
    return diffs.isEmpty() ? Main.FINE : Main.FAULTS;
  }

  static String shown(List<PlanDiff> diffs, String as) {
    return switch (as) {
      case "markdown" -> DiffReport.markdown(diffs);
      case "json" -> DiffReport.json(diffs);
      case "html" -> DiffPage.of(diffs);
      default -> DiffReport.text(diffs);
    };
  }

  private Compilation<Plan> side(String path, Arguments arguments)
      throws UsageException, IOException {
    String analyzer = arguments.value("--analyzer", null);
    int colon = path.indexOf(':');
    if (Files.exists(workingDirectory.resolve(path)) || colon <= 0) {
      return Compilation.of(
          List.of(path), workingDirectory, arguments.value("--root", null), analyzer);
    }
    return new Revision(workingDirectory, path.substring(0, colon))
        .compiled(path.substring(colon + 1), arguments.value("--root", null), analyzer);
  }
}
