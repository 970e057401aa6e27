package passband.evidence;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.limit.ReadQuantity;
import passband.limit.Uncertainty;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.model.Instruments;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.syntax.Variables;

/** Readings and derived values as items: limits and uncertainties as decimals in their unit. */
final class MeasuredItems {
  private static final int DIGITS = 12;

  /** Formulas of derived quantities by test and name. */
  private final Map<String, WrittenFormula> formulas = new HashMap<>();

  private final Instruments instruments;

  /** By role, the blank for the day on which the instrument's calibration is due. */
  private final Map<String, String> dues;

  MeasuredItems(Plan plan, Map<String, String> dues) {
    instruments = plan.instruments();
    this.dues = dues;
    for (Stage.Run run : plan.runs()) {
      run.derives()
          .forEach(
              d ->
                  formulas.computeIfAbsent(
                      run.test().text() + "/" + d.name(), x -> new WrittenFormula(d.formula())));
    }
  }

  /** A quantity that is read for a calculation and has no limits of its own. */
  Item.Measured reading(Stage.Run run, Point point, Point.Reading reading, Item.Head head) {
    Unit unit = reading.unit();
    Item.Scale scale =
        new Item.Scale(
            reading.quantity(),
            unit.ucum(),
            plain(Real.of(reading.resolution()), unit, RoundingMode.HALF_EVEN),
            null,
            negative(reading.quantity()));
    List<Item.Contribution> budget =
        reading.uncertainty() == null ? null : budget(reading.uncertainty(), unit);
    Item.Head own = head(head, reading.id(), reading.title());
    return new Item.Reading(
        own, where(run, point), scale, null, budget, due(run, point, reading.by()));
  }

  /** A quantity with limits: read, or derived where the test has a formula for it. */
  Item.Measured limited(Stage.Run run, Point point, Limit limit, Item.Head head) {
    Item.Head own = head(head, limit.id(), limit.title());
    ReadQuantity.Over over = limit.read().over();
    if (over != null) {
      return compared(run, point, limit, over, own);
    }
    WrittenFormula formula = formulas.get(run.test().text() + "/" + limit.quantity());
    if (formula != null) {
      Calculation calculation =
          new Calculation(formula, parts(point, formula), loadError(run, point));
      Item.Scale scale = scale(limit, mayComeOutNegative(limit.quantity()));
      return new Item.Derived(own, where(run, point), scale, limits(limit), calculation);
    }
    List<Item.Contribution> budget =
        limit.uncertainty() == null ? null : budget(limit.uncertainty(), limit.unit());
    List<String> due = due(run, point, limit.read().by());
    Item.Scale scale = scale(limit, negative(limit.quantity()));
    return new Item.Reading(own, where(run, point), scale, limits(limit), budget, due);
  }

  /** It is of no one value of the column by which its points differ, and uses no load. */
  private static Item.Measured compared(
      Stage.Run run, Point point, Limit limit, ReadQuantity.Over over, Item.Head head) {
    Calculation calculation =
        new Calculation(
            new WrittenFormula(over.formula()),
            over.parts(),
            Calculation.NO_LOAD_ERROR,
            over.repeats());
    Item.Where where = where(run, point).without(over.column());
    Item.Scale scale = scale(limit, mayComeOutNegative(limit.quantity()));
    return new Item.Derived(head, where, scale, limits(limit), calculation);
  }

  /**
   * The blanks for the calibrations that bear on a reading: of the instrument that shows it and of
   * those whose loads it is taken at.
   *
   * @param by the role of what shows it; null where it is swept
   */
  private List<String> due(Stage.Run run, Point point, @Nullable String by) {
    Set<String> roles = new LinkedHashSet<>(point.otherLoads().keySet());
    if (point.loadAt() != null) {
      roles.add(point.loadAt());
    }
    String shows = by != null ? by : swept(run, point);
    if (shows != null) {
      roles.add(shows);
    } else {
      instruments.units().forEach(unit -> roles.add(unit.role()));
    }
    return roles.stream().filter(dues::containsKey).map(dues::get).toList();
  }

  /** The role of the instrument whose load is swept; null where none is. */
  private @Nullable String swept(Stage.Run run, Point point) {
    Stage.Swept sweep = run.sweep();
    Analyzer.LoadBank bank =
        sweep == null || !sweep.what().equals("load")
            ? null
            : WiredLoads.bank(
                instruments, run.setup(), point.mode(), point.outlet(), sweep.from().si());
    return bank == null ? null : bank.from().owner();
  }

  private static Item.Head head(Item.Head shared, String id, String title) {
    return new Item.Head(
        id, title, shared.phase(), shared.place(), shared.applies(), shared.when());
  }

  private static boolean negative(String quantity) {
    QuantityKind kind = QuantityKind.find(quantity);
    return kind != null && !kind.nonNegative();
  }

  /** A calculated quantity of the procedure's own may be a difference. */
  private static boolean mayComeOutNegative(String quantity) {
    return QuantityKind.find(quantity) == null || negative(quantity);
  }

  /** The items that a formula reads, by quantity. */
  private Map<String, String> parts(Point point, WrittenFormula formula) {
    Map<String, String> parts = new LinkedHashMap<>();
    for (String name : Variables.of(formula.tree())) {
      point.readings().stream()
          .filter(r -> r.quantity().equals(name))
          .forEach(r -> parts.put(name, r.id()));
      point.limits().stream()
          .filter(l -> l.quantity().equals(name))
          .forEach(l -> parts.put(name, l.id()));
    }
    return parts;
  }

  /** Zero for a load of unknown error: a calculation that needs it is an error. */
  private Item.Contribution loadError(Stage.Run run, Point point) {
    Figure load = point.load();
    Analyzer.LoadBank bank =
        load == null
            ? null
            : WiredLoads.bank(instruments, run.setup(), point.mode(), point.outlet(), load.si());
    if (load == null || bank == null || bank.error() == null) {
      return Calculation.NO_LOAD_ERROR;
    }
    return Calculation.loadError(
        plain(Real.of(bank.error().relative()), Unit.ONE, RoundingMode.UP),
        plain(Real.of(bank.error().absolute()), load.unit(), RoundingMode.UP),
        bank.error().distribution());
  }

  private static Item.Where where(Stage.Run run, Point point) {
    return new Item.Where(
        run.test().text(),
        run.outlet() == null ? null : run.outlet().name().text(),
        point.mode() == null ? null : point.mode().name().text(),
        number(point.setting()),
        unit(point.setting()),
        number(point.load()),
        unit(point.load()),
        extras(point));
  }

  /** A load that is no resistance is a further setting. */
  private static Map<String, String> extras(Point point) {
    Map<String, String> extras = new LinkedHashMap<>();
    if (point.termination() != null) {
      extras.put("load", point.termination().word());
    }
    extras.putAll(point.extras());
    return extras;
  }

  private static @Nullable BigDecimal number(@Nullable Figure figure) {
    return figure == null ? null : new BigDecimal(figure.number().toPlain());
  }

  private static @Nullable String unit(@Nullable Figure figure) {
    return figure == null ? null : figure.unit().ucum();
  }

  private static Item.Scale scale(Limit limit, boolean negative) {
    return new Item.Scale(
        limit.quantity(),
        limit.unit().ucum(),
        new BigDecimal(limit.text(limit.resolution())),
        range(limit),
        negative);
  }

  private static @Nullable String range(Limit limit) {
    Analyzer.Range range = limit.range();
    Rational unit = limit.unit().factor();
    return range == null
        ? null
        : range.from().over(unit).toPlain() + " to " + range.to().over(unit).toPlain();
  }

  private static Item.Limits limits(Limit limit) {
    return new Item.Limits(
        nominal(limit),
        decimal(limit.end(limit.printed().lower())),
        decimal(limit.end(limit.printed().upper())),
        decimal(limit.end(limit.accept().lower())),
        decimal(limit.end(limit.accept().upper())),
        expanded(limit),
        decimal(limit.ratioText()),
        limit.source().word());
  }

  private static @Nullable BigDecimal decimal(@Nullable String text) {
    return text == null ? null : new BigDecimal(text);
  }

  /** Six significant digits without needless zeros. */
  private static @Nullable BigDecimal nominal(Limit limit) {
    Real si = limit.exact().nominal();
    if (si == null) {
      return null;
    }
    return shortened(si.over(Real.of(limit.unit().factor())).toDecimal(6, RoundingMode.HALF_EVEN));
  }

  /** Three significant digits, rounded up (JCGM 100, 7.2.6). */
  private static @Nullable BigDecimal expanded(Limit limit) {
    Real expanded = limit.expanded();
    return expanded == null
        ? null
        : new BigDecimal(
            expanded
                .over(Real.of(limit.unit().factor()))
                .toDecimal(3, RoundingMode.UP)
                .toPlainString());
  }

  private static List<Item.Contribution> budget(Uncertainty u, Unit unit) {
    List<Item.Contribution> budget = new ArrayList<>();
    add(budget, "analyzer error", u.error(), unit);
    add(
        budget,
        Item.Contribution.RESOLUTION,
        new Accuracy(Rational.ZERO, u.resolution().over(Rational.TWO)),
        unit);
    add(
        budget,
        Item.Contribution.LOAD,
        new Accuracy(u.load(), Rational.ZERO, u.loadSpread()),
        unit);
    return budget;
  }

  private static void add(List<Item.Contribution> budget, String name, Accuracy error, Unit unit) {
    if (!error.relative().isZero() || !error.absolute().isZero()) {
      budget.add(
          new Item.Contribution(
              name,
              plain(Real.of(error.relative()), Unit.ONE, RoundingMode.UP),
              plain(Real.of(error.absolute()), unit, RoundingMode.UP),
              error.distribution()));
    }
  }

  private static BigDecimal plain(Real si, Unit unit, RoundingMode rounding) {
    return shortened(si.over(Real.of(unit.factor())).toDecimal(DIGITS, rounding));
  }

  private static BigDecimal shortened(BigDecimal value) {
    BigDecimal plain = value.signum() == 0 ? BigDecimal.ZERO : value.stripTrailingZeros();
    return plain.scale() < 0 ? plain.setScale(0) : plain;
  }
}
