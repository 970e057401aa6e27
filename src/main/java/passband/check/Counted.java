package passband.check;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import passband.plan.Act;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Stage;

/**
 * Which runs count as tests: those that are done whatever is chosen, and of those that depend on a
 * choice only so many as between them are done after every outcome.
 */
final class Counted {
  private final Plan plan;

  Counted(Plan plan) {
    this.plan = plan;
  }

  /** Whether a run counts, of runs that all test one thing. */
  Predicate<Stage.Run> among(List<Stage.Run> runs) {
    Map<String, Set<String>> covered = new HashMap<>();
    for (Stage.Run run : runs) {
      Stage.Option option = run.when().condition().option();
      if (option != null) {
        covered.computeIfAbsent(option.choice(), choice -> new HashSet<>()).addAll(option.is());
      }
    }
    covered.entrySet().removeIf(choice -> !outcomes(choice.getKey()).equals(choice.getValue()));
    return run -> {
      Stage.Option option = run.when().condition().option();
      return option == null || covered.containsKey(option.choice());
    };
  }

  private Set<String> outcomes(String choice) {
    PlanStep step = plan.choice(choice);
    return step != null && step.act() instanceof Act.Choose choose
        ? new HashSet<>(choose.outcomes())
        : Set.of();
  }
}
