package passband.limit;

import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import passband.quantity.Real;

/**
 * Between what a quantity has to be, exactly and in SI.
 *
 * @param nominal the rule's target; null when it has none
 * @param lower null when that side is open
 * @param upper null when that side is open
 */
public record Bounds(@Nullable Real nominal, @Nullable Real lower, @Nullable Real upper) {

  /** The same with every value changed by an increasing function. */
  public Bounds map(UnaryOperator<Real> increasing) {
    return new Bounds(
        nominal == null ? null : increasing.apply(nominal),
        lower == null ? null : increasing.apply(lower),
        upper == null ? null : increasing.apply(upper));
  }

  /** Whether at either end something is between these that is not between the others. */
  public boolean looserThan(Bounds other) {
    boolean below = other.lower != null && (lower == null || lower.compareTo(other.lower) < 0);
    boolean above = other.upper != null && (upper == null || upper.compareTo(other.upper) > 0);
    return below || above;
  }

  /** At each end the tighter of the two; the nominal of this one. */
  public Bounds tighter(Bounds other) {
    Real low = lower == null ? other.lower : other.lower == null ? lower : lower.max(other.lower);
    Real high = upper == null ? other.upper : other.upper == null ? upper : upper.min(other.upper);
    return new Bounds(nominal, low, high);
  }
}
