package passband.detect;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What each entry of the catalogue comes to on a sheet. */
final class Instances {
  private Instances() {}

  static List<Instance> of(SheetLines lines) {
    OutputEffects output = new OutputEffects(lines);
    LimitEffects limits = new LimitEffects(lines, output);
    BenchEffects bench = new BenchEffects(lines);
    LeadEffects leads = new LeadEffects(lines);
    PersonEffects person = new PersonEffects(lines);
    List<Effects> all = List.of(output::of, limits::of, bench::of, leads::of, person::of);
    List<Instance> instances = new ArrayList<>();
    for (Fault fault : Fault.all()) {
      for (Fault.Size size : fault.sizes()) {
        List<Instance> some = of(fault, size, all);
        instances.addAll(some.isEmpty() ? List.of(Instance.ofNothing(fault, size)) : some);
      }
    }
    return instances;
  }

  /** Some of the effects of the catalogue; null for any other. */
  private interface Effects {
    @Nullable List<Instance> of(Fault fault, Fault.Size size);
  }

  private static List<Instance> of(Fault fault, Fault.Size size, List<Effects> all) {
    for (Effects effects : all) {
      List<Instance> some = effects.of(fault, size);
      if (some != null) {
        return some;
      }
    }
    throw new IllegalStateException("nothing does " + fault.effect());
  }
}
