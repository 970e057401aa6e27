package passband.check;

import passband.bench.Walk;
import passband.diagnostic.Diagnostics;
import passband.plan.Plan;

/**
 * {@code acts-while-on}, {@code on-time-short} and {@code not-set-at-reading}, errors: the sheet is
 * worked through step by step on a model of the bench.
 */
final class OnTheBench implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    Walk.of(plan, diagnostics);
  }

  /** After another error a step may be left out. */
  @Override
  public boolean needsWhole() {
    return true;
  }
}
