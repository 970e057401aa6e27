package passband.compile;

import passband.model.Analyzer;
import passband.model.Instruments;
import passband.plan.Owner;

/** Whose steps are an instrument's, and how the sheet tells it from the others. */
final class Owners {
  private Owners() {}

  /** The instrument by its printed name where there are several, with its role for twins. */
  static Owner of(Analyzer unit, Instruments instruments) {
    int twins = 0;
    for (Analyzer other : instruments.units()) {
      twins += other.title().equals(unit.title()) ? 1 : 0;
    }
    String label = twins > 1 ? unit.title() + " (" + unit.role() + ")" : unit.title();
    return new Owner(unit.role(), instruments.units().size() > 1 ? label : null);
  }
}
