package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import passband.build.Compilation;
import passband.build.CompilationUnit;
import passband.build.SourceSelection;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.JsonReport;
import passband.diagnostic.SarifReport;
import passband.diagnostic.TextReport;
import passband.library.UsageException;
import passband.render.CoverageReport;

/** {@code passband check}: finds faults. */
final class CheckCommand {
  /** The forms that diagnostics are printed in. */
  static final List<String> FORMS = List.of("text", "json", "sarif");

  private final Path workingDirectory;
  private final PrintStream out;
  private final PrintStream err;
  private final boolean terminal;
  private Set<Path> read = Set.of();

  CheckCommand(Path workingDirectory, PrintStream out, PrintStream err, boolean terminal) {
    this.terminal = terminal;
    this.workingDirectory = workingDirectory;
    this.out = out;
    this.err = err;
  }

  /** The files that the last run read. */
  Set<Path> read() {
    return read;
  }

  int run(List<String> words) throws UsageException, IOException {
    Arguments arguments =
        Arguments.of(words, Set.of("--analyzer", "--root", "--as"), Set.of("--coverage"));
    String as = arguments.oneOf("--as", "text", FORMS);
    String analyzer = arguments.value("--analyzer", null);
    boolean coverage = arguments.has("--coverage");
    List<CompilationUnit> groups =
        SourceSelection.units(
            arguments.paths(), workingDirectory, arguments.value("--root", null), analyzer);
    Progress progress = new Progress(err, terminal, groups.size());
    Compilation<String> compilation =
        Compilation.each(
            groups, analyzer, plan -> coverage ? CoverageReport.of(plan) : "", progress::step);
    progress.end();
    read = compilation.read();
    report(compilation.diagnostics(), as, out, err, terminal);
    PrintStream to = as.equals("text") ? out : err;
    compilation.procedures().forEach(to::print);
    return compilation.diagnostics().hasErrors() ? Main.FAULTS : Main.FINE;
  }

  /** The diagnostics on one stream in a form, their count on the other. */
  static void report(Diagnostics diagnostics, String as, PrintStream out, PrintStream err) {
    report(diagnostics, as, out, err, false);
  }

  /** The same, coloured on a terminal. */
  static void report(
      Diagnostics diagnostics, String as, PrintStream out, PrintStream err, boolean coloured) {
    List<Diagnostic> all = diagnostics.list();
    out.print(
        switch (as) {
          case "json" -> JsonReport.of(all);
          case "sarif" -> SarifReport.of(all);
          default -> coloured ? AnsiColours.of(TextReport.of(all)) : TextReport.of(all);
        });
    int errors = diagnostics.errorCount();
    int warnings = all.size() - errors;
    if (errors + warnings > 0) {
      err.println(count(errors, "error") + ", " + count(warnings, "warning"));
    }
  }

  private static String count(int n, String what) {
    return n + " " + what + (n == 1 ? "" : "s");
  }
}
