package passband.record;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import passband.evidence.BadInput;
import passband.evidence.Item;
import passband.judge.Cause;
import passband.judge.Judge;
import passband.judge.Judgement;
import passband.judge.Readings;
import passband.judge.Report;
import passband.judge.Verdict;

/**
 * What failed, was read again and fails no more. The last attempt decides, so that only this tells
 * of it beside the row of the item.
 *
 * @param earlier the first verdict that failed
 * @param last the one that decides
 */
public record Repeat(Judgement earlier, Judgement last) {
  /** What a failure of the value itself says, not of a gate before it. */
  private static final Set<Cause.Code> OWN =
      EnumSet.of(
          Cause.Code.BELOW_LIMIT,
          Cause.Code.ABOVE_LIMIT,
          Cause.Code.GUARD_BAND,
          Cause.Code.OTHER_OUTCOME);

  /**
   * All of a report, in the sheet's order: the readings are judged as they were after the first
   * attempts, after the second, and so on, so that calculated values are among them.
   */
  static List<Repeat> of(Report report) {
    int most = 0;
    for (Readings.Row row : report.readings().rows()) {
      most = Math.max(most, attempt(row));
    }
    Map<String, Judgement> failed = new LinkedHashMap<>();
    for (int last = 1; last < most; last++) {
      for (Judgement judgement : upTo(last, report)) {
        boolean fails =
            judgement.verdict() == Verdict.FAIL
                && judgement.causes().stream().anyMatch(cause -> OWN.contains(cause.code()));
        if (fails) {
          failed.putIfAbsent(judgement.item().id(), judgement);
        }
      }
    }
    List<Repeat> repeats = new ArrayList<>();
    for (Judgement judgement : report.judgements()) {
      Judgement earlier = failed.get(judgement.item().id());
      if (earlier != null && judgement.verdict() != Verdict.FAIL) {
        repeats.add(new Repeat(earlier, judgement));
      }
    }
    return List.copyOf(repeats);
  }

  /** The verdicts as they were before any later attempt. */
  private static List<Judgement> upTo(int last, Report report) {
    Readings all = report.readings();
    List<Readings.Row> rows = all.rows().stream().filter(row -> attempt(row) <= last).toList();
    try {
      return Judge.judge(report.list(), new Readings(all.digest(), rows, all.semicolons()), null)
          .judgements();
    } catch (BadInput e) {
      throw new IllegalStateException("what is judged whole is judged in part", e);
    }
  }

  /** One that is no number counts as the first: its item is unclear. */
  private static int attempt(Readings.Row row) {
    return row.attempt().matches("[1-9]\\d{0,3}") ? Integer.parseInt(row.attempt()) : 1;
  }

  /** Whether it is calculated, so that its earlier value is not among what was written. */
  public boolean isCalculated() {
    return last.item() instanceof Item.Derived;
  }
}
