package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
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
    Compilation<String> compilation =
        Compilation.each(
            units, analyzer, plan -> coverage ? CoverageReport.of(plan) : "", progress::step);
    progress.end();
    read = compilation.read();
    DiagnosticPrinter.print(compilation.diagnostics(), form, invocation);
    PrintStream to = form.equals("text") ? invocation.out() : invocation.err();
    compilation.procedures().forEach(to::print);
    return compilation.diagnostics().hasErrors() ? ExitStatus.FAULTS : ExitStatus.FINE;
  }
}
