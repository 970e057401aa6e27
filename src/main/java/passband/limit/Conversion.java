package passband.limit;

import java.util.Set;
import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * One quantity read as another through a resistance: P = I²R = V²/R, V = IR (Joule's and Ohm's
 * laws; OpenStax College Physics 2e, 20.4). Exact: a root stays a root until it is rounded.
 */
public final class Conversion {
  private static final Set<String> THROUGH_LOAD = Set.of("power", "current", "voltage");

  private Conversion() {}

  /** Whether one can be read as the other through a load. */
  public static boolean exists(String from, String to) {
    return !from.equals(to) && THROUGH_LOAD.contains(from) && THROUGH_LOAD.contains(to);
  }

  /** The reading that a value, zero or more, amounts to in a load. */
  public static Real convert(Real value, String from, String to, Rational ohms) {
    Real r = Real.of(ohms);
    return switch (from + ">" + to) {
      case "power>current" -> value.over(r).sqrt();
      case "power>voltage" -> value.times(r).sqrt();
      case "current>power" -> value.times(value).times(r);
      case "voltage>power" -> value.times(value).over(r);
      case "current>voltage" -> value.times(r);
      case "voltage>current" -> value.over(r);
      default -> throw new IllegalArgumentException(from + " is not read as " + to);
    };
  }

  /**
   * By how much of itself a reading changes when the load does by one: a half where a power is read
   * as a root of it.
   */
  public static Rational loadSensitivity(String from) {
    return from.equals("power") ? Rational.of(1, 2) : Rational.ONE;
  }
}
