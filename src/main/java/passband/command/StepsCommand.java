package passband.command;

import java.io.IOException;
import passband.build.Compilation;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.render.StepsReport;

/** {@code passband steps}: a sheet step by step, with what each changes on the bench. */
final class StepsCommand implements Verb {
  private final Invocation invocation;

  StepsCommand(Invocation invocation) {
    this.invocation = invocation;
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    Compilation<Plan> compilation =
        Compilation.of(
            arguments.operands(),
            invocation.workingDirectory(),
            arguments.valueOrNull("--root"),
            arguments.valueOrNull("--analyzer"));
    boolean json = arguments.value("--as").equals("json");
    if (json) {
      DiagnosticPrinter.printText(compilation.diagnostics(), invocation.err());
    } else {
      DiagnosticPrinter.print(compilation.diagnostics(), "text", invocation);
    }
    if (compilation.diagnostics().hasErrors()) {
      return ExitStatus.FAULTS;
    }
    if (json) {
      invocation.out().print(StepsReport.json(compilation.procedures()));
    } else {
      compilation.procedures().forEach(plan -> invocation.out().print(StepsReport.text(plan)));
    }
    return ExitStatus.FINE;
  }
}
