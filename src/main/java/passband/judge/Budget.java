package passband.judge;

import java.math.BigDecimal;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;

/** Uncertainties put together, and what follows from them for a verdict. */
public final class Budget {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  private Budget() {}

  /**
   * The standard uncertainty of a reading y: half-widths by their distributions, a rectangular one
   * divided by √3 (JCGM 100, 4.3.7), combined (5.1.2); NaN where none is known.
   *
   * @param coverage the factor k of the expanded uncertainty, used where there is no budget
   */
  static double standard(Item.Reading reading, double y, double coverage) {
    if (reading.budget() != null) {
      return combined(reading.budget().stream().map(c -> standard(c, y)).toList());
    }
    BigDecimal expanded = reading.limits() == null ? null : reading.limits().uncertainty();
    return expanded == null ? Double.NaN : expanded.doubleValue() / coverage;
  }

  /** The standard uncertainty of a contribution at a reading y. */
  public static double standard(Item.Contribution part, double y) {
    return halfWidth(part, y) * Math.sqrt(part.spread().variance().doubleValue());
  }

  /** The half-width of a contribution at a reading y. */
  static double halfWidth(Item.Contribution part, double y) {
    return part.relative().doubleValue() * Math.abs(y) + part.absolute().doubleValue();
  }

  /** Uncorrelated standard uncertainties combined (JCGM 100, 5.1.2, sensitivities one). */
  public static double combined(List<Double> standard) {
    return Math.sqrt(standard.stream().mapToDouble(u -> u * u).sum());
  }

  /**
   * The probability that what was read conforms to its tolerance, for a normal distribution about
   * the reading (JCGM 106, 7.3 and 7.4).
   *
   * @param lower null where that side is open, likewise {@code upper}
   * @param standard the standard uncertainty; zero decides by comparison alone
   */
  public static double conformity(
      double reading, @Nullable Double lower, @Nullable Double upper, double standard) {
    if (standard == 0) {
      return (lower == null || reading >= lower) && (upper == null || reading <= upper) ? 1 : 0;
    }
    double low = lower == null ? 0 : NORMAL.cumulativeProbability((lower - reading) / standard);
    double high = upper == null ? 1 : NORMAL.cumulativeProbability((upper - reading) / standard);
    return high - low;
  }

  /**
   * The greatest probability of wrongly accepting what lies on a limit, when limits are moved
   * inward by so many standard uncertainties (JCGM 106, 8.3.2; ILAC-G8).
   */
  public static double risk(double guard) {
    return NORMAL.survivalProbability(guard);
  }
}
