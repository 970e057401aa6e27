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
import passband.words.Language;

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
    Language language = JudgeReport.language(record.report().list());
    own.put("altered", altered);
    own.put("seal", seal);
    own.put("program", record.program());
    own.put("release", release(record, language));
    own.put("failedBefore", failedBefore(record, names, language));
    own.put("judgedOn", Objects.requireNonNullElse(record.judgedOn(), ""));
    Map<String, String> particulars = new LinkedHashMap<>();
    Particulars.all()
        .forEach(
            (key, words) ->
                particulars.put(language.of("record.said." + key), record.particulars().said(key)));
    own.put("particulars", particulars);
    own.put("limits", record.limits());
    own.put("limitsDigest", record.limits().sha256());
    own.put("readings", record.readings());
    own.put("readingsDigest", record.readings().sha256());
    own.put("instruments", record.instruments());
    own.put("ambient", ambient(record, language));
    own.put("failedAsFound", failed(record.failedAsFound(), names, language));
    own.put("failed", failed(record.failed(), names, language));
    own.put("deviations", deviations(record, names, language));
    own.put("ticked", count(record, RecordPage::isTicked));
    own.put("absent", count(record, RecordPage::isAbsent));
    model.put("rows", rows(record, names, language));
    String style = Checklist.resource("diff.css") + foot(seal, language);
    model.put("style", style);
    model.put("styleHash", Checklist.hash(style));
    model.put("record", own);
    return Templates.filled("record.ftlh", model);
  }

  /** Whether the limits were of a released procedure when they were written, under their seal. */
  private static String release(VisitRecord record, Language language) {
    Boolean released = record.report().list().source().released();
    return language.of(
        released == null
            ? "record.release.unknown"
            : released ? "record.release.yes" : "record.release.no");
  }

  /** What failed before it was read again, with why it was. */
  private static List<String> failedBefore(VisitRecord record, ItemNames names, Language language) {
    List<String> failed = new ArrayList<>();
    for (Repeat repeat : record.repeats()) {
      String now = JudgeReport.reading(repeat.last(), language);
      String read =
          repeat.isCalculated()
              ? language.of("judge.then", JudgeReport.reading(repeat.earlier(), language), now)
              : now;
      Set<String> reasons = new LinkedHashSet<>();
      for (Deviation deviation : record.deviations()) {
        if (deviation.kind() == Deviation.Kind.REPEATED
            && deviation.judgement().item().equals(repeat.last().item())) {
          reasons.add(
              (deviation.reason().isEmpty() ? language.of("record.no-reason") : deviation.reason())
                  + by(deviation, language));
        }
      }
      failed.add(
          names.of(repeat.last().item())
              + ": "
              + read
              + accepted(repeat.last().item(), language)
              + (reasons.isEmpty() ? "" : "; " + String.join("; ", reasons)));
    }
    return failed;
  }

  /** The seal at the foot of every page. */
  private static String foot(String seal, Language language) {
    return "@page { @bottom-left { content: \""
        + language.of("record.page")
        + " "
        + seal.substring(0, Math.min(16, seal.length()))
        + "\"; font: 9pt Arial, sans-serif; } }\n";
  }

  /** Whether it is asked for in a section, once, and not at a point of a test. */
  private static boolean isOfTheVisit(Item.Recorded blank) {
    return blank.id().indexOf('/') == blank.id().lastIndexOf('/');
  }

  /** What was recorded in a unit, such as the temperature. */
  private static Map<String, String> ambient(VisitRecord record, Language language) {
    Map<String, String> ambient = new LinkedHashMap<>();
    for (Judgement judgement : record.report().judgements()) {
      if (!isAbsent(judgement)
          && judgement.item() instanceof Item.Recorded blank
          && blank.unit() != null
          && isOfTheVisit(blank)) {
        String title = blank.head().title();
        ambient.put(
            ambient.containsKey(title) ? title + ", " + blank.head().place() : title,
            JudgeReport.reading(judgement, language));
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
  private static List<JudgePage.Row> rows(VisitRecord record, ItemNames names, Language language) {
    List<JudgePage.Row> measured = new ArrayList<>();
    List<JudgePage.Row> others = new ArrayList<>();
    for (Judgement judgement : record.report().judgements()) {
      boolean identity =
          judgement.item() instanceof Item.Recorded blank && blank.sheetName() != null;
      boolean elsewhere = identity && judgement.verdict() == Verdict.PASS || isTicked(judgement);
      if (isAbsent(judgement)) {
        continue;
      } else if (judgement.item() instanceof Item.Measured) {
        measured.add(JudgePage.row(judgement, names, language));
      } else if (!elsewhere) {
        others.add(JudgePage.row(judgement, names, language));
      }
    }
    measured.addAll(others);
    return measured;
  }

  private static List<String> failed(
      List<Judgement> judgements, ItemNames names, Language language) {
    List<String> failed = new ArrayList<>();
    for (Judgement judgement : judgements) {
      failed.add(
          names.of(judgement.item())
              + ": "
              + JudgeReport.reading(judgement, language)
              + accepted(judgement.item(), language));
    }
    return failed;
  }

  private static String accepted(Item item, Language language) {
    String accepted = JudgeReport.accepted(item, language);
    return accepted.isEmpty() ? "" : ", " + language.of("judge.accepted.of", accepted);
  }

  private static List<DeviationRow> deviations(
      VisitRecord record, ItemNames names, Language language) {
    List<DeviationRow> rows = new ArrayList<>();
    for (Deviation deviation : record.deviations()) {
      boolean numbered = deviation.kind() == Deviation.Kind.REPEATED;
      String reason = deviation.reason();
      boolean owed = deviation.kind() != Deviation.Kind.REMARK && reason.isEmpty();
      rows.add(
          new DeviationRow(
              names.of(deviation.judgement().item()),
              kind(deviation.kind(), language)
                  + (numbered ? language.of("record.attempt", deviation.attempt()) : "")
                  + by(deviation, language),
              owed ? language.of("record.no-reason") : reason));
    }
    return rows;
  }

  private static String kind(Deviation.Kind kind, Language language) {
    return language.of(
        switch (kind) {
          case NOT_DONE -> "page.notDone";
          case REPEATED -> "page.again";
          case REMARK -> "record.remark";
        });
  }

  private static String by(Deviation deviation, Language language) {
    return deviation.by().isEmpty() ? "" : language.of("record.by", deviation.by());
  }
}
