package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.TextReport;

/** {@code passband check}: finds faults. */
final class Check {
  private final Path workingDirectory;
  private final PrintStream out;
  private final PrintStream err;

  Check(Path workingDirectory, PrintStream out, PrintStream err) {
    this.workingDirectory = workingDirectory;
    this.out = out;
    this.err = err;
  }

  int run(List<String> words) throws Usage, IOException {
    Arguments arguments = Arguments.of(words, Set.of("--analyzer", "--root"), Set.of());
    Compilation compilation =
        Compilation.of(
            arguments.paths(),
            workingDirectory,
            arguments.value("--root", null),
            arguments.value("--analyzer", null));
    report(compilation.diagnostics(), out, err);
    return compilation.diagnostics().hasErrors() ? Main.FAULTS : Main.FINE;
  }

  /** The diagnostics on one stream, their count on the other. */
  static void report(Diagnostics diagnostics, PrintStream out, PrintStream err) {
    out.print(TextReport.of(diagnostics.list()));
    int errors = diagnostics.errorCount();
    int warnings = diagnostics.list().size() - errors;
    if (errors + warnings > 0) {
      err.println(count(errors, "error") + ", " + count(warnings, "warning"));
    }
  }

  private static String count(int n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }
}
