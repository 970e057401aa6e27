package passband.render;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.judge.Judgement;
import passband.judge.Report;

/** Verdicts as a report to print and sign. */
public final class JudgePage {
  private static final String STYLE = Checklist.resource("diff.css");

  private JudgePage() {}

  /** What the template prints of a point. */
  public record Row(
      String point,
      String reading,
      String accepted,
      String tolerance,
      String uncertainty,
      String conformity,
      String verdict,
      String why) {}

  /** The whole file. */
  public static String of(Report report) {
    List<Row> rows = new ArrayList<>();
    Map<String, String> budgets = new LinkedHashMap<>();
    for (Judgement j : report.judgements()) {
      rows.add(
          new Row(
              j.limit().id(),
              JudgeReport.reading(j),
              j.limit().accepted(),
              j.limit().tolerance(),
              JudgeReport.uncertainty(j),
              JudgeReport.conformity(j),
              j.verdict().word(),
              j.why()));
      if (j.limit().budget() != null) {
        String budget = String.join("; ", JudgeReport.budget(j.limit()));
        budgets.merge(budget, j.limit().quantity(), (a, b) -> a.contains(b) ? a : a + ", " + b);
      }
    }
    Map<String, Object> model = new HashMap<>();
    model.put("title", JudgeReport.title(report));
    model.put("table", report.table());
    model.put("overall", report.overall().word());
    Map<String, String> phases = new LinkedHashMap<>();
    report.phases().forEach((phase, verdict) -> phases.put(phase, verdict.word()));
    model.put("phases", phases);
    model.put("rule", JudgeReport.rule(report.table()));
    model.put("warnings", report.warnings());
    Map<String, String> records = new LinkedHashMap<>();
    report
        .readings()
        .records()
        .forEach(
            (name, text) -> {
              if (!name.startsWith("tick:")) {
                records.put(name.substring(name.indexOf(':') + 1), text);
              }
            });
    missing(records, "generator-serial", "serial");
    missing(records, "analyzer-serial", "analyzer-serial");
    missing(records, "calibration-due", "due");
    model.put("records", records);
    model.put("rows", rows);
    model.put("budgets", budgets);
    model.put("style", STYLE);
    model.put("styleHash", Checklist.hash(STYLE));
    return Templates.filled("judge.ftlh", model);
  }

  /** What a report has to say, and nobody recorded. */
  private static void missing(Map<String, String> records, String name, String part) {
    boolean there =
        records.entrySet().stream()
            .anyMatch(
                e ->
                    e.getKey().contains(part)
                        && !e.getValue().isBlank()
                        && (!part.equals("serial") || !e.getKey().contains("analyzer")));
    if (!there) {
      records.put(name, "not recorded");
    }
  }
}
