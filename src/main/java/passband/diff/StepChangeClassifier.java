package passband.diff;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.plan.Act;
import passband.plan.PlanStep;

/**
 * What a change of steps is: a caution or a check among them is more than a step that reads
 * otherwise.
 */
final class StepChangeClassifier {
  private final List<PlanStep> was;
  private final List<PlanStep> now;

  private StepChangeClassifier(List<PlanStep> was, List<PlanStep> now) {
    this.was = was;
    this.now = now;
  }

  /** Of the steps on both sides; null where there are none. */
  static Kind kind(@Nullable List<PlanStep> was, @Nullable List<PlanStep> now) {
    return new StepChangeClassifier(was == null ? List.of() : was, now == null ? List.of() : now)
        .worst();
  }

  private Kind worst() {
    Map<String, String> oldCautions = cautions(was);
    Map<String, String> newCautions = cautions(now);
    Map<String, String> oldChecks = checks(was);
    Map<String, String> newChecks = checks(now);
    if (!newCautions.keySet().containsAll(oldCautions.keySet())) {
      return Kind.CAUTION_REMOVED;
    }
    if (isReworded(oldCautions, newCautions) || isLater(oldCautions.keySet())) {
      return Kind.CAUTION_CHANGED;
    }
    if (texts(was).equals(texts(now))) {
      return Kind.ORDER;
    }
    if (isFewer(oldChecks, newChecks)) {
      return Kind.CHECK_REMOVED;
    }
    if (!oldChecks.equals(newChecks)) {
      return isFewer(newChecks, oldChecks) ? Kind.CHECK_ADDED : Kind.CHECK_CHANGED;
    }
    return oldCautions.equals(newCautions) ? Kind.STEP : Kind.CAUTION_ADDED;
  }

  /** What the steps say, in no order. */
  private static List<String> texts(List<PlanStep> steps) {
    List<String> texts = new ArrayList<>();
    for (PlanStep step : steps) {
      String passes =
          step.act() instanceof Act.Choose choose ? choose.outcomes() + " " + choose.pass() : "";
      texts.add(step.kind() + " " + step.insteadOf() + " " + step.text() + passes);
    }
    texts.sort(null);
    return texts;
  }

  private static boolean isReworded(Map<String, String> was, Map<String, String> now) {
    for (Map.Entry<String, String> one : was.entrySet()) {
      if (!one.getValue().equals(now.get(one.getKey()))) {
        return true;
      }
    }
    return false;
  }

  /** Whether a check that has a name is gone, or there are fewer of them. */
  private static boolean isFewer(Map<String, String> was, Map<String, String> now) {
    return now.size() < was.size() || !named(now).containsAll(named(was));
  }

  private static Set<String> named(Map<String, String> checks) {
    Set<String> named = new HashSet<>(checks.keySet());
    named.removeIf(key -> key.startsWith("#"));
    return named;
  }

  private static Map<String, String> cautions(List<PlanStep> steps) {
    Map<String, String> cautions = new LinkedHashMap<>();
    for (PlanStep step : steps) {
      if (step.act() instanceof Act.Caution caution) {
        cautions.merge(caution.name(), step.text(), (one, other) -> one + "\n" + other);
      }
    }
    return cautions;
  }

  /** What is ticked, chosen or recorded, by name, and by its number where it has none. */
  private static Map<String, String> checks(List<PlanStep> steps) {
    Map<String, String> checks = new LinkedHashMap<>();
    for (PlanStep step : steps) {
      if (step.act() instanceof Act.Confirm confirm) {
        String name = confirm.name() == null ? "#" + checks.size() : confirm.name();
        checks.put(name, step.text());
      } else if (step.act() instanceof Act.Choose choose) {
        checks.put(choose.name(), step.text() + choose.outcomes() + choose.pass());
      } else if (step.act() instanceof Act.Noted noted) {
        checks.put(noted.name(), step.text());
      }
    }
    return checks;
  }

  /** Whether a step that came after a caution now comes before it. */
  private boolean isLater(Set<String> cautions) {
    for (String caution : cautions) {
      Set<String> after = new HashSet<>(around(was, caution, false));
      after.retainAll(around(now, caution, true));
      if (!after.isEmpty()) {
        return true;
      }
    }
    return false;
  }

  /** The steps before the first place of a caution, or after it; each step with its number. */
  private static List<String> around(List<PlanStep> steps, String caution, boolean before) {
    List<String> around = new ArrayList<>();
    Map<String, Integer> numbers = new HashMap<>();
    boolean passed = false;
    for (PlanStep step : steps) {
      boolean here = step.act() instanceof Act.Caution one && one.name().equals(caution);
      String text = step.kind() + " " + step.text();
      String numbered = text + "#" + numbers.merge(text, 1, Integer::sum);
      if (!here && passed != before) {
        around.add(numbered);
      }
      passed |= here;
    }
    return around;
  }
}
