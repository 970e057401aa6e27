package passband.render;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import passband.evidence.BadInput;
import passband.evidence.Item;
import passband.evidence.ItemNames;
import passband.judge.Judgement;
import passband.judge.Verdict;
import passband.record.Deviation;
import passband.record.Particulars;
import passband.record.Repeat;
import passband.record.VisitRecord;

/** The report of a record, to print and sign. */
public final class RecordPage {
  private RecordPage() {}

  /** What was done otherwise. */
  public record DeviationRow(String item, String what, String reason) {}

  /**
   * The whole page.
   *
   * @param seal of the record, which stands on every page
   * @param altered what is wrong with the record; empty where nothing is
   */
  public static String of(VisitRecord record, String seal, List<String> altered) throws BadInput {
    Map<String, Object> model = JudgePage.model(record.report());
    Map<String, Object> own = new HashMap<>();
    ItemNames names = ItemNames.of(record.report().list());
    own.put("altered", altered);
    own.put("seal", seal);
    own.put("program", record.program());
    own.put("release", release(record));
    own.put("failedBefore", failedBefore(record, names));
    own.put("judgedOn", Objects.requireNonNullElse(record.judgedOn(), ""));
    Map<String, String> particulars = new LinkedHashMap<>();
    Particulars.all()
        .forEach((key, words) -> particulars.put(words, record.particulars().said(key)));
    own.put("particulars", particulars);
    own.put("limits", record.limits());
    own.put("limitsDigest", record.limits().sha256());
    own.put("readings", record.readings());
    own.put("readingsDigest", record.readings().sha256());
    own.put("instruments", record.instruments());
    own.put("ambient", ambient(record));
    own.put("failedAsFound", failed(record.failedAsFound(), names));
    own.put("failed", failed(record.failed(), names));
    own.put("deviations", deviations(record, names));
    own.put("ticked", count(record, RecordPage::isTicked));
    own.put("absent", count(record, RecordPage::isAbsent));
    model.put("rows", rows(record, names));
    String style = Checklist.resource("diff.css") + foot(seal);
    model.put("style", style);
    model.put("styleHash", Checklist.hash(style));
    model.put("record", own);
    return Templates.filled("record.ftlh", model);
  }

  /** Whether the limits were of a released procedure when they were written, under their seal. */
  private static String release(VisitRecord record) {
    Boolean released = record.report().list().source().released();
    return released == null
        ? "not known: the limits are in a format that does not say it"
        : released
            ? "released when the limits were written"
            : "not released when the limits were written: nobody had approved them";
  }

  /** What failed before it was read again, with why it was. */
  private static List<String> failedBefore(VisitRecord record, ItemNames names) {
    List<String> failed = new ArrayList<>();
    for (Repeat repeat : record.repeats()) {
      String now = JudgeReport.reading(repeat.last());
      String read =
          repeat.isCalculated() ? JudgeReport.reading(repeat.earlier()) + ", then " + now : now;
      Set<String> reasons = new LinkedHashSet<>();
      for (Deviation deviation : record.deviations()) {
        if (deviation.kind() == Deviation.Kind.REPEATED
            && deviation.judgement().item().equals(repeat.last().item())) {
          reasons.add(
              (deviation.reason().isEmpty() ? "no reason given" : deviation.reason())
                  + by(deviation));
        }
      }
      failed.add(
          names.of(repeat.last().item())
              + ": "
              + read
              + ", accepted: "
              + JudgeReport.accepted(repeat.last().item())
              + (reasons.isEmpty() ? "" : "; " + String.join("; ", reasons)));
    }
    return failed;
  }

  /** The seal at the foot of every page. */
  private static String foot(String seal) {
    return "@page { @bottom-left { content: \"record "
        + seal.substring(0, Math.min(16, seal.length()))
        + "\"; font: 9pt Arial, sans-serif; } }\n";
  }

  /** Whether it is asked for in a section, once, and not at a point of a test. */
  private static boolean isOfTheVisit(Item.Recorded blank) {
    return blank.id().indexOf('/') == blank.id().lastIndexOf('/');
  }

  /** What was recorded in a unit, such as the temperature. */
  private static Map<String, String> ambient(VisitRecord record) {
    Map<String, String> ambient = new LinkedHashMap<>();
    for (Judgement judgement : record.report().judgements()) {
      if (!isAbsent(judgement)
          && judgement.item() instanceof Item.Recorded blank
          && blank.unit() != null
          && isOfTheVisit(blank)) {
        String title = blank.head().title();
        ambient.put(
            ambient.containsKey(title) ? title + ", " + blank.head().place() : title,
            JudgeReport.reading(judgement));
      }
    }
    return ambient;
  }

  /** Whether it is a ticked box: they are counted, every other item has a row. */
  private static boolean isTicked(Judgement judgement) {
    return judgement.item() instanceof Item.Tick && judgement.verdict() == Verdict.PASS;
  }

  private static boolean isAbsent(Judgement judgement) {
    return judgement.verdict() == Verdict.NOT_APPLICABLE;
  }

  private static long count(VisitRecord record, Predicate<Judgement> which) {
    return record.report().judgements().stream().filter(which).count();
  }

  /** What was measured stands first; what the sheet asks for itself stands on the first page. */
  private static List<JudgePage.Row> rows(VisitRecord record, ItemNames names) {
    List<JudgePage.Row> measured = new ArrayList<>();
    List<JudgePage.Row> others = new ArrayList<>();
    for (Judgement judgement : record.report().judgements()) {
      boolean identity =
          judgement.item() instanceof Item.Recorded blank && blank.sheetName() != null;
      boolean elsewhere = identity && judgement.verdict() == Verdict.PASS || isTicked(judgement);
      if (isAbsent(judgement)) {
        continue;
      } else if (judgement.item() instanceof Item.Measured) {
        measured.add(JudgePage.row(judgement, names));
      } else if (!elsewhere) {
        others.add(JudgePage.row(judgement, names));
      }
    }
    measured.addAll(others);
    return measured;
  }

  private static List<String> failed(List<Judgement> judgements, ItemNames names) {
    List<String> failed = new ArrayList<>();
    for (Judgement judgement : judgements) {
      String accepted = JudgeReport.accepted(judgement.item());
      failed.add(
          names.of(judgement.item())
              + ": "
              + JudgeReport.reading(judgement)
              + (accepted.isEmpty() ? "" : ", accepted: " + accepted));
    }
    return failed;
  }

  private static List<DeviationRow> deviations(VisitRecord record, ItemNames names) {
    List<DeviationRow> rows = new ArrayList<>();
    for (Deviation deviation : record.deviations()) {
      boolean numbered = deviation.kind() == Deviation.Kind.REPEATED;
      String reason = deviation.reason();
      boolean owed = deviation.kind() != Deviation.Kind.REMARK && reason.isEmpty();
      rows.add(
          new DeviationRow(
              names.of(deviation.judgement().item()),
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
