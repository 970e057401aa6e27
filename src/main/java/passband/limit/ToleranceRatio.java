package passband.limit;

import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;
import passband.quantity.Real;

/** How much wider the tolerance is than the expanded uncertainty U of the reading. */
final class ToleranceRatio {
  private ToleranceRatio() {}

  /**
   * The least over the ends of |limit − nominal| / U; without a nominal, half the width / U. The
   * other end of a one-sided tolerance of what is never negative is zero. Common practice, no
   * source.
   *
   * @param nonNegative whether the quantity is never below zero
   * @param uncertainty null where none can be made, and then there is no ratio
   */
  static @Nullable Real of(Bounds exact, boolean nonNegative, @Nullable Uncertainty uncertainty) {
    if (uncertainty == null) {
      return null;
    }
    Real half = half(exact, nonNegative);
    Real low = at(exact.lower(), exact.nominal(), half, uncertainty);
    Real high = at(exact.upper(), exact.nominal(), half, uncertainty);
    return low == null ? high : high == null ? low : low.min(high);
  }

  private static @Nullable Real half(Bounds exact, boolean nonNegative) {
    Real none = nonNegative ? Real.ZERO : null;
    Real from = exact.lower() == null || exact.upper() == null ? none : exact.lower();
    Real to = exact.upper() == null ? exact.lower() : exact.upper();
    return from == null || to == null ? null : to.minus(from).over(Real.of(Rational.TWO));
  }

  private static @Nullable Real at(
      @Nullable Real limit, @Nullable Real nominal, @Nullable Real half, Uncertainty uncertainty) {
    if (limit == null) {
      return null;
    }
    Real distance = nominal == null ? half : limit.minus(nominal).abs();
    if (distance == null) {
      return null;
    }
    Real expanded = uncertainty.expanded(limit);
    return expanded.signum() == 0 ? null : distance.over(expanded);
  }
}
