package passband.command;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import passband.diagnostic.Reason;
import passband.evidence.BadInput;
import passband.evidence.ItemList;
import passband.evidence.ItemNames;
import passband.judge.History;
import passband.judge.Readings;
import passband.library.UsageException;
import passband.render.HistoryJson;
import passband.render.HistoryPage;

/** {@code passband history}: how readings drift. */
final class HistoryCommand implements Verb {
  private final Invocation invocation;
  private final RecordedFiles files;

  HistoryCommand(Invocation invocation) {
    this.invocation = invocation;
    this.files = new RecordedFiles(invocation.workingDirectory());
  }

  @Override
  public int run(Arguments arguments) throws UsageException, IOException {
    ItemList list = files.limits(arguments.operands().get(0));
    List<History.Dated> reports = new ArrayList<>();
    for (String path : arguments.operands().subList(1, arguments.operands().size())) {
      if (path.endsWith(".json")) {
        list = files.limits(path);
      } else {
        reports.add(dated(list, path));
      }
    }
    if (reports.size() < 2) {
      throw new UsageException("history needs at least two files of readings");
    }
    if (reports.stream().map(History.Dated::date).distinct().count() < 2) {
      throw new UsageException(
          "history needs readings of two days at least; all are of " + reports.get(0).date());
    }
    long interval = Long.parseLong(arguments.value("--interval"));
    History history = history(reports, interval);
    invocation
        .out()
        .print(
            switch (arguments.value("--as")) {
              case "json" -> HistoryJson.of(list, history, interval);
              case "html" -> HistoryPage.of(list, history);
              default -> history.text(ItemNames.of(list));
            });
    return history.drifts().stream().anyMatch(History.Drift::crosses)
        ? ExitStatus.FAULTS
        : ExitStatus.FINE;
  }

  private History.Dated dated(ItemList list, String path) throws UsageException, IOException {
    Readings readings = files.readings(path);
    LocalDate date = History.date(readings, path);
    if (date == null) {
      throw new UsageException(
          path + ": no date found: put it into the file name (2026-11-02) or the 'date' record");
    }
    return new History.Dated(date, files.report(list, readings, path, null));
  }

  private static History history(List<History.Dated> reports, long interval) throws UsageException {
    try {
      return History.of(reports, interval);
    } catch (BadInput e) {
      throw new UsageException(Reason.of(e));
    }
  }
}
