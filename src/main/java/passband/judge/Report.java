package passband.judge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.evidence.ItemList;

/**
 * All verdicts on one set of readings.
 *
 * @param written by item, what was written for it, in the order of the attempts
 * @param judgements one for each item, in the order of the sheet
 * @param phases the verdict of each phase in which anything applies, in order; empty where there
 *     are none
 * @param superseded failures of a phase after which the point was read again
 * @param overall pass only where every item that applies is done and what decides passes
 * @param warnings what else a reader has to know
 */
public record Report(
    ItemList list,
    Readings readings,
    Map<String, List<Readings.Row>> written,
    List<Judgement> judgements,
    Map<String, Verdict> phases,
    List<Judgement> superseded,
    Verdict overall,
    List<Cause> warnings) {

  static Report of(
      ItemList list,
      Readings readings,
      Map<String, Attempts> attempts,
      List<Judgement> judgements,
      List<Cause> warnings) {
    Map<String, List<Readings.Row>> written = new LinkedHashMap<>();
    list.items()
        .forEach(i -> written.put(i.id(), attempts.getOrDefault(i.id(), Attempts.NONE).rows()));
    Map<String, Judgement> deciding = deciding(list, judgements);
    List<Judgement> superseded =
        judgements.stream()
            .filter(j -> j.verdict() == Verdict.FAIL && deciding.get(j.base()) != j)
            .toList();
    return new Report(
        list,
        readings,
        written,
        judgements,
        byPhase(list, judgements),
        superseded,
        overall(list, readings, judgements, deciding),
        warnings);
  }

  /** Never a pass where nothing says that the readings were taken by this procedure. */
  static Verdict overall(ItemList list, Readings readings, List<Judgement> judgements) {
    return overall(list, readings, judgements, deciding(list, judgements));
  }

  private static Verdict overall(
      ItemList list,
      Readings readings,
      List<Judgement> judgements,
      Map<String, Judgement> deciding) {
    if (deciding.values().stream().anyMatch(j -> j.verdict() == Verdict.FAIL)) {
      return Verdict.FAIL;
    }
    boolean ofUnknown = list.pointsOnly() || readings.digest() == null;
    return ofUnknown || !complete(judgements) ? Verdict.INCOMPLETE : Verdict.PASS;
  }

  /** Whether everything that applies was done, and can be compared. */
  private static boolean complete(List<Judgement> judgements) {
    boolean any = judgements.stream().anyMatch(j -> j.verdict() != Verdict.NOT_APPLICABLE);
    return any
        && judgements.stream()
            .noneMatch(j -> j.verdict() == Verdict.NOT_DONE || j.verdict() == Verdict.UNCLEAR);
  }

  /** Of each item the last phase in which it was done; its first where it was done in none. */
  static Map<String, Judgement> deciding(ItemList list, List<Judgement> judgements) {
    Map<String, Judgement> deciding = new LinkedHashMap<>();
    for (Judgement judgement : judgements) {
      Judgement before = deciding.get(judgement.base());
      boolean later = before == null || order(list, judgement) > order(list, before);
      if (before == null || later && done(judgement)) {
        deciding.put(judgement.base(), judgement);
      }
    }
    return deciding;
  }

  /** Where its phase stands among the phases; below all where it has none. */
  private static int order(ItemList list, Judgement judgement) {
    String phase = judgement.item().head().phase();
    return phase == null ? -1 : list.phases().indexOf(phase);
  }

  private static boolean done(Judgement judgement) {
    return switch (judgement.verdict()) {
      case PASS, FAIL, UNCLEAR -> true;
      default -> false;
    };
  }

  private static Map<String, Verdict> byPhase(ItemList list, List<Judgement> judgements) {
    Map<String, Verdict> phases = new LinkedHashMap<>();
    for (String phase : list.phases()) {
      List<Judgement> own = new ArrayList<>();
      for (Judgement judgement : judgements) {
        if (phase.equals(judgement.item().head().phase())
            && judgement.verdict() != Verdict.NOT_APPLICABLE) {
          own.add(judgement);
        }
      }
      if (!own.isEmpty()) {
        boolean fails = own.stream().anyMatch(j -> j.verdict() == Verdict.FAIL);
        phases.put(phase, fails ? Verdict.FAIL : complete(own) ? Verdict.PASS : Verdict.INCOMPLETE);
      }
    }
    return phases;
  }
}
