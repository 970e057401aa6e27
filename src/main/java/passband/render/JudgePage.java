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

  /** What the templates print of a report, in the language of its procedure. */
  static Map<String, Object> model(Report report) {
    Map<String, Object> model = new HashMap<>();
    Language language = JudgeReport.language(report.list());
    ItemNames names = ItemNames.of(report.list());
    model.put("t", new Says(language));
    model.put("language", language.code());
    model.put("title", JudgeReport.title(report, language));
    model.put("source", report.list().source());
    model.put("coverage", language.number(report.list().decision().coverage().toPlainString()));
    model.put(
        "superseded",
        report.superseded().stream()
            .map(j -> names.of(j.item()) + ": " + JudgeReport.reading(j, language))
            .toList());
    model.put("overall", JudgeReport.word(report.overall(), language));
    Map<String, String> phases = new LinkedHashMap<>();
    report
        .phases()
        .forEach((phase, verdict) -> phases.put(phase, JudgeReport.word(verdict, language)));
    model.put("phases", phases);
    model.put("rule", JudgeReport.rule(report.list(), language));
    model.put("warnings", report.warnings().stream().map(w -> w.text(names, language)).toList());
    model.put("records", records(report, language));
    model.put("rows", report.judgements().stream().map(j -> row(j, names, language)).toList());
    model.put("budgetHeadings", BudgetTable.headings(language));
    model.put("budgets", BudgetTable.of(report, language));
    model.put("style", STYLE);
    model.put("styleHash", Checklist.hash(STYLE));
    return model;
  }

  /** What the template prints of an item. */
  static Row row(Judgement j, ItemNames names, Language language) {
    return new Row(
        names.of(j.item()),
        JudgeReport.reading(j, language),
        JudgeReport.accepted(j.item(), language),
        JudgeReport.tolerance(j.item(), language),
        language.number(JudgeReport.uncertainty(j)),
        language.number(JudgeReport.factor(j)),
        language.number(JudgeReport.conformity(j)),
        JudgeReport.statement(j, language),
        JudgeReport.word(j.verdict(), language),
        j.why(names, language));
  }

  /**
   * Those of the sheet by the words that it asks for them with, and what a report has to say,
   * recorded or not: with what it was done, and when.
   */
  private static Map<String, String> records(Report report, Language language) {
    Map<String, String> asked = new HashMap<>();
    Map<String, String> records = new LinkedHashMap<>();
    for (Item item : report.list().items()) {
      String name = item instanceof Item.Recorded blank ? blank.sheetName() : null;
      if (name != null) {
        asked.put(name, language.term(item.head().title()));
      }
    }
    report
        .readings()
        .records()
        .forEach(
            (name, said) ->
                records.put(
                    asked.getOrDefault(name, name.replace('-', ' ')),
                    JudgeReport.attempts(said, language)));
    for (Item item : report.list().items()) {
      String name = item instanceof Item.Recorded blank ? blank.sheetName() : null;
      if (name != null && Blank.of((Item.Recorded) item) != Blank.TEXT) {
        records.merge(
            asked.getOrDefault(name, name),
            language.of("judge.not-recorded"),
            (was, none) -> was.isBlank() ? none : was);
      }
    }
    return records;
  }
}
