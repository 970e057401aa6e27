package passband.limit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Objects;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;
import passband.syntax.DecisionKind;

/**
 * How readings are compared with limits (JCGM 106).
 *
 * @param risk the share of wrongly accepted units at the limit that a risk rule allows; null for
 *     the others
 * @param coverage the factor k of the expanded uncertainty
 */
public record Decision(DecisionKind kind, @Nullable Rational risk, Rational coverage) {
  /** Readings are compared with the tolerance limits themselves. */
  public static final Decision SIMPLE = new Decision(DecisionKind.SIMPLE, null, Rational.TWO);

  /** How many standard uncertainties the limits move inward. */
  public Rational guard() {
    return switch (kind) {
      case SIMPLE -> Rational.ZERO;
      case GUARDED -> coverage;
      case RISK -> quantile(share());
    };
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
      case RISK -> "risk " + percent() + " %, k = " + coverage.toPlain();
    };
  }

  /** The accepted risk in per cent, in digits; of a rule that has one. */
  public String percent() {
    return share().times(Rational.HUNDRED).toPlain();
  }
}
