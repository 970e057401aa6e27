package passband.limit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Objects;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.syntax.DecisionKind;

/**
 * How readings are compared with limits (JCGM 106).
 *
 * @param risk the share of wrongly accepted units at the limit that a risk rule allows; null for
 *     the others
 * @param coverage the factor k of the expanded uncertainty
 * @param prior the share of generators whose true values are expected to be in tolerance before the
 *     test; null where none is said
 */
public record Decision(
    DecisionKind kind, @Nullable Rational risk, Rational coverage, @Nullable Rational prior) {
  /** Readings are compared with the tolerance limits themselves. */
  public static final Decision SIMPLE = new Decision(DecisionKind.SIMPLE, null, Rational.TWO);

  /** Without a prior. */
  public Decision(DecisionKind kind, @Nullable Rational risk, Rational coverage) {
    this(kind, risk, coverage, null);
  }

  /**
   * How many standard uncertainties limits move inward where no ratio of tolerance and uncertainty
   * is known: the managed guard band is then the whole expanded uncertainty.
   */
  public Rational guard() {
    return switch (kind) {
      case SIMPLE -> Rational.ZERO;
      case GUARDED, MANAGED -> coverage;
      case RISK -> quantile(share());
    };
  }

  /**
   * How many standard uncertainties the limits move inward at a ratio of tolerance and expanded
   * uncertainty.
   *
   * @param ratio null where there is none
   */
  Rational guard(@Nullable Real ratio) {
    return kind == DecisionKind.MANAGED && ratio != null && ratio.signum() > 0
        ? coverage.times(managed(ratio.doubleValue()))
        : guard();
  }

  /**
   * The managed guard band of ANSI/NCSL Z540.3, method 6, as a share of the expanded uncertainty:
   * with TUR the tolerance over that uncertainty, 1.04 − exp(0.38·ln TUR − 0.54), which holds the
   * probability of accepting what does not conform below 2 % whatever share conforms; to 12 digits,
   * rounded up. None from a ratio of 4.59 on, where the formula would widen the tolerance.
   */
  static Rational managed(double ratio) {
    double share = 1.04 - Math.exp(0.38 * Math.log(ratio) - 0.54);
    return share <= 0
        ? Rational.ZERO
        : Rational.of(new BigDecimal(share).round(new MathContext(12, RoundingMode.UP)));
  }

  private Rational share() {
    return Objects.requireNonNull(risk, "a risk rule without a risk");
  }

  /** The standard normal quantile of 1 − risk, to 12 digits. */
  private static Rational quantile(Rational risk) {
    double z = NormalDistribution.of(0, 1).inverseSurvivalProbability(risk.doubleValue());
    return Rational.of(new BigDecimal(z).round(new MathContext(12)));
  }

  /** As printed: {@code simple}, {@code guarded, k = 2}, {@code risk 2 %, k = 2}. */
  public String text() {
    return switch (kind) {
      case SIMPLE -> "simple";
      case GUARDED -> "guarded, k = " + coverage.toPlain();
      case MANAGED -> "managed, k = " + coverage.toPlain();
      case RISK -> "risk " + percent() + " %, k = " + coverage.toPlain();
    };
  }

  /** The accepted risk in per cent, in digits; of a rule that has one. */
  public String percent() {
    return share().times(Rational.HUNDRED).toPlain();
  }
}
