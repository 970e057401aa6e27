package passband.command;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import passband.build.Compilation;
import passband.detect.Detection;
import passband.library.UsageException;
import passband.plan.Plan;
import passband.render.DetectJson;
import passband.render.DetectPage;
import passband.render.DetectReport;

/** {@code passband detect}: what procedures catch. */
final class DetectCommand implements Verb {
  private final Invocation invocation;

  DetectCommand(Invocation invocation) {
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
    String form = arguments.value("--as");
    DiagnosticPrinter.printText(compilation.diagnostics(), invocation.err());
    if (compilation.diagnostics().hasErrors()) {
      return ExitStatus.FAULTS;
    }
    List<Detection> detections = new ArrayList<>();
    compilation.procedures().forEach(plan -> detections.add(Detection.of(plan)));
    switch (form) {
      case "json" -> invocation.out().print(DetectJson.of(detections));
      case "html" -> invocation.out().print(DetectPage.of(detections));
      default -> {
        for (int i = 0; i < detections.size(); i++) {
          invocation.out().print((i == 0 ? "" : "\n") + DetectReport.text(detections.get(i)));
        }
      }
    }
    return ExitStatus.FINE;
  }
}
