package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import passband.build.Compilation;
import passband.build.CompilationUnit;
import passband.build.SourceSelection;
import passband.library.UsageException;
import passband.render.CoverageReport;

/** {@code passband check}: finds errors. */
final class CheckCommand implements Verb {
  private final Invocation invocation;
  private Set<Path> read = Set.of();

  CheckCommand(Invocation invocation) {
    this.invocation = invocation;
  }

  @Override
  public Set<Path> read() {
    return read;
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    String form = arguments.value("--as");
    String analyzer = arguments.valueOrNull("--analyzer");
    boolean coverage = arguments.has("--coverage");
    List<CompilationUnit> units =
        SourceSelection.units(
            arguments.operands(),
            invocation.workingDirectory(),
            arguments.valueOrNull("--root"),
            analyzer);
    Progress progress = new Progress(invocation.err(), invocation.terminal(), units.size());
    Compilation<Optional<CoverageReport>> compilation =
        Compilation.each(
            units,
            analyzer,
            plan -> coverage ? Optional.of(CoverageReport.of(plan)) : Optional.empty(),
            progress::step);
    progress.end();
    read = compilation.read();
    if (coverage && form.equals("json")) {
      DiagnosticPrinter.printText(compilation.diagnostics(), invocation.err());
      invocation.out().print(CoverageReport.json(reports(compilation.procedures())));
    } else {
      DiagnosticPrinter.print(compilation.diagnostics(), form, invocation);
      PrintStream to = form.equals("text") ? invocation.out() : invocation.err();
      reports(compilation.procedures()).forEach(report -> to.print(report.text()));
    }
    return compilation.diagnostics().hasErrors() ? ExitStatus.FAULTS : ExitStatus.FINE;
  }

  private static List<CoverageReport> reports(List<Optional<CoverageReport>> found) {
    List<CoverageReport> reports = new ArrayList<>();
    found.forEach(one -> one.ifPresent(reports::add));
    return reports;
  }
}
