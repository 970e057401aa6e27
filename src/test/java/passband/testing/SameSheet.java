package passband.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import passband.evidence.Evidence;
import passband.plan.Plan;
import passband.render.Checklist;
import passband.render.LimitsCsv;

/** Two ways of writing one procedure. */
public final class SameSheet {
  private SameSheet() {}

  /** Both mean the same and print the same page and the same limits. */
  public static void assertSame(Plan one, Plan other) {
    assertEquals(one.digest(), other.digest());
    assertEquals(Checklist.of(one), Checklist.of(other));
    assertEquals(LimitsCsv.of(Evidence.of(one).list()), LimitsCsv.of(Evidence.of(other).list()));
  }
}
