package passband.limit;

import java.util.ArrayList;
import java.util.List;
import passband.model.Accuracy;
import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * The uncertainty of a reading (JCGM 100): half-widths of rectangular distributions, each divided
 * by √3 (4.3.7), combined in quadrature (5.1.2).
 */
public final class Uncertainty {
  private static final Rational THIRD = Rational.of(1, 3);

  private final Accuracy error;
  private final Rational resolution;
  private final Rational load;
  private final Rational coverage;

  /** The variance at a reading x is square · x² + linear · |x| + constant. */
  private final Real square;

  private final Real linear;
  private final Real constant;
  private final Real expansion;

  /**
   * @param error the analyzer's error
   * @param resolution one step of the reading; half of it is the half-width (F.2.2.1)
   * @param load the share of itself by which the load's error moves the reading; zero where nothing
   *     is converted through the load
   * @param coverage the factor k by which the combined uncertainty is expanded (6.2.1)
   */
  public Uncertainty(Accuracy error, Rational resolution, Rational load, Rational coverage) {
    this.error = error;
    this.resolution = resolution;
    this.load = load;
    this.coverage = coverage;
    Rational share = error.relative();
    Rational fixed = error.absolute();
    Rational half = resolution.over(Rational.TWO);
    this.square = Real.of(share.times(share).plus(load.times(load)).times(THIRD));
    this.linear = Real.of(share.times(fixed).times(Rational.TWO).times(THIRD));
    this.constant = Real.of(fixed.times(fixed).plus(half.times(half)).times(THIRD));
    this.expansion = Real.of(coverage.times(coverage));
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

  /** The factor k. */
  public Rational coverage() {
    return coverage;
  }

  /** What an uncertainty is made of. */
  public record Component(String name, Real halfWidth) {
    /** The standard uncertainty. */
    public Real standard() {
      return halfWidth.times(halfWidth).times(Real.of(THIRD)).sqrt();
    }
  }

  /** What the uncertainty at a reading is made of, in SI; parts that are zero are left out. */
  public List<Component> components(Real reading) {
    List<Component> components = new ArrayList<>();
    add(components, "analyzer error", error.at(reading));
    add(components, "resolution", Real.of(resolution.over(Rational.TWO)));
    add(components, "load error", reading.abs().times(Real.of(load)));
    return components;
  }

  private static void add(List<Component> components, String name, Real halfWidth) {
    if (halfWidth.signum() != 0) {
      components.add(new Component(name, halfWidth));
    }
  }

  /**
   * The combined standard uncertainty at a reading, in SI: of an error of a share s of the reading
   * and a fixed f, a load share l and a resolution d it is the root of a third of (s·x + f)² +
   * (l·x)² + (d/2)², multiplied out so that a root x stands in it once.
   */
  public Real standard(Real reading) {
    return variance(reading).sqrt();
  }

  /** The expanded uncertainty at a reading, in SI. */
  public Real expanded(Real reading) {
    return variance(reading).times(expansion).sqrt();
  }

  private Real variance(Real reading) {
    return reading.times(reading).times(square).plus(constant).plus(reading.abs().times(linear));
  }
}
