package passband.command;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import passband.build.Compilation;
import passband.build.InOrder;
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
    List<Plan> plans = compilation.procedures();
    switch (form) {
      case "json" -> json(plans);
      case "html" -> {
        List<Detection> detections = new ArrayList<>();
        InOrder.each(plans, Detection::of, detections::add);
        invocation.out().print(DetectPage.of(detections));
      }
      default -> text(plans);
    }
    return ExitStatus.FINE;
  }

  private void json(List<Plan> plans) throws UsageException, IOException {
    DetectJson json = new DetectJson(invocation.out());
    InOrder.each(plans, Detection::of, json::add);
    json.end();
  }

  private void text(List<Plan> plans) throws UsageException, IOException {
    InOrder.each(
        plans,
        Detection::of,
        detection -> {
          String gap = detection.plan() == plans.get(0) ? "" : "\n";
          invocation.out().print(gap + DetectReport.text(detection));
        });
  }
}
