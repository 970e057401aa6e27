package passband.judge;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.evidence.Item;
import passband.quantity.Distribution;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Student;
import passband.quantity.VarianceSum;

/**
 * The law of propagation of uncertainty (JCGM 100, 5.1.2, 5.2.2) for a derived value.
 *
 * <p>An error of an instrument may be common to all readings in one unit and range at one load, and
 * a load's error to all at that load. How far is not known: the worst is taken of none, of full,
 * and of each error the worse of the two. The resolution is never common.
 */
final class Propagation {
  private static final String OWN_LOAD = "load";

  private final Map<String, Error> errors = new LinkedHashMap<>();
  private @Nullable Scatter scatter;
  private Correlation taken = Correlation.WORSE;

  /** One error of some parts: by how much its half-width moves the result, in SI, for each. */
  private record Error(
      String source, Distribution spread, boolean shared, List<Effect.Moved> parts, List<Real> by) {
    private VarianceSum apart() {
      VarianceSum sum = new VarianceSum();
      by.forEach(one -> sum.add(one, spread));
      return sum;
    }

    private VarianceSum together() {
      VarianceSum sum = new VarianceSum();
      sum.add(by.stream().reduce(Real.ZERO, Real::plus), spread);
      return sum;
    }

    private boolean isWorseTogether() {
      return shared && together().variance().compareTo(apart().variance()) > 0;
    }

    /** Whether it counts as the same in all its parts. */
    private boolean joint(Correlation correlation) {
      return shared
          && switch (correlation) {
            case WORSE -> isWorseTogether();
            case NONE -> false;
            case FULL -> true;
          };
    }

    private VarianceSum sum(Correlation correlation) {
      return joint(correlation) ? together() : apart();
    }

    private Effect.Sharing sharing(Correlation correlation) {
      return !shared || by.size() < 2
          ? Effect.Sharing.NONE
          : joint(correlation) ? Effect.Sharing.COMMON : Effect.Sharing.APART;
    }
  }

  /** How far what may be common to several parts is taken to be: of each the worse, none, all. */
  private enum Correlation {
    WORSE,
    NONE,
    FULL
  }

  /** Adds an error of a part. */
  private void add(
      String key, String source, Distribution spread, boolean shared, Effect.Moved part, Real by) {
    Error error =
        errors.computeIfAbsent(
            key, k -> new Error(source, spread, shared, new ArrayList<>(), new ArrayList<>()));
    error.parts.add(part);
    error.by.add(by);
  }

  /**
   * Of a value and its parts.
   *
   * @param dual in SI
   * @param unit the factor of the result's unit
   * @param normal the factor by which u is multiplied, for infinitely many degrees of freedom
   * @return null where the uncertainty of a part is not known
   */
  static @Nullable Propagation of(
      Gradient.Dual dual,
      Item.Derived item,
      Map<String, DerivedValue.Part> parts,
      Rational unit,
      Rational normal) {
    Propagation all = new Propagation();
    all.load(dual, item, unit);
    Map<String, Real> values = new LinkedHashMap<>();
    for (Map.Entry<String, DerivedValue.Part> entry : parts.entrySet()) {
      String name = entry.getKey();
      DerivedValue.Part part = entry.getValue();
      Real slope = dual.slopes().getOrDefault(name, Real.ZERO);
      values.put(name, Real.of(part.si()));
      if (part.item().budget() == null) {
        return null;
      }
      double own = slope.doubleValue() * part.factor().doubleValue() / unit.doubleValue();
      for (Item.Contribution c : part.item().budget()) {
        boolean shared = !c.name().equals(Item.Contribution.RESOLUTION);
        Effect.Moved moved =
            new Effect.Moved(
                name,
                part.width(c).over(Real.of(part.factor())).doubleValue(),
                part.item().scale().unit(),
                own);
        String key = shared ? key(part, c) : c.name() + "|" + c.spread().text();
        all.add(key, c.name(), c.spread(), shared, moved, slope.times(part.width(c)));
      }
    }
    List<List<String>> repeats = item.calculation().repeats();
    if (!repeats.isEmpty()) {
      all.scatter = Scatter.of(repeats, values, dual.slopes());
    }
    all.take(normal);
    return all;
  }

  /** Errors with the same key may be common to their parts. */
  private static String key(DerivedValue.Part part, Item.Contribution c) {
    boolean load = c.name().equals(Item.Contribution.LOAD);
    Item.Scale scale = part.item().scale();
    return (load ? "" : scale.unit() + "|" + scale.range() + "|")
        + at(part.item().where())
        + "|"
        + c.name()
        + "|"
        + c.spread().text();
  }

  private static String at(Item.Where where) {
    return where.load() + String.valueOf(where.loadUnit());
  }

  /** What the load's error adds to a formula that uses the load. */
  private void load(Gradient.Dual dual, Item.Derived item, Rational unit) {
    Real slope = dual.slopes().get(OWN_LOAD);
    Item.Where where = item.where();
    if (slope == null || where.load() == null) {
      return;
    }
    Item.Contribution error = item.calculation().load();
    Rational width =
        Rational.of(error.relative())
            .times(Rational.of(where.load()).abs())
            .plus(Rational.of(error.absolute()));
    if (width.isZero()) {
      return;
    }
    Rational factor = DerivedValue.factor(where.loadUnit());
    Effect.Moved moved =
        new Effect.Moved(
            OWN_LOAD,
            width.doubleValue(),
            where.loadUnit(),
            slope.doubleValue() * factor.doubleValue() / unit.doubleValue());
    String key = at(where) + "|" + Item.Contribution.LOAD + "|" + error.spread().text();
    add(key, error.name(), error.spread(), true, moved, slope.times(Real.of(width.times(factor))));
  }

  /** The variance of the value, in SI. */
  Real variance() {
    return sum(taken).variance();
  }

  /** The effective degrees of freedom (G.4.1); null for infinitely many. */
  @Nullable Integer freedom() {
    return sum(taken).freedom();
  }

  /**
   * Takes the correlation that brings the greatest expanded uncertainty: a smaller variance may
   * have so few degrees of freedom that its factor more than makes up for it.
   */
  private void take(Rational normal) {
    Real greatest = Real.ZERO;
    for (Correlation correlation : Correlation.values()) {
      VarianceSum sum = sum(correlation);
      Rational factor = Student.factor(normal, sum.freedom());
      Real expanded = sum.variance().times(Real.of(factor.times(factor)));
      if (expanded.compareTo(greatest) > 0) {
        greatest = expanded;
        taken = correlation;
      }
    }
  }

  private VarianceSum sum(Correlation correlation) {
    VarianceSum all = new VarianceSum();
    errors.values().forEach(error -> all.add(error.sum(correlation)));
    if (scatter != null) {
      all.add(scatter.variance(), scatter.freedom());
    }
    return all;
  }

  /** The parts of the uncertainty, without those that are zero. */
  List<Effect> effects(Rational unit) {
    List<Effect> effects = new ArrayList<>();
    for (Error error : errors.values()) {
      double standard = standard(error.sum(taken).variance(), unit);
      if (standard > 0) {
        effects.add(
            new Effect(
                error.source,
                List.copyOf(error.parts),
                error.sharing(taken),
                error.spread,
                error.spread.freedom(),
                standard));
      }
    }
    if (scatter != null) {
      effects.add(
          new Effect(
              "scatter of the repeated readings",
              List.of(),
              Effect.Sharing.NONE,
              null,
              scatter.freedom(),
              standard(scatter.variance(), unit)));
    }
    return effects;
  }

  private static double standard(Real variance, Rational unit) {
    return Math.sqrt(variance.doubleValue()) / unit.doubleValue();
  }
}
