package passband.command;

import java.io.IOException;
import passband.evidence.ItemList;
import passband.judge.Report;
import passband.judge.Verdict;
import passband.library.UsageException;
import passband.render.JudgePage;
import passband.render.JudgeReport;

/** {@code passband judge}: verdicts on recorded readings. */
final class JudgeCommand implements Verb {
  private final Invocation invocation;

  JudgeCommand(Invocation invocation) {
    this.invocation = invocation;
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    RecordedFiles files = new RecordedFiles(invocation.workingDirectory());
    ItemList list = files.limits(arguments.operands().get(0));
    String path = arguments.operands().get(1);
    Report report = files.report(list, files.readings(path), path, arguments.valueOrNull("--date"));
    invocation
        .out()
        .print(
            switch (arguments.value("--as")) {
              case "json" -> JudgeReport.json(report);
              case "html" -> JudgePage.of(report);
              default -> JudgeReport.text(report);
            });
    return report.overall() == Verdict.PASS ? ExitStatus.FINE : ExitStatus.FAULTS;
  }
}
