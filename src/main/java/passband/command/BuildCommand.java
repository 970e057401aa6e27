package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import passband.build.BuildOptions;
import passband.build.CompilationUnit;
import passband.build.Dependencies;
import passband.build.ProcedureBuild;
import passband.build.SourceSelection;
import passband.library.UsageException;
import passband.pdf.Paper;

/** {@code passband build}: checks, then writes each procedure's folder. */
final class BuildCommand implements Verb {
  private final Invocation invocation;
  private final Path workingDirectory;
  private Set<Path> read = Set.of();

  BuildCommand(Invocation invocation) {
    this.invocation = invocation;
    this.workingDirectory = invocation.workingDirectory();
  }

  @Override
  public Set<Path> read() {
    return read;
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    String form = arguments.value("--as");
    PrintStream err = invocation.err();
    String depfile = arguments.valueOrNull("--depfile");
    if (depfile != null) {
      Dependencies.refuseOther(workingDirectory.resolve(depfile));
    }
    ProcedureBuild.Result built = built(arguments);
    read = built.read();
    built.warnings().forEach(err::println);
    DiagnosticPrinter.print(built.diagnostics(), form, invocation);
    if (built.diagnostics().hasErrors()) {
      err.println("nothing was written");
      return ExitStatus.FAULTS;
    }
    if (built.names().isEmpty()) {
      throw new UsageException(
          "there is no procedure in " + String.join(", ", arguments.operands()));
    }
    PrintStream to = form.equals("text") ? invocation.out() : err;
    String folder = arguments.value("--out");
    built.names().forEach(name -> to.println(folder + "/" + name));
    if (depfile != null) {
      String rule = Dependencies.rule(folder, built.names(), built.files(), read, workingDirectory);
      WholeFile.write(workingDirectory.resolve(depfile), rule.getBytes(StandardCharsets.UTF_8));
    }
    return ExitStatus.FINE;
  }

  private ProcedureBuild.Result built(Arguments arguments) throws UsageException, IOException {
    BuildOptions options =
        new BuildOptions(
            Objects.requireNonNull(Paper.named(arguments.value("--paper")), "--paper"),
            arguments.list("--without"),
            arguments.valueOrNull("--analyzer"),
            arguments.has("--prune"));
    List<CompilationUnit> units =
        SourceSelection.units(
            arguments.operands(),
            workingDirectory,
            arguments.valueOrNull("--root"),
            options.analyzer());
    Progress progress = new Progress(invocation.err(), invocation.terminal(), units.size());
    ProcedureBuild build = new ProcedureBuild(workingDirectory, invocation.program(), options);
    Path folder = workingDirectory.resolve(arguments.value("--out"));
    ProcedureBuild.Result result = build.run(units, folder, () -> waits(folder), progress::step);
    progress.end();
    return result;
  }

  private void waits(Path folder) {
    invocation.err().println("waiting for another build that is writing to " + folder);
    invocation.err().flush();
  }
}
