package passband.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
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

  /** Of runs that all test one thing, those that count. */
  Set<Stage.Run> of(List<Stage.Run> runs) {
    Set<Stage.Run> counted = new LinkedHashSet<>();
    for (Stage.Run run : runs) {
      Stage.Option option = run.when().condition().option();
      if (option == null || outcomes(option.choice()).equals(covered(option.choice(), runs))) {
        counted.add(run);
      }
    }
    return counted;
  }

  private Set<String> outcomes(String choice) {
    PlanStep step = plan.choice(choice);
    return step != null && step.act() instanceof Act.Choose choose
        ? new HashSet<>(choose.outcomes())
        : Set.of();
  }

  private static Set<String> covered(String choice, List<Stage.Run> runs) {
    List<String> covered = new ArrayList<>();
    for (Stage.Run run : runs) {
      Stage.Option option = run.when().condition().option();
      if (option != null && option.choice().equals(choice)) {
        covered.addAll(option.is());
      }
    }
    return new HashSet<>(covered);
  }
}
