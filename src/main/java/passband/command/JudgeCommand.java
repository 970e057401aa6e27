package passband.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import passband.evidence.BadInput;
import passband.judge.History;
import passband.judge.Judge;
import passband.judge.LimitTable;
import passband.judge.Readings;
import passband.judge.Report;
import passband.judge.Verdict;
import passband.library.UsageException;
import passband.render.HistoryPage;
import passband.render.JudgePage;
import passband.render.JudgeReport;

/** {@code passband judge}: verdicts on recorded readings; {@code passband history}: their drift. */
final class JudgeCommand {
  private static final String YEAR = "365";

  private final Path workingDirectory;
  private final PrintStream out;

  JudgeCommand(Path workingDirectory, PrintStream out) {
    this.workingDirectory = workingDirectory;
    this.out = out;
  }

  int judge(List<String> words) throws UsageException, IOException {
    Arguments arguments = Arguments.of(words, Set.of("--as", "--date"), Set.of());
    String as = arguments.oneOf("--as", "text", List.of("text", "json", "html"));
    if (arguments.paths().size() != 2) {
      throw new UsageException("judge takes two files: the limits and the readings");
    }
    String date = arguments.value("--date", null);
    if (date != null) {
      day(date);
    }
    LimitTable table = table(arguments.paths().get(0));
    String path = arguments.paths().get(1);
    Report report = report(table, readings(path), path, date);
    out.print(
        switch (as) {
          case "json" -> JudgeReport.json(report);
          case "html" -> JudgePage.of(report);
          default -> JudgeReport.text(report);
        });
    return report.overall() == Verdict.PASS ? Main.FINE : Main.FAULTS;
  }

  int history(List<String> words) throws UsageException, IOException {
    Arguments arguments = Arguments.of(words, Set.of("--as", "--interval"), Set.of());
    String as = arguments.oneOf("--as", "text", List.of("text", "html"));
    String interval = arguments.value("--interval", YEAR);
    if (!interval.matches("[1-9]\\d{0,4}")) {
      throw new UsageException("--interval is a number of days");
    }
    if (arguments.paths().size() < 3) {
      throw new UsageException("history takes the limits and two files of readings or more");
    }
    LimitTable table = table(arguments.paths().get(0));
    List<History.Dated> reports = new ArrayList<>();
    for (String path : arguments.paths().subList(1, arguments.paths().size())) {
      Readings readings = readings(path);
      LocalDate date = History.date(readings, path);
      if (date == null) {
        throw new UsageException(path + ": no date in its name or in a record 'date'");
      }
      reports.add(new History.Dated(date, report(table, readings, path, null)));
    }
    History history = History.of(reports, Long.parseLong(interval));
    out.print(as.equals("html") ? HistoryPage.of(table, history) : history.text());
    return history.drifts().stream().anyMatch(History.Drift::crosses) ? Main.FAULTS : Main.FINE;
  }

  private static void day(String text) throws UsageException {
    try {
      LocalDate.parse(text);
    } catch (java.time.format.DateTimeParseException e) {
      throw new UsageException("--date is a day such as 2026-01-31");
    }
  }

  private LimitTable table(String path) throws UsageException, IOException {
    try {
      return LimitTable.parse(text(path));
    } catch (BadInput e) {
      throw new UsageException(path + ": " + e.getMessage());
    }
  }

  private Readings readings(String path) throws UsageException, IOException {
    try {
      return Readings.parse(text(path));
    } catch (BadInput e) {
      throw new UsageException(path + ": " + e.getMessage());
    }
  }

  private static Report report(LimitTable table, Readings readings, String path, String date)
      throws UsageException {
    try {
      return Judge.judge(table, readings, date);
    } catch (BadInput e) {
      throw new UsageException(path + ": " + e.getMessage());
    }
  }

  private String text(String path) throws UsageException, IOException {
    Path file = workingDirectory.resolve(path);
    if (!Files.isRegularFile(file)) {
      throw new UsageException("there is no file " + path);
    }
    return new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
  }
}
