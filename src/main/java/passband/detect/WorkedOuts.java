package passband.detect;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.evidence.WrittenFormula;
import passband.limit.Limit;
import passband.limit.ReadQuantity;
import passband.limit.Uncertainty;
import passband.model.Accuracy;
import passband.model.Analyzer.LoadBank;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.quantity.Distribution;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.syntax.Expression;
import passband.syntax.Variables;

/**
 * The values with limits that a sheet works out from readings. One of which nobody can tell what a
 * good generator shows, or that a good one would fail, is not counted.
 */
final class WorkedOuts {
  private static final double FARTHEST = 1e6;
  private static final int HALVINGS = 200;
  private static final String LOAD = "load";

  private final Plan plan;
  private final Map<String, SheetLine> byId;
  private int notCounted;

  /**
   * @param byId what is read, by its identity
   */
  WorkedOuts(Plan plan, Map<String, SheetLine> byId) {
    this.plan = plan;
    this.byId = byId;
  }

  /** How many there are that are not counted. */
  int notCounted() {
    return notCounted;
  }

  /** Counts one where it can be, and tells its parts. */
  void add(Stage.Run run, Point point, Limit limit) {
    WorkedOut one = of(run, point, limit);
    if (one == null) {
      notCounted++;
    } else {
      one.parts().forEach(part -> part.uses().add(one));
    }
  }

  private @Nullable WorkedOut of(Stage.Run run, Point point, Limit limit) {
    ReadQuantity.Over over = limit.read().over();
    Expression formula =
        over == null ? formula(run, limit) : new WrittenFormula(over.formula()).tree();
    if (formula == null) {
      return null;
    }
    Map<String, SheetLine> parts = new LinkedHashMap<>();
    for (String name : Variables.of(formula)) {
      String id = over != null ? over.parts().get(name) : id(point, name);
      SheetLine line = id == null ? null : byId.get(id);
      if (line != null) {
        parts.put(name, line);
      } else if (over != null || !(name.equals("setting") || name.equals(LOAD))) {
        return null;
      }
    }
    Map<String, Double> constants = new TreeMap<>();
    if (over == null && point.setting() != null) {
      constants.put("setting", point.setting().si().doubleValue());
    }
    if (over == null && point.load() != null && !parts.containsKey(LOAD)) {
      parts.put(LOAD, dialled(run, point));
    }
    List<String> names = new ArrayList<>(parts.keySet());
    Arithmetic arithmetic = Arithmetic.of(formula, names, constants);
    if (arithmetic == null || parts.isEmpty()) {
      return null;
    }
    Criterion criterion = criterion(limit, formula, arithmetic, parts, constants);
    return criterion == null ? null : settled(point, limit, criterion, List.copyOf(parts.values()));
  }

  private static @Nullable Expression formula(Stage.Run run, Limit limit) {
    for (Stage.Derived derived : run.derives()) {
      if (derived.name().equals(limit.quantity())) {
        return new WrittenFormula(derived.formula()).tree();
      }
    }
    return null;
  }

  private static @Nullable String id(Point point, String quantity) {
    for (Point.Reading one : point.readings()) {
      if (one.quantity().equals(quantity)) {
        return one.id();
      }
    }
    for (Limit one : point.limits()) {
      if (one.quantity().equals(quantity) && one.read().over() == null) {
        return one.id();
      }
    }
    return null;
  }

  /** What the load is set to: a formula takes it as it is printed. */
  private static SheetLine dialled(Stage.Run run, Point point) {
    Rational ohms = Objects.requireNonNull(point.load(), "a load").si();
    return Unjudged.line(
        run, point, LOAD, ohms, ohms.doubleValue(), SheetLine.Kind.OTHER, SheetLine.NO_ERRORS);
  }

  // ---- what it has to be ----

  private @Nullable Criterion criterion(
      Limit limit,
      Expression formula,
      Arithmetic arithmetic,
      Map<String, SheetLine> parts,
      Map<String, Double> constants) {
    double guard = plan.decision().guard().doubleValue();
    List<List<Criterion.Contribution>> budgets = new ArrayList<>();
    for (Map.Entry<String, SheetLine> part : parts.entrySet()) {
      List<Criterion.Contribution> budget =
          part.getKey().equals(LOAD) ? load(part.getValue()) : budget(part.getValue());
      if (budget == null && guard > 0) {
        return null;
      }
      budgets.add(guard == 0 || budget == null ? List.of() : budget);
    }
    Rational lower = limit.printed().lower();
    Rational upper = limit.printed().upper();
    return new Criterion(
        new Criterion.Formula(
            passband.plan.Formula.exact(formula) + parts.keySet() + constants, arithmetic),
        lower == null ? Double.NEGATIVE_INFINITY : lower.doubleValue(),
        upper == null ? Double.POSITIVE_INFINITY : upper.doubleValue(),
        isOwn(limit) || !limit.read().kind().nonNegative(),
        guard,
        Criterion.errors(budgets));
  }

  /** A calculated quantity of the procedure's own may be a difference. */
  private static boolean isOwn(Limit limit) {
    return passband.quantity.QuantityKind.find(limit.quantity()) == null;
  }

  /** What the uncertainty of some readings is made of; null where one is unknown. */
  static @Nullable List<Criterion.SharedError> errors(List<SheetLine> parts) {
    List<List<Criterion.Contribution>> budgets = new ArrayList<>();
    for (SheetLine part : parts) {
      List<Criterion.Contribution> budget = budget(part);
      if (budget == null) {
        return null;
      }
      budgets.add(budget);
    }
    return Criterion.errors(budgets);
  }

  private static @Nullable List<Criterion.Contribution> budget(SheetLine line) {
    Uncertainty uncertainty = line.limit().uncertainty();
    if (uncertainty == null) {
      return null;
    }
    String at = line.limit().unit().symbol() + " " + line.loadText();
    double half = uncertainty.resolution().doubleValue() / 2;
    Accuracy error = uncertainty.error();
    return List.of(
        new Criterion.Contribution(
            line.errors().ownKey() + " " + at,
            error.relative().doubleValue(),
            error.absolute().doubleValue(),
            error.distribution()),
        new Criterion.Contribution("", 0, half, Distribution.RECTANGULAR),
        loadError(line, uncertainty.load().doubleValue(), uncertainty.loadSpread()));
  }

  private static Criterion.Contribution loadError(
      SheetLine line, double share, Distribution spread) {
    return new Criterion.Contribution("load " + line.loadText(), share, 0, spread);
  }

  private List<Criterion.Contribution> load(SheetLine line) {
    Accuracy error = loadError(plan, line.run(), line.point());
    return List.of(
        new Criterion.Contribution(
            "load " + line.loadText(),
            error.relative().doubleValue(),
            error.absolute().doubleValue(),
            error.distribution()));
  }

  /** Of the load that a point is set to; none where it is unknown. */
  static Accuracy loadError(Plan plan, Stage.Run run, Point point) {
    Rational ohms = point.load() == null ? null : point.load().si();
    LoadBank bank =
        ohms == null
            ? null
            : WiredLoads.bank(plan.instruments(), run.setup(), point.mode(), point.outlet(), ohms);
    return bank == null || bank.error() == null ? Accuracy.NONE : bank.error();
  }

  // ---- what a good generator shows ----

  private static @Nullable WorkedOut settled(
      Point point, Limit limit, Criterion criterion, List<SheetLine> parts) {
    double[] nominals = new double[parts.size()];
    int unknown = -1;
    for (int i = 0; i < nominals.length; i++) {
      nominals[i] = parts.get(i).nominal();
      if (!parts.get(i).hasNominal()) {
        if (unknown >= 0) {
          return null;
        }
        unknown = i;
      }
    }
    if (unknown >= 0 && !solved(criterion, limit, nominals, unknown)) {
      return null;
    }
    if (criterion.isOutside(nominals) || !criterion.passes(nominals)) {
      return null;
    }
    List<Double> all = new ArrayList<>();
    for (double nominal : nominals) {
      all.add(nominal);
    }
    return new WorkedOut(point, limit, criterion, parts, all);
  }

  /** The one that nothing else tells brings the value to the middle of its limits. */
  private static boolean solved(Criterion criterion, Limit limit, double[] nominals, int unknown) {
    Real low = limit.exact().lower();
    Real high = limit.exact().upper();
    if (low == null || high == null) {
      return false;
    }
    double middle = (low.doubleValue() + high.doubleValue()) / 2;
    double near = 1 / FARTHEST;
    double far = FARTHEST;
    double atNear = off(criterion, nominals, unknown, near, middle);
    if (!(atNear * off(criterion, nominals, unknown, far, middle) < 0)) {
      return false;
    }
    for (int i = 0; i < HALVINGS; i++) {
      double between = Math.sqrt(near * far);
      if (atNear * off(criterion, nominals, unknown, between, middle) > 0) {
        near = between;
      } else {
        far = between;
      }
    }
    nominals[unknown] = near;
    return true;
  }

  private static double off(
      Criterion criterion, double[] nominals, int unknown, double value, double middle) {
    double[] tried = nominals.clone();
    tried[unknown] = value;
    return criterion.formula().arithmetic().at(tried) - middle;
  }
}
