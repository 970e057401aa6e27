package passband.plan;

import java.util.HashSet;
import java.util.Set;
import java.util.function.Predicate;
import passband.model.Terminal;

/**
 * The outlets and instruments whose terminals the wiring drawings have: their order on the panel is
 * printed.
 */
final class Drawn {
  private Drawn() {}

  /** Tells of an outlet's name or an instrument's role whether a drawing has it. */
  static Predicate<String> in(Plan plan) {
    Set<String> owners = new HashSet<>();
    for (Stage.Run run : plan.runs()) {
      if (run.setup() != null) {
        boolean reached = false;
        for (Wire wire : run.setup().wires()) {
          reached |= add(wire.from(), owners) | add(wire.to(), owners);
        }
        if (!reached) { // then the first instrument stands beside the outlet
          owners.add(plan.instruments().units().get(0).role());
        }
      }
    }
    return owners::contains;
  }

  private static boolean add(Terminal end, Set<String> owners) {
    owners.add(end.owner());
    return end.onAnalyzer();
  }
}
