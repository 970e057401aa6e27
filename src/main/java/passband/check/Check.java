package passband.check;

import passband.diagnostic.Diagnostics;
import passband.plan.Plan;

/** Looks for one kind of fault in a compiled procedure. */
interface Check {
  /** Says what it finds. */
  void check(Plan plan, Diagnostics diagnostics);

  /**
   * Whether it looks for what is absent, so that a part left out for another fault would mislead
   * it.
   */
  default boolean needsWhole() {
    return false;
  }
}
