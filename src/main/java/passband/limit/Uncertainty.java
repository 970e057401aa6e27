package passband.limit;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import passband.model.Accuracy;
import passband.quantity.Distribution;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Student;

/**
 * The uncertainty of a reading (JCGM 100): half-widths of distributions, a rectangular one divided
 * by √3 (4.3.7), combined in quadrature (5.1.2).
 */
public final class Uncertainty {
  private static final Rational THIRD = Rational.of(1, 3);

  private final Accuracy error;
  private final Rational resolution;
  private final Rational load;
  private final Distribution loadSpread;

  /** The variance at a reading x is square · x² + linear · |x| + constant. */
  private final Real square;

  private final Real linear;
  private final Real constant;
  private final Rational coverage;

  /**
   * @param error the analyzer's error
   * @param resolution one step of the reading; half of it is the half-width (F.2.2.1)
   * @param load the share of itself by which the load's error moves the reading; zero where nothing
   *     is converted through the load
   * @param loadSpread how the load's error is spread
   * @param coverage the factor k by which the combined uncertainty is expanded (6.2.1) where it has
   *     infinitely many degrees of freedom
   */
  public Uncertainty(
      Accuracy error,
      Rational resolution,
      Rational load,
      Distribution loadSpread,
      Rational coverage) {
    this.error = error;
    this.loadSpread = loadSpread;
    this.resolution = resolution;
    this.load = load;
    Rational share = error.relative();
    Rational fixed = error.absolute();
    Rational half = resolution.over(Rational.TWO);
    Rational spread = error.distribution().variance();
    this.square =
        Real.of(
            share.times(share).times(spread).plus(load.times(load).times(loadSpread.variance())));
    this.linear = Real.of(share.times(fixed).times(Rational.TWO).times(spread));
    this.constant = Real.of(fixed.times(fixed).times(spread).plus(half.times(half).times(THIRD)));
    this.coverage = coverage;
  }

  /** With a load whose error is rectangular, or that moves nothing. */
  public Uncertainty(Accuracy error, Rational resolution, Rational load, Rational coverage) {
    this(error, resolution, load, Distribution.RECTANGULAR, coverage);
  }

  /** The analyzer's error. */
  public Accuracy error() {
    return error;
  }

  /** One step of the reading. */
  public Rational resolution() {
    return resolution;
  }

  /** The share of itself by which the load's error moves the reading. */
  public Rational load() {
    return load;
  }

  /** How the load's error is spread. */
  public Distribution loadSpread() {
    return loadSpread;
  }

  /**
   * The combined standard uncertainty at a reading, in SI: of an error of a share s of the reading
   * and a fixed f, a load share l and a resolution d it is the root of the sum of (s·x + f)²,
   * (l·x)² and (d/2)², each times the variance of its distribution of half-width one, multiplied
   * out so that a root x stands in it once.
   */
  public Real standard(Real reading) {
    return variance(reading).sqrt();
  }

  /** The expanded uncertainty at a reading, in SI. */
  public Real expanded(Real reading) {
    return expanded(reading, coverage);
  }

  /**
   * So many standard uncertainties at a reading, in SI; with few degrees of freedom more of them,
   * by Student's t.
   *
   * @param times the factor for infinitely many degrees of freedom
   */
  public Real expanded(Real reading, Rational times) {
    Rational factor = Student.factor(times, freedom(reading));
    return variance(reading).times(Real.of(factor.times(factor))).sqrt();
  }

  /** The expanded uncertainty at a reading in SI, in doubles: for shares that no limit hangs on. */
  public double expanded(double reading) {
    if (error.distribution().freedom() != null || loadSpread.freedom() != null) {
      return expanded(Real.of(Rational.of(new BigDecimal(reading)))).doubleValue();
    }
    double variance =
        square.doubleValue() * reading * reading
            + linear.doubleValue() * Math.abs(reading)
            + constant.doubleValue();
    return coverage.doubleValue() * Math.sqrt(variance);
  }

  /** The effective degrees of freedom at a reading; null for infinitely many. */
  public @Nullable Integer freedom(Real reading) {
    if (error.distribution().freedom() == null && loadSpread.freedom() == null) {
      return null;
    }
    Real width = error.at(reading);
    Real instrument = width.times(width).times(Real.of(error.distribution().variance()));
    Real moved = reading.times(Real.of(load));
    Real through = moved.times(moved).times(Real.of(loadSpread.variance()));
    Real shares =
        Student.share(instrument, error.distribution()).plus(Student.share(through, loadSpread));
    return Student.effective(variance(reading), shares);
  }

  /** The factor of the expanded uncertainty at a reading. */
  public Rational coverage(Real reading) {
    return Student.factor(coverage, freedom(reading));
  }

  private Real variance(Real reading) {
    return reading.times(reading).times(square).plus(constant).plus(reading.abs().times(linear));
  }
}
