package passband.judge;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Student;
import passband.quantity.VarianceSum;

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

  /** The effective degrees of freedom of a reading y; null for infinitely many. */
  public static @Nullable Integer freedom(Item.Reading reading, Rational y) {
    if (reading.budget() == null) {
      return null;
    }
    VarianceSum sum = new VarianceSum();
    for (Item.Contribution part : reading.budget()) {
      Rational width =
          Rational.of(part.relative()).times(y.abs()).plus(Rational.of(part.absolute()));
      sum.add(Real.of(width), part.spread());
    }
    return sum.freedom();
  }

  /**
   * The factor k of the expanded uncertainty that an item's limits have, four digits: that of the
   * end at which the uncertainty is greater.
   */
  public static BigDecimal coverage(BigDecimal normal, Item.Measured item) {
    Item.Limits limits = item.limits();
    if (!(item instanceof Item.Reading reading) || limits == null) {
      return normal;
    }
    BigDecimal greater = limits.upper() != null ? limits.upper() : limits.lower();
    if (greater == null) {
      return normal;
    }
    Integer freedom = freedom(reading, Rational.of(greater));
    return freedom == null
        ? normal
        : new BigDecimal(Student.factor(Rational.of(normal), freedom).toPlain())
            .round(new MathContext(4));
  }

  /** Whether an uncertainty of the list is known only so well: of an error, or from scatter. */
  public static boolean hasFiniteFreedom(ItemList list) {
    return list.items().stream()
        .anyMatch(
            item ->
                item instanceof Item.Derived derived
                        && (derived.calculation().load().spread().freedom() != null
                            || !derived.calculation().repeats().isEmpty())
                    || item instanceof Item.Reading reading
                        && reading.budget() != null
                        && reading.budget().stream().anyMatch(c -> c.spread().freedom() != null));
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
   * the reading (JCGM 106, 7.3 and 7.4), or Student's t with few degrees of freedom.
   *
   * @param lower null where that side is open, likewise {@code upper}
   * @param standard the standard uncertainty; zero decides by comparison alone
   * @param freedom its degrees of freedom; null for infinitely many
   */
  public static double conformity(
      double reading,
      @Nullable Double lower,
      @Nullable Double upper,
      double standard,
      @Nullable Integer freedom) {
    if (standard == 0) {
      return (lower == null || reading >= lower) && (upper == null || reading <= upper) ? 1 : 0;
    }
    ContinuousDistribution about = freedom == null ? NORMAL : TDistribution.of(freedom);
    double low = lower == null ? 0 : about.cumulativeProbability((lower - reading) / standard);
    double high = upper == null ? 1 : about.cumulativeProbability((upper - reading) / standard);
    return high - low;
  }

  /** With infinitely many degrees of freedom. */
  public static double conformity(
      double reading, @Nullable Double lower, @Nullable Double upper, double standard) {
    return conformity(reading, lower, upper, standard, null);
  }

  /**
   * The greatest probability of wrongly accepting what lies on a limit, when limits are moved
   * inward by so many standard uncertainties (JCGM 106, 8.3.2; ILAC-G8).
   */
  public static double risk(double guard) {
    return NORMAL.survivalProbability(guard);
  }
}
