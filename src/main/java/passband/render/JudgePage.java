package passband.render;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import passband.evidence.Blank;
import passband.evidence.Item;
import passband.evidence.ItemNames;
import passband.judge.Judgement;
import passband.judge.Report;
import passband.words.Language;

/** Verdicts as a report to print and sign. */
public final class JudgePage {
  private static final String STYLE = Checklist.resource("diff.css");

  private JudgePage() {}

  /** What the template prints of a point. */
  public record Row(
      String item,
      String reading,
      String accepted,
      String tolerance,
      String uncertainty,
      String factor,
      String conformity,
      String statement,
      String verdict,
      String why) {}

  /** The whole file. */
  public static String of(Report report) {
    return Templates.filled("judge.ftlh", model(report));
  }

  /** What the templates print of a report. */
  static Map<String, Object> model(Report report) {
    Map<String, Object> model = new HashMap<>();
    ItemNames names = ItemNames.of(report.list());
    model.put("title", JudgeReport.title(report));
    model.put("source", report.list().source());
    model.put("coverage", report.list().decision().coverage());
    model.put(
        "superseded",
        report.superseded().stream()
            .map(j -> names.of(j.item()) + ": " + JudgeReport.reading(j))
            .toList());
    model.put("overall", report.overall().word());
    Map<String, String> phases = new LinkedHashMap<>();
    report.phases().forEach((phase, verdict) -> phases.put(phase, verdict.word()));
    model.put("phases", phases);
    model.put("rule", JudgeReport.rule(report.list()));
    model.put("warnings", report.warnings().stream().map(w -> w.text(names)).toList());
    model.put("records", records(report));
    model.put("rows", report.judgements().stream().map(j -> row(j, names)).toList());
    model.put("budgetHeadings", BudgetTable.headings(Language.ENGLISH));
    model.put("budgets", BudgetTable.of(report, Language.ENGLISH));
    model.put("style", STYLE);
    model.put("styleHash", Checklist.hash(STYLE));
    return model;
  }

  /** What the template prints of an item. */
  static Row row(Judgement j, ItemNames names) {
    return new Row(
        names.of(j.item()),
        JudgeReport.reading(j),
        JudgeReport.accepted(j.item()),
        JudgeReport.tolerance(j.item()),
        JudgeReport.uncertainty(j),
        JudgeReport.factor(j),
        JudgeReport.conformity(j),
        JudgeReport.statement(j),
        j.verdict().word(),
        j.why(names));
  }

  /**
   * Those of the sheet, and what a report has to say, recorded or not: with what it was done, and
   * when.
   */
  private static Map<String, String> records(Report report) {
    Map<String, String> records = new LinkedHashMap<>();
    report
        .readings()
        .records()
        .forEach((name, said) -> records.put(name, JudgeReport.attempts(said)));
    for (Item item : report.list().items()) {
      String name = item instanceof Item.Recorded blank ? blank.sheetName() : null;
      if (name != null && Blank.of((Item.Recorded) item) != Blank.TEXT) {
        records.merge(name, "not recorded", (was, none) -> was.isBlank() ? none : was);
      }
    }
    return records;
  }
}
