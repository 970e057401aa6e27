package passband.render;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import passband.evidence.BadInput;
import passband.evidence.Item;
import passband.judge.Judgement;
import passband.judge.Verdict;
import passband.record.Deviation;
import passband.record.Particulars;
import passband.record.VisitRecord;

/** The report of a record, to print and sign. */
public final class RecordPage {
  private RecordPage() {}

  /** An instrument; empty where nothing is known. */
  public record InstrumentRow(
      String role, String name, String serial, String due, String certificate) {}

  /** What was done otherwise. */
  public record DeviationRow(String item, String title, String what, String reason) {}

  /**
   * The whole page.
   *
   * @param seal of the record, which stands on every page
   * @param altered what is wrong with the record; empty where nothing is
   */
  public static String of(VisitRecord record, String seal, List<String> altered) throws BadInput {
    Map<String, Object> model = JudgePage.model(record.report());
    Map<String, Object> own = new HashMap<>();
    own.put("altered", altered);
    own.put("seal", seal);
    own.put("program", record.program());
    own.put("judgedOn", Objects.requireNonNullElse(record.judgedOn(), ""));
    Map<String, String> particulars = new LinkedHashMap<>();
    Particulars.all()
        .forEach((key, words) -> particulars.put(words, record.particulars().said(key)));
    own.put("particulars", particulars);
    own.put("limits", record.limits());
    own.put("limitsDigest", record.limits().sha256());
    own.put("readings", record.readings());
    own.put("readingsDigest", record.readings().sha256());
    own.put("instruments", instruments(record));
    own.put("ambient", ambient(record));
    own.put("failedAsFound", failed(record.failedAsFound()));
    own.put("failed", failed(record.failed()));
    own.put("deviations", deviations(record));
    own.put("ticked", ticked(record).size());
    own.put("absent", absent(record));
    model.put("rows", rows(record));
    String style = Checklist.resource("diff.css") + foot(seal);
    model.put("style", style);
    model.put("styleHash", Checklist.hash(style));
    model.put("record", own);
    return Templates.filled("record.ftlh", model);
  }

  /** The seal at the foot of every page. */
  private static String foot(String seal) {
    return "@page { @bottom-left { content: \"record "
        + seal.substring(0, Math.min(16, seal.length()))
        + "\"; font: 9pt Arial, sans-serif; } }\n";
  }

  private static List<InstrumentRow> instruments(VisitRecord record) {
    return record.report().list().source().instruments().stream()
        .map(
            one ->
                new InstrumentRow(
                    one.role(),
                    one.name(),
                    Objects.requireNonNullElse(record.identity().get(one.role() + "-serial"), ""),
                    Objects.requireNonNullElse(record.identity().get(one.role() + "-due"), ""),
                    record.particulars().said(Particulars.CERTIFICATE + one.role())))
        .toList();
  }

  /** What was recorded in a unit, such as the temperature. */
  private static Map<String, String> ambient(VisitRecord record) {
    Map<String, String> ambient = new LinkedHashMap<>();
    for (Judgement judgement : record.report().judgements()) {
      boolean applies = judgement.verdict() != Verdict.NOT_APPLICABLE;
      if (applies && judgement.item() instanceof Item.Recorded blank && blank.unit() != null) {
        ambient.put(blank.head().title(), JudgeReport.reading(judgement));
      }
    }
    return ambient;
  }

  /** Boxes that are ticked: they are counted, every other item has a row. */
  private static List<Judgement> ticked(VisitRecord record) {
    return record.report().judgements().stream()
        .filter(j -> j.item() instanceof Item.Tick && j.verdict() == Verdict.PASS)
        .toList();
  }

  private static long absent(VisitRecord record) {
    return record.report().judgements().stream()
        .filter(j -> j.verdict() == Verdict.NOT_APPLICABLE)
        .count();
  }

  /** What was measured stands first; what the sheet asks for itself stands on the first page. */
  private static List<JudgePage.Row> rows(VisitRecord record) {
    List<JudgePage.Row> measured = new ArrayList<>();
    List<JudgePage.Row> others = new ArrayList<>();
    List<Judgement> ticked = ticked(record);
    for (Judgement judgement : record.report().judgements()) {
      if (judgement.verdict() == Verdict.NOT_APPLICABLE) {
        continue;
      }
      boolean identity =
          judgement.item() instanceof Item.Recorded && judgement.item().id().startsWith("sheet/");
      if (judgement.item() instanceof Item.Measured) {
        measured.add(JudgePage.row(judgement));
      } else if (!ticked.contains(judgement)
          && !(identity && judgement.verdict() == Verdict.PASS)) {
        others.add(JudgePage.row(judgement));
      }
    }
    measured.addAll(others);
    return measured;
  }

  private static List<String> failed(List<Judgement> judgements) {
    List<String> failed = new ArrayList<>();
    for (Judgement judgement : judgements) {
      String accepted = JudgeReport.accepted(judgement.item());
      failed.add(
          judgement.item().id()
              + ": "
              + JudgeReport.reading(judgement)
              + (accepted.isEmpty() ? "" : ", accepted: " + accepted));
    }
    return failed;
  }

  private static List<DeviationRow> deviations(VisitRecord record) {
    List<DeviationRow> rows = new ArrayList<>();
    for (Deviation deviation : record.deviations()) {
      boolean numbered = deviation.kind() == Deviation.Kind.REPEATED;
      String reason = deviation.reason();
      boolean owed = deviation.kind() != Deviation.Kind.REMARK && reason.isEmpty();
      rows.add(
          new DeviationRow(
              deviation.judgement().item().id(),
              deviation.judgement().item().head().title(),
              deviation.kind().word()
                  + (numbered ? ", attempt " + deviation.attempt() + by(deviation) : by(deviation)),
              owed ? "no reason given" : reason));
    }
    return rows;
  }

  private static String by(Deviation deviation) {
    return deviation.by().isEmpty() ? "" : ", by " + deviation.by();
  }
}
