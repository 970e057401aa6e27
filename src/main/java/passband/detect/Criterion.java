package passband.detect;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.quantity.Distribution;

/**
 * What a value that is worked out from readings has to be. It is calculated from what is written
 * down, and is compared with its limits unrounded; a guard band is worked out at the readings, as a
 * judge does it (JCGM 100, 5.1.2, 5.2.2).
 *
 * @param formula as written
 * @param arithmetic the same in doubles
 * @param lower in SI; below everything where that side is open
 * @param upper in SI; above everything where that side is open
 * @param negative whether the value may be below zero
 * @param guard by how many standard uncertainties the limits move inward
 * @param errors what the uncertainty of the readings is made of
 */
record Criterion(
    Formula formula,
    double lower,
    double upper,
    boolean negative,
    double guard,
    List<SharedError> errors) {

  /** A relative difference below this one comes from doubles, not from readings. */
  private static final double NOTHING = 1e-9;

  private static final double NOTHING_OF_READINGS = 1e-13;

  /**
   * The same as another where its text, its readings' names and its constants are.
   *
   * @param key all of them
   */
  record Formula(String key, Arithmetic arithmetic) {
    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Formula formula && formula.key.equals(key);
    }

    @Override
    public int hashCode() {
      return key.hashCode();
    }
  }

  /**
   * A part of a reading's uncertainty.
   *
   * @param key which error it is; empty for one that no other reading shares
   * @param relative a share of the reading
   * @param absolute in SI
   * @param variance of an error whose half-width is one
   */
  record Contribution(String key, double relative, double absolute, double variance) {
    Contribution(String key, double relative, double absolute, Distribution spread) {
      this(key, relative, absolute, spread.variance().doubleValue());
    }
  }

  /**
   * An error of some readings.
   *
   * @param relative a share of each reading; 0 of one that does not have it
   * @param absolute in SI, by reading
   * @param variance of an error whose half-width is one
   */
  record SharedError(double[] relative, double[] absolute, double variance) {
    private double half(int i, double reading) {
      return relative[i] * Math.abs(reading) + absolute[i];
    }

    /**
     * Its variance, the worse of both: as the same in all readings, or another in each.
     *
     * @param most the greatest over the intervals of the slopes; else the least, or less
     */
    private double variance(Arithmetic.Between[] slopes, double[] readings, boolean most) {
      double apart = 0;
      Arithmetic.Between together = Arithmetic.Between.ZERO;
      for (int i = 0; i < readings.length; i++) {
        double half = half(i, readings[i]);
        double own = slopes[i].end(most) * half;
        apart += own * own;
        together = together.plus(slopes[i].times(Arithmetic.Between.of(half)));
      }
      return variance * (most ? Math.max(apart, together.most() * together.most()) : apart);
    }
  }

  /**
   * The errors of readings, each once.
   *
   * @param budgets what the uncertainty of each reading is made of
   */
  static List<SharedError> errors(List<List<Contribution>> budgets) {
    Map<String, SharedError> errors = new LinkedHashMap<>();
    for (int i = 0; i < budgets.size(); i++) {
      for (Contribution one : budgets.get(i)) {
        String key = one.key.isEmpty() ? "alone " + errors.size() : "shared " + one.key;
        errors.putIfAbsent(
            key,
            new SharedError(new double[budgets.size()], new double[budgets.size()], one.variance));
        SharedError error = Objects.requireNonNull(errors.get(key), "just put");
        error.relative[i] += one.relative;
        error.absolute[i] += one.absolute;
      }
    }
    return List.copyOf(errors.values());
  }

  /** Whether readings pass; never where the value cannot be worked out. */
  boolean passes(double[] readings) {
    return passes(readings, Band.UNKNOWN);
  }

  /**
   * Between what the guard band lies, in SI.
   *
   * @param least nothing where that is not known
   */
  record Band(double least, double most) {
    static final Band UNKNOWN = new Band(0, Double.POSITIVE_INFINITY);
  }

  /** The guard band of readings anywhere in intervals. */
  Band band(Arithmetic.Between[] readings) {
    Arithmetic.Range range = formula.arithmetic.over(readings);
    return guard == 0 || !range.value().isDefined() ? Band.UNKNOWN : band(range, readings);
  }

  private Band band(Arithmetic.Range range, Arithmetic.Between[] readings) {
    double[] nearest = new double[readings.length];
    for (int i = 0; i < nearest.length; i++) {
      nearest[i] = readings[i].least();
    }
    return new Band(
        guard * standard(range, nearest, false), guard * standard(range, farthest(readings), true));
  }

  /**
   * The same.
   *
   * @param known between what the guard band lies at these readings
   */
  boolean passes(double[] readings, Band known) {
    double value = formula.arithmetic.at(readings);
    if (!Double.isFinite(value)) {
      return false;
    }
    double slack = slack(value, readings);
    if (value < lower - slack || value > upper + slack || (!negative && value < -slack)) {
      return false;
    }
    if (guard == 0) {
      return true;
    }
    double inside = Math.min(value - lower, upper - value);
    if (inside >= known.most || inside < known.least - slack) {
      return inside >= known.most;
    }
    double band = guard * standard(formula.arithmetic.over(points(readings)), readings, true);
    return inside >= band - slack;
  }

  private static double slack(double value, double[] readings) {
    double slack = NOTHING * Math.abs(value);
    for (double reading : readings) {
      slack += NOTHING_OF_READINGS * Math.abs(reading);
    }
    return slack;
  }

  private static Arithmetic.Between[] points(double[] readings) {
    Arithmetic.Between[] points = new Arithmetic.Between[readings.length];
    for (int i = 0; i < points.length; i++) {
      points[i] = Arithmetic.Between.of(readings[i]);
    }
    return points;
  }

  /** What becomes of readings anywhere in intervals. */
  enum Everywhere {
    PASS,
    FAIL,
    EITHER
  }

  /**
   * Whether readings anywhere in intervals pass, or fail.
   *
   * @param range of the formula over these
   */
  Everywhere everywhere(Arithmetic.Range range, Arithmetic.Between[] readings) {
    Arithmetic.Between value = range.value();
    if (!value.isDefined()) {
      return Everywhere.EITHER;
    }
    double[] farthest = farthest(readings);
    double slack = slack(value.most(), farthest);
    if (value.high() < lower - slack || value.low() > upper + slack) {
      return Everywhere.FAIL;
    }
    if (!negative && value.low() < 0) {
      return Everywhere.EITHER;
    }
    if (guard == 0) {
      return value.low() >= lower && value.high() <= upper ? Everywhere.PASS : Everywhere.EITHER;
    }
    Band band = band(range, readings);
    if (Math.min(value.high() - lower, upper - value.low()) < band.least - slack) {
      return Everywhere.FAIL;
    }
    return value.low() >= lower + band.most && value.high() <= upper - band.most
        ? Everywhere.PASS
        : Everywhere.EITHER;
  }

  private static double[] farthest(Arithmetic.Between[] readings) {
    double[] farthest = new double[readings.length];
    for (int i = 0; i < farthest.length; i++) {
      farthest[i] = readings[i].most();
    }
    return farthest;
  }

  /** Whether a value, in SI, lies outside of its limits, without any guard band. */
  boolean isOutside(double[] truths) {
    double value = formula.arithmetic.at(truths);
    double slack = slack(value, truths);
    return !Double.isFinite(value) || value < lower - slack || value > upper + slack;
  }

  /**
   * The greatest standard uncertainty; the resolution is never common.
   *
   * @param most the greatest over the intervals of the slopes; else the least, or less
   */
  private double standard(Arithmetic.Range range, double[] readings, boolean most) {
    double variance = 0;
    for (SharedError error : errors) {
      variance += error.variance(range.slopes(), readings, most);
    }
    return Math.sqrt(variance);
  }
}
