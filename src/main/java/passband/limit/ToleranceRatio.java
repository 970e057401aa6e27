package passband.limit;

import passband.quantity.Rational;
import passband.quantity.Real;

/** How much wider the tolerance is than the expanded uncertainty U of the reading. */
final class ToleranceRatio {
  private ToleranceRatio() {}

  /**
   * The least over the ends of |limit − nominal| / U; without a nominal, half the width / U.
   *
   * @param uncertainty null where none can be made, and then there is no ratio
   */
  static Real of(Bounds exact, Uncertainty uncertainty) {
    if (uncertainty == null) {
      return null;
    }
    Real half =
        exact.lower() == null || exact.upper() == null
            ? null
            : exact.upper().minus(exact.lower()).over(Real.of(Rational.TWO));
    Real low = at(exact.lower(), exact.nominal(), half, uncertainty);
    Real high = at(exact.upper(), exact.nominal(), half, uncertainty);
    return low == null ? high : high == null ? low : low.min(high);
  }

  private static Real at(Real limit, Real nominal, Real half, Uncertainty uncertainty) {
    Real distance = limit == null ? null : nominal == null ? half : limit.minus(nominal).abs();
    if (distance == null) {
      return null;
    }
    Real expanded = uncertainty.expanded(limit);
    return expanded.signum() == 0 ? null : distance.over(expanded);
  }
}
