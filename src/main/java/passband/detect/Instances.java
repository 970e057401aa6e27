package passband.detect;

import java.util.ArrayList;
import java.util.List;

/** What each entry of the catalogue comes to on a sheet. */
final class Instances {
  private Instances() {}

  static List<Instance> of(SheetLines lines) {
    OutputEffects output = new OutputEffects(lines);
    List<Instance> instances = new ArrayList<>();
    for (Fault fault : Fault.all()) {
      for (Fault.Size size : fault.sizes()) {
        List<Instance> some = of(fault, size, lines, output);
        instances.addAll(some.isEmpty() ? List.of(Instance.ofNothing(fault, size)) : some);
      }
    }
    return instances;
  }

  private static List<Instance> of(
      Fault fault, Fault.Size size, SheetLines lines, OutputEffects output) {
    if (OutputEffects.has(fault)) {
      return output.of(fault, size);
    }
    if (LimitEffects.has(fault)) {
      return new LimitEffects(lines, output).of(fault, size);
    }
    if (BenchEffects.has(fault)) {
      return new BenchEffects(lines).of(fault, size);
    }
    if (LeadEffects.has(fault)) {
      return new LeadEffects(lines).of(fault, size);
    }
    if (PersonEffects.has(fault)) {
      return new PersonEffects(lines).of(fault, size);
    }
    throw new IllegalStateException("nothing does " + fault.effect());
  }
}
