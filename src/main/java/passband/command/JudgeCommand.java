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
import passband.evidence.ItemList;
import passband.evidence.LimitsReader;
import passband.judge.History;
import passband.judge.Judge;
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
    ItemList list = limits(arguments.paths().get(0));
    String path = arguments.paths().get(1);
    Report report = report(list, readings(path), path, date);
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
    ItemList list = null;
    List<History.Dated> reports = new ArrayList<>();
    for (String path : arguments.paths()) {
      if (path.endsWith(".json")) {
        list = limits(path);
      } else if (list == null) {
        throw new UsageException("history takes the limits before the readings taken by them");
      } else {
        reports.add(dated(list, path));
      }
    }
    if (reports.size() < 2) {
      throw new UsageException("history takes two files of readings or more");
    }
    History history = history(reports, Long.parseLong(interval));
    out.print(as.equals("html") ? HistoryPage.of(list, history) : history.text());
    return history.drifts().stream().anyMatch(History.Drift::crosses) ? Main.FAULTS : Main.FINE;
  }

  private History.Dated dated(ItemList list, String path) throws UsageException, IOException {
    Readings readings = readings(path);
    LocalDate date = History.date(readings, path);
    if (date == null) {
      throw new UsageException(
          path + ": no date found: put it into the file name (2026-11-02) or the 'date' record");
    }
    return new History.Dated(date, report(list, readings, path, null));
  }

  private static History history(List<History.Dated> reports, long interval) throws UsageException {
    try {
      return History.of(reports, interval);
    } catch (BadInput e) {
      throw new UsageException(e.getMessage());
    }
  }

  private static void day(String text) throws UsageException {
    try {
      LocalDate.parse(text);
    } catch (java.time.format.DateTimeParseException e) {
      throw new UsageException("--date is a day such as 2026-01-31");
    }
  }

  private ItemList limits(String path) throws UsageException, IOException {
    try {
      return LimitsReader.read(new String(bytes(path), StandardCharsets.UTF_8));
    } catch (BadInput e) {
      throw new UsageException(path + ": " + e.getMessage());
    }
  }

  private Readings readings(String path) throws UsageException, IOException {
    try {
      return Readings.parse(bytes(path));
    } catch (BadInput e) {
      throw new UsageException(path + ": " + e.getMessage());
    }
  }

  private static Report report(ItemList list, Readings readings, String path, String date)
      throws UsageException {
    try {
      return Judge.judge(list, readings, date);
    } catch (BadInput e) {
      throw new UsageException(path + ": " + e.getMessage());
    }
  }

  private byte[] bytes(String path) throws UsageException, IOException {
    Path file = workingDirectory.resolve(path);
    if (!Files.isRegularFile(file)) {
      throw new UsageException("there is no file " + path);
    }
    return Files.readAllBytes(file);
  }
}
