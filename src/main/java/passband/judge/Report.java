package passband.judge;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * All verdicts on one set of readings.
 *
 * @param phases the verdict of each phase, in order; empty where there are none
 * @param overall of what counts: as left where it was read, as found where it was not
 * @param warnings what else a reader has to know
 */
public record Report(
    LimitTable table,
    Readings readings,
    List<Judgement> judgements,
    Map<String, Verdict> phases,
    Verdict overall,
    List<String> warnings) {

  /** Fail where one fails, incomplete where one is not done or unclear, else pass. */
  static Verdict together(List<Judgement> judgements) {
    if (judgements.stream().anyMatch(j -> j.verdict() == Verdict.FAIL)) {
      return Verdict.FAIL;
    }
    boolean all =
        !judgements.isEmpty() && judgements.stream().allMatch(j -> j.verdict() == Verdict.PASS);
    return all ? Verdict.PASS : Verdict.INCOMPLETE;
  }

  /** The last phase in which a point was read, else its first. */
  static List<Judgement> counting(List<Judgement> judgements) {
    Map<String, Judgement> last = new LinkedHashMap<>();
    boolean second =
        judgements.stream().anyMatch(j -> isLater(j, judgements) && !j.readings().isEmpty());
    for (Judgement judgement : judgements) {
      if (second || !isLater(judgement, judgements)) {
        last.put(judgement.base(), judgement);
      }
    }
    return List.copyOf(last.values());
  }

  private static boolean isLater(Judgement judgement, List<Judgement> all) {
    return !judgement.phase().equals(all.get(0).phase());
  }

  /** Verdicts by phase. */
  static Map<String, Verdict> byPhase(List<Judgement> judgements) {
    Map<String, Verdict> phases = new LinkedHashMap<>();
    for (Judgement judgement : judgements) {
      String phase = judgement.phase();
      if (!phase.isEmpty()) {
        phases.put(
            phase, together(judgements.stream().filter(j -> j.phase().equals(phase)).toList()));
      }
    }
    return phases;
  }
}
