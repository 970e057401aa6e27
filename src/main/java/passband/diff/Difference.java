package passband.diff;

import passband.plan.Fact;

/**
 * A fact that is not the same on both sides.
 *
 * @param was null for what is new
 * @param now null for what is gone
 */
record Difference(Fact was, Fact now) {
  Fact fact() {
    return now == null ? was : now;
  }

  Fact.Area area() {
    return fact().area();
  }

  String subject() {
    return fact().subject();
  }

  /** Whether both sides say something. */
  boolean isChange() {
    return was != null && now != null;
  }
}
