package passband.check;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.model.Analyzer.Measure;
import passband.plan.Plan;
import passband.plan.Point;

/** The leakage currents that a point reads. */
final class Leakage {
  /** At high frequency, with the output on (IEC 60601-2-2, 201.8.7). */
  private static final String HF = "hf-leakage";

  /** What flows from the poles of an outlet to earth. */
  private static final Set<String> OF_POLES = Set.of(HF, "patient-leakage");

  /** The same, and what flows from parts that a person touches. */
  private static final Set<String> OF_PARTS = Set.of(HF, "touch-current", "patient-leakage");

  private Leakage() {}

  /** Whether the leakage of the outlet's poles is read. */
  static boolean isOfPoles(Plan plan, Point point) {
    return reads(plan, point, OF_POLES);
  }

  /** Whether leakage at high frequency is read. */
  static boolean isHf(Plan plan, Point point) {
    return reads(plan, point, Set.of(HF));
  }

  private static boolean reads(Plan plan, Point point, Set<String> quantities) {
    for (Limit limit : point.limits()) {
      if (quantities.contains(limit.quantity()) && plan.measure(limit) != null) {
        return true;
      }
    }
    return false;
  }

  /** The meter of what flows from poles or parts; null for any other quantity. */
  static @Nullable Measure meter(Plan plan, Limit limit) {
    Measure measure = plan.measure(limit);
    return measure != null && OF_PARTS.contains(measure.quantity().name()) ? measure : null;
  }
}
