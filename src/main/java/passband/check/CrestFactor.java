package passband.check;

import java.util.HashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.limit.Bounds;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Wave;
import passband.syntax.Derive;
import passband.syntax.Expression;
import passband.syntax.Variables;

/**
 * {@code crest-below-one}, an error: limits of a crest factor below 1, or one that is worked out
 * the wrong way round: the ratio of the peak and the RMS value of one {@link Wave} is never below
 * 1.
 */
final class CrestFactor implements Check {
  private static final String NAME = "crest-factor";
  private static final Real ONE = Real.of(Rational.ONE);

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      Set<String> names = new HashSet<>(Set.of(NAME));
      for (Derive derive : run.tree().derives()) {
        turned(derive, diagnostics);
        if (isCrest(derive.value())) {
          names.add(derive.name().text());
        }
      }
      for (Point point : run.points()) {
        for (Limit limit : point.limits()) {
          if (names.contains(limit.quantity())) {
            below(point, limit, diagnostics);
          }
        }
      }
    }
  }

  // ---- limits ----

  /** Around a nominal of 1 or more the tolerance may well reach below it. */
  private static void below(Point point, Limit limit, Diagnostics diagnostics) {
    Bounds exact = limit.exact();
    boolean nominal = isBelow(exact.nominal());
    boolean lower = exact.nominal() == null && isBelow(exact.lower());
    if (nominal || lower || isBelow(exact.upper())) {
      diagnostics
          .say(
              Code.CREST_BELOW_ONE,
              limit.rule().span(),
              "the limits of the %s are %s, but peak divided by RMS is never below 1",
              limit.quantity().equals(NAME) ? "crest factor" : limit.quantity(),
              limit.words(limit.printed()))
          .note(point.span(), "at this point");
    }
  }

  private static boolean isBelow(@Nullable Real end) {
    return end != null && end.compareTo(ONE) < 0;
  }

  // ---- formula ----

  /** A peak over an RMS value and nothing else, whatever it is called. */
  static boolean isCrest(Expression value) {
    return value instanceof Expression.Binary ratio
        && ratio.operator() == Expression.Operator.OVER
        && ratio.left() instanceof Expression.Variable peak
        && ratio.right() instanceof Expression.Variable rms
        && isOneWave(peak.name().text(), rms.name().text());
  }

  private static boolean isOneWave(String peak, String rms) {
    Wave wave = Wave.ofPeak(peak);
    return wave != null && wave.rms().equals(rms);
  }

  private static void turned(Derive derive, Diagnostics diagnostics) {
    if (derive.name().text().equals(NAME)
        && derive.value() instanceof Expression.Binary ratio
        && ratio.operator() == Expression.Operator.OVER
        && isOf(ratio.left(), false)
        && isOf(ratio.right(), true)) {
      diagnostics
          .say(
              Code.CREST_BELOW_ONE,
              ratio.span(),
              "this divides the RMS value by the peak: the crest factor would be below 1")
          .hint("divide the peak by the RMS value")
          .fix(Fix.swap(ratio.left().span(), ratio.right().span()));
    }
  }

  /** Whether it is of peak values alone, or of RMS values alone, and of one at least. */
  private static boolean isOf(Expression part, boolean peaks) {
    boolean found = false;
    for (String name : Variables.of(part)) {
      boolean peak = Wave.ofPeak(name) != null;
      boolean rms = Wave.ofRms(name) != null;
      if (peaks ? rms : peak) {
        return false;
      }
      found |= peaks ? peak : rms;
    }
    return found;
  }
}
