package passband.detect;

import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/** What stands on the display in one visit, where it is another than a good generator's. */
final class Visit {
  private final Map<SheetLine, Observation> seen = new LinkedHashMap<>();
  private final List<Observation> all = new ArrayList<>();
  private final Predicate<WorkedOut> counts;
  private final boolean delivered;

  /** With every value that is worked out from what is read. */
  Visit() {
    this(value -> true, true);
  }

  /**
   * @param counts which values that are worked out from readings count
   * @param delivered whether the output itself is another one, not only what is read of it
   */
  Visit(Predicate<WorkedOut> counts, boolean delivered) {
    this.counts = counts;
    this.delivered = delivered;
  }

  Visit add(SheetLine line, Observation one) {
    seen.put(line, one);
    all.add(one);
    return this;
  }

  /** With one reading alone, and what is worked out from it. */
  Visit with(SheetLine line, Observation one) {
    return new Visit(counts, delivered).add(line, one);
  }

  List<Observation> readings() {
    return List.copyOf(all);
  }

  boolean isEmpty() {
    return seen.isEmpty();
  }

  /** Every value that a reading among these goes into, once. */
  List<Reckoning> reckonings() {
    Set<WorkedOut> met = Collections.newSetFromMap(new IdentityHashMap<>());
    List<Reckoning> reckonings = new ArrayList<>();
    for (SheetLine line : seen.keySet()) {
      for (WorkedOut value : line.uses()) {
        if (met.add(value) && counts.test(value)) {
          reckonings.add(value.of(seen, delivered));
        }
      }
    }
    return reckonings;
  }

  /** The probability that at least one reading, or a value that is worked out from some, fails. */
  Chance failing(Kernel kernel) {
    return kernel.failing(all, reckonings());
  }

  /** The same if all ranges of the instruments shared one error. */
  Chance failingTogether(Kernel kernel) {
    List<Reckoning> values = new ArrayList<>();
    for (Reckoning value : reckonings()) {
      values.add(new Reckoning(value.criterion(), together(value.parts())));
    }
    return kernel.failing(together(all), values);
  }

  private static List<Observation> together(List<Observation> some) {
    return some.stream().map(Observation::sharingItsRange).toList();
  }

  /** In how many activations something fails whatever else is read. */
  long activationsThatFail(Kernel kernel) {
    Map<String, Visit> activations = new LinkedHashMap<>();
    seen.forEach(
        (line, one) ->
            activations
                .computeIfAbsent(
                    line.point().id() + " " + line.activation(), p -> new Visit(counts, delivered))
                .add(line, one));
    return activations.values().stream().filter(visit -> visit.failing(kernel).sure()).count();
  }

  /** Whether the true values bring some value outside of its limits. */
  boolean isOutside() {
    return reckonings().stream().anyMatch(Reckoning::isOutside);
  }
}
