package passband.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * What the scatter of repeated readings brings about in a value that their mean counts for: the
 * type A evaluation of JCGM 100, 4.2, with the covariance of quantities that are read together
 * (5.2.3).
 *
 * @param variance of the value, in the square of its unit
 * @param freedom its degrees of freedom: one less than the readings
 */
record Scatter(Real variance, Rational freedom) {
  /**
   * Of n repetitions of some quantities: with s the experimental covariance of the quantities (n −
   * 1 in its denominator) and c(i) the sensitivities by what was read the i-th time, the sum of
   * c(i)ᵀ·s·c(i). Of the mean of one quantity that is s²/n (4.2.3).
   *
   * @param repeats of each quantity the names of its readings, n of them in one order
   * @param values by name
   * @param slopes by name; nothing where there is none
   */
  static Scatter of(
      List<List<String>> repeats, Map<String, Real> values, Map<String, Real> slopes) {
    int n = repeats.get(0).size();
    List<List<Real>> from = new ArrayList<>();
    for (List<String> names : repeats) {
      from.add(fromMean(names, values));
    }
    Real sum = Real.ZERO;
    for (int i = 0; i < n; i++) {
      for (int k = 0; k < n; k++) {
        Real moved = Real.ZERO;
        for (int q = 0; q < repeats.size(); q++) {
          Real slope = slopes.getOrDefault(repeats.get(q).get(i), Real.ZERO);
          moved = moved.plus(slope.times(from.get(q).get(k)));
        }
        sum = sum.plus(moved.times(moved));
      }
    }
    Rational freedom = Rational.of(n - 1L);
    return new Scatter(sum.over(Real.of(freedom)), freedom);
  }

  private static List<Real> fromMean(List<String> names, Map<String, Real> values) {
    List<Real> read = new ArrayList<>();
    Real sum = Real.ZERO;
    for (String name : names) {
      Real value = Objects.requireNonNull(values.get(name), name);
      read.add(value);
      sum = sum.plus(value);
    }
    Real mean = sum.over(Real.of(Rational.of(names.size())));
    return read.stream().map(value -> value.minus(mean)).toList();
  }
}
