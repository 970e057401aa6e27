package passband.judge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.evidence.ItemList;

/**
 * What gates make of verdicts. A gate passes when it is ticked and everything before it that
 * applies is done and passes. After one that has failed every value that it stops fails, whatever
 * it is; after one that is open none passes.
 */
final class Gates {
  private final ItemList list;
  private final List<Judgement> judged = new ArrayList<>();

  /**
   * By the identity of a value, by the gate's identity without the phase, the last that stops it.
   */
  private final Map<String, Map<String, Judgement>> gates = new HashMap<>();

  private Gates(ItemList list) {
    this.list = list;
  }

  /** The verdicts, in the order of the sheet, with those of gates and of what they stop. */
  static List<Judgement> of(ItemList list, List<Judgement> judgements) {
    Gates gates = new Gates(list);
    for (Judgement one : judgements) {
      gates.judged.add(gates.judged(one));
    }
    return List.copyOf(gates.judged);
  }

  private Judgement judged(Judgement one) {
    if (!(one.item() instanceof Item.Tick tick) || tick.stops() == null) {
      return stopped(one);
    }
    Judgement gate = one.verdict() == Verdict.NOT_APPLICABLE ? one : gate(one);
    if (gate.verdict() != Verdict.NOT_APPLICABLE) {
      for (String id : tick.stops()) {
        gates.computeIfAbsent(id, x -> new LinkedHashMap<>()).put(gate.base(), gate);
      }
    }
    return gate;
  }

  private Judgement gate(Judgement ticked) {
    Judgement failed = null;
    for (Judgement one : Report.deciding(list, judged).values()) {
      failed = failed == null && one.verdict() == Verdict.FAIL ? one : failed;
    }
    if (failed != null) {
      return because(ticked, Verdict.FAIL, Cause.Code.EARLIER_FAILED, failed.item().id());
    }
    Judgement open = open();
    return ticked.verdict() != Verdict.PASS || open == null
        ? ticked
        : because(ticked, Verdict.UNCLEAR, Cause.Code.EARLIER_OPEN, open.item().id());
  }

  private @Nullable Judgement open() {
    for (Judgement one : judged) {
      if (one.verdict() == Verdict.NOT_DONE || one.verdict() == Verdict.UNCLEAR) {
        return one;
      }
    }
    return null;
  }

  private Judgement stopped(Judgement one) {
    if (one.verdict() == Verdict.NOT_APPLICABLE || one.verdict() == Verdict.NOT_DONE) {
      return one;
    }
    Judgement now = one;
    for (Judgement gate : gates.getOrDefault(one.item().id(), Map.of()).values()) {
      String id = gate.item().id();
      if (gate.verdict() == Verdict.FAIL) {
        now = because(now, Verdict.FAIL, Cause.Code.GATE_FAILED, id);
      } else if (gate.verdict() != Verdict.PASS && now.verdict() == Verdict.PASS) {
        now = because(now, Verdict.UNCLEAR, Cause.Code.GATE_OPEN, id);
      }
    }
    return now;
  }

  private static Judgement because(Judgement one, Verdict verdict, Cause.Code code, String other) {
    List<Cause> causes = new ArrayList<>(one.causes());
    causes.add(Cause.of(code, one.item().id()).note(other));
    return new Judgement(
        one.item(),
        one.attempts(),
        verdict,
        one.value(),
        List.copyOf(causes),
        one.uncertainty(),
        one.factor(),
        one.freedom(),
        one.conformity(),
        one.effects());
  }
}
