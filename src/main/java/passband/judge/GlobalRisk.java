package passband.judge;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.evidence.ItemList;

/**
 * The risks of a decision rule over all units that are tested (JCGM 106, 9.5): both are shares of
 * all units, not of those that were accepted or rejected.
 *
 * @param consumer the probability that a unit does not conform and is accepted
 * @param producer the probability that a unit conforms and is rejected
 */
public record GlobalRisk(double consumer, double producer) {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  /** Beyond so many standard deviations nothing counts. */
  private static final double FAR = 9;

  /** That share of a normal distribution on one side. */
  private static final double NOTHING = 1e-18;

  /** Parts of each stretch, an even number; the error is then below 10⁻⁹. */
  private static final int PARTS = 400;

  /** An interval; an end may be infinite. */
  public record Interval(double lower, double upper) {
    boolean holds(double value) {
      return value >= lower && value <= upper;
    }
  }

  /**
   * Of units read with a normal error.
   *
   * @param tolerance what conforms
   * @param accepted what is accepted, of readings
   * @param units how their values are spread: one hump without steps
   * @param standard the standard uncertainty of a reading, above zero
   */
  public static GlobalRisk of(
      Interval tolerance, Interval accepted, ContinuousDistribution units, double standard) {
    DoubleUnaryOperator accepts =
        y ->
            NORMAL.cumulativeProbability((accepted.upper - y) / standard)
                - NORMAL.cumulativeProbability((accepted.lower - y) / standard);
    double low = units.inverseCumulativeProbability(NOTHING);
    double high = units.inverseSurvivalProbability(NOTHING);
    double[] ends =
        Arrays.stream(
                new double[] {
                  low,
                  high,
                  tolerance.lower,
                  tolerance.upper,
                  accepted.lower - FAR * standard,
                  accepted.lower,
                  accepted.lower + FAR * standard,
                  accepted.upper - FAR * standard,
                  accepted.upper,
                  accepted.upper + FAR * standard
                })
            .map(end -> Math.max(low, Math.min(high, end)))
            .sorted()
            .toArray();
    double consumer = 0;
    double producer = 0;
    for (int i = 1; i < ends.length; i++) {
      double from = ends[i - 1];
      double to = ends[i];
      if (to > from) {
        boolean conforms = tolerance.holds((from + to) / 2);
        double risk =
            integral(
                y -> {
                  double accept = accepts.applyAsDouble(y);
                  return units.density(y) * (conforms ? 1 - accept : accept);
                },
                from,
                to);
        consumer += conforms ? 0 : risk;
        producer += conforms ? risk : 0;
      }
    }
    return new GlobalRisk(consumer, producer);
  }

  /** By Simpson's rule. */
  private static double integral(DoubleUnaryOperator of, double from, double to) {
    double step = (to - from) / PARTS;
    double sum = of.applyAsDouble(from) + of.applyAsDouble(to);
    for (int i = 1; i < PARTS; i++) {
      sum += (i % 2 == 0 ? 2 : 4) * of.applyAsDouble(from + i * step);
    }
    return sum * step / 3;
  }

  /**
   * Of units of which a share is in tolerance, normally spread about its middle.
   *
   * @param prior that share, between zero and one
   */
  public static GlobalRisk of(
      Interval tolerance, Interval accepted, double prior, double standard) {
    double half = (tolerance.upper - tolerance.lower) / 2;
    double spread = half / NORMAL.inverseCumulativeProbability((1 + prior) / 2);
    return of(tolerance, accepted, NormalDistribution.of(tolerance.lower + half, spread), standard);
  }

  /**
   * The greatest of each over the readings that have two limits and a known uncertainty; null where
   * none has.
   */
  public static @Nullable GlobalRisk greatest(ItemList list, double prior) {
    double consumer = -1;
    double producer = -1;
    for (Item item : list.items()) {
      GlobalRisk risk = item instanceof Item.Reading reading ? of(list, reading, prior) : null;
      if (risk != null) {
        consumer = Math.max(consumer, risk.consumer);
        producer = Math.max(producer, risk.producer);
      }
    }
    return consumer < 0 ? null : new GlobalRisk(consumer, producer);
  }

  private static @Nullable GlobalRisk of(ItemList list, Item.Reading reading, double prior) {
    Item.Limits limits = reading.limits();
    if (limits == null || limits.lower() == null || limits.upper() == null) {
      return null;
    }
    double upper = limits.upper().doubleValue();
    double coverage = list.decision().coverage().doubleValue();
    double standard = Budget.standard(reading, upper, coverage);
    if (!(standard > 0) || limits.lower().compareTo(limits.upper()) >= 0) {
      return null;
    }
    return of(
        new Interval(limits.lower().doubleValue(), upper),
        new Interval(end(limits.acceptLower()), end(limits.acceptUpper())),
        prior,
        standard);
  }

  private static double end(@Nullable BigDecimal limit) {
    return Objects.requireNonNull(limit, "a tolerance without what is accepted").doubleValue();
  }
}
