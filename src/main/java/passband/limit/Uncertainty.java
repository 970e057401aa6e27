package passband.limit;

import java.util.ArrayList;
import java.util.List;
import passband.model.Accuracy;
import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * The uncertainty of a reading (JCGM 100): half-widths of rectangular distributions, each divided
 * by √3 (4.3.7), combined in quadrature (5.1.2).
 *
 * @param error the analyzer's error
 * @param resolution one step of the reading; half of it is the half-width (F.2.2.1)
 * @param load the share of itself by which the load's error moves the reading; zero where nothing
 *     is converted through the load
 * @param coverage the factor k by which the combined uncertainty is expanded (6.2.1)
 */
public record Uncertainty(Accuracy error, Rational resolution, Rational load, Rational coverage) {
  private static final Real THIRD = Real.of(Rational.of(1, 3));

  /** What an uncertainty is made of. */
  public record Component(String name, Real halfWidth) {
    /** The standard uncertainty. */
    public Real standard() {
      return halfWidth.times(halfWidth).times(THIRD).sqrt();
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

  /** The combined standard uncertainty at a reading, in SI. */
  public Real standard(Real reading) {
    Real sum = Real.ZERO;
    for (Component component : components(reading)) {
      sum = sum.plus(component.halfWidth().times(component.halfWidth()));
    }
    return sum.times(THIRD).sqrt();
  }

  /** The expanded uncertainty at a reading, in SI. */
  public Real expanded(Real reading) {
    return standard(reading).times(Real.of(coverage));
  }
}
