package passband.detect;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;

/**
 * Which displayed values pass: whole numbers of steps, since a display rounds to the nearest step.
 *
 * @param least the least number of steps that passes; null where that side is open
 * @param greatest the greatest number of steps that passes; null where that side is open
 * @param step one step, in SI
 */
public record Window(@Nullable BigInteger least, @Nullable BigInteger greatest, double step) {

  /**
   * What is accepted, read in steps of a display.
   *
   * @param lower in SI; null where that side is open
   * @param upper in SI; null where that side is open
   * @param step in SI, more than zero
   */
  public static Window of(@Nullable Rational lower, @Nullable Rational upper, Rational step) {
    return new Window(
        lower == null ? null : lower.over(step).ceiling(),
        upper == null ? null : upper.over(step).floor(),
        step.doubleValue());
  }

  /** One displayed value. */
  Window only(long steps) {
    BigInteger value = BigInteger.valueOf(steps);
    return new Window(value, value, step);
  }

  /** The least undisplayed value that passes, in SI; below everything where that side is open. */
  double low() {
    return least == null ? Double.NEGATIVE_INFINITY : (least.doubleValue() - 0.5) * step;
  }

  /** The least undisplayed value above those that pass, in SI. */
  double high() {
    return greatest == null ? Double.POSITIVE_INFINITY : (greatest.doubleValue() + 0.5) * step;
  }

  /** What is displayed of a value, in steps. */
  long displayed(double value) {
    return (long) Math.floor(value / step + 0.5);
  }

  /** What is displayed of a value, in SI. */
  double rounded(double value) {
    return step * Math.floor(value / step + 0.5);
  }

  /** Whether a displayed value passes. */
  boolean passes(long steps) {
    BigInteger value = BigInteger.valueOf(steps);
    return (least == null || least.compareTo(value) <= 0)
        && (greatest == null || value.compareTo(greatest) <= 0);
  }
}
