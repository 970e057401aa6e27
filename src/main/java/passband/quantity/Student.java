package passband.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.jspecify.annotations.Nullable;

/** Coverage factors where uncertainties are themselves known only so well (JCGM 100, G.3, G.4). */
public final class Student {
  /**
   * More degrees of freedom count as so many: the factor is then at most 0.7 % too large at k = 2,
   * never too small.
   */
  public static final int MOST = 200;

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
  private static final MathContext DIGITS = new MathContext(12);

  private Student() {}

  /**
   * The factor that leaves outside on one side what {@code normal} standard uncertainties leave
   * outside of a normal distribution, by Student's t, to 12 digits: for k = 2, whose interval holds
   * 95.45 %, with 10 degrees of freedom 2.28 (G.4, Table G.2).
   *
   * @param normal the factor for infinitely many degrees of freedom; zero stays zero
   * @param freedom whole degrees of freedom, one at least; null for infinitely many
   */
  public static Rational factor(Rational normal, @Nullable Integer freedom) {
    if (freedom == null || normal.isZero()) {
      return normal;
    }
    double outside = NORMAL.survivalProbability(normal.doubleValue());
    double t = TDistribution.of(Math.min(freedom, MOST)).inverseSurvivalProbability(outside);
    return Rational.of(new BigDecimal(t).round(DIGITS));
  }

  /**
   * Effective degrees of freedom of a sum by Welch and Satterthwaite (G.2b), rounded down to the
   * next whole number (G.4.1), one at least.
   *
   * @param variance the combined variance
   * @param shares the sum over the contributions of variance² / degrees of freedom; zero where none
   *     has a finite number
   * @return null for infinitely many
   */
  public static @Nullable Integer effective(Real variance, Real shares) {
    if (shares.signum() == 0) {
      return null;
    }
    Real most = Real.of(Rational.of(MOST));
    Real degrees = variance.times(variance).over(shares).min(most);
    return Math.max(1, (int) Math.round(degrees.floorTo(Rational.ONE).doubleValue()));
  }

  /** What a contribution adds to the sum of {@link #effective}. */
  public static Real share(Real variance, Distribution spread) {
    return spread.freedom() == null
        ? Real.ZERO
        : variance.times(variance).over(Real.of(spread.freedom()));
  }
}
