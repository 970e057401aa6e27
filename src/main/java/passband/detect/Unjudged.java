package passband.detect;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.limit.Bounds;
import passband.limit.Limit;
import passband.limit.ReadQuantity;
import passband.limit.Uncertainty;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.plan.Act;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Slot;
import passband.plan.Stage;
import passband.quantity.Dimension;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.syntax.Tree;

/**
 * What a sheet asks for beside readings with limits: quantities that are read for a calculation,
 * choices with a right answer, and ticks.
 */
final class Unjudged {
  private final Plan plan;

  Unjudged(Plan plan) {
    this.plan = plan;
  }

  /** A line whose reading passes whatever it is, as long as there is a number. */
  static SheetLine line(
      Stage.Run run,
      Point point,
      String quantity,
      Rational step,
      double nominal,
      SheetLine.Kind kind,
      SheetLine.Errors errors) {
    QuantityKind known = QuantityKind.find(quantity);
    QuantityKind of =
        known != null ? known : new QuantityKind(quantity, quantity, Dimension.NONE, false);
    ReadQuantity read = ReadQuantity.workedOut(of, quantity, Unit.ONE, step);
    return line(run, point, point.id() + "/" + quantity, read, nominal, kind, errors);
  }

  private static SheetLine line(
      Stage.Run run,
      Point point,
      String id,
      ReadQuantity read,
      double nominal,
      SheetLine.Kind kind,
      SheetLine.Errors errors) {
    Bounds open = new Bounds(null, null, null);
    Limit.Rounded any = new Limit.Rounded(null, null);
    Tree.Accept none = new Tree.Accept(null, null, null, null, null, point.span());
    Limit limit =
        new Limit(id, read, open, open, null, any, any, null, Limit.Source.RULE, none, List.of());
    return new SheetLine(run, point, limit, kind, nominal, errors, new ArrayList<>());
  }

  // ---- readings ----

  /**
   * A quantity that is read for a calculation.
   *
   * @param beside the readings with limits of the same point
   */
  SheetLine reading(
      Stage.Run run,
      Point point,
      Point.Reading reading,
      SheetLine.Kind kind,
      List<SheetLine> beside) {
    QuantityKind known = QuantityKind.find(reading.quantity());
    ReadQuantity read =
        new ReadQuantity(
            known != null
                ? known
                : new QuantityKind(
                    reading.quantity(), reading.title(), reading.unit().dimension(), false),
            reading.title(),
            reading.unit(),
            reading.resolution(),
            reading.uncertainty(),
            widest(reading),
            reading.by(),
            null);
    double load = kind == SheetLine.Kind.OUTPUT ? load(run, point, reading, beside) : 0;
    Uncertainty uncertainty = reading.uncertainty();
    Accuracy ofLoad = WorkedOuts.loadError(plan, run, point);
    SheetLine.Errors errors =
        new SheetLine.Errors(
            uncertainty == null ? null : uncertainty.error(),
            SheetLines.ownKey(plan, reading.quantity(), reading.by(), widest(reading)),
            load,
            load == 0 ? "" : SheetLines.loadKey(plan, run, point),
            Spread.of(ofLoad.distribution()));
    double nominal =
        kind == SheetLine.Kind.OUTPUT ? nominal(point, reading.quantity(), beside) : Double.NaN;
    return line(run, point, reading.id(), read, nominal, kind, errors);
  }

  private Analyzer.@Nullable Range widest(Point.Reading reading) {
    Analyzer.Measure measure = plan.measure(reading.quantity(), reading.by());
    Analyzer.Range widest = null;
    for (Analyzer.Range range : measure == null ? List.<Analyzer.Range>of() : measure.ranges()) {
      widest = widest == null || range.to().compareTo(widest.to()) > 0 ? range : widest;
    }
    return widest;
  }

  /**
   * By how much of itself it moves at the load's error: voltage over current is the load as it is,
   * and the power stays where nothing else says.
   */
  private double load(Stage.Run run, Point point, Point.Reading reading, List<SheetLine> beside) {
    Rational ohms = point.load() == null ? null : point.load().si();
    if (ohms == null) {
      return 0;
    }
    Accuracy error = WorkedOuts.loadError(plan, run, point);
    double share = error.relative().doubleValue() + error.absolute().over(ohms).doubleValue();
    double ofRoot = share / 2;
    for (SheetLine other : beside) {
      boolean isCurrent = other.limit().quantity().equals("current");
      boolean isVoltage = other.limit().quantity().equals("voltage");
      if (isCurrent && reading.quantity().equals("voltage")) {
        return share + other.errors().load();
      }
      if (isVoltage && reading.quantity().equals("current")) {
        return other.errors().load() - share;
      }
    }
    return switch (reading.quantity()) {
      case "current" -> -ofRoot;
      case "voltage" -> ofRoot;
      default -> 0;
    };
  }

  /** Of the power that another reading tells, else the mode's; not a number where none does. */
  private static double nominal(Point point, String quantity, List<SheetLine> beside) {
    Rational load = point.load() == null ? null : point.load().si();
    double power = Double.NaN;
    for (SheetLine other : beside) {
      boolean tells = other.kind() == SheetLine.Kind.OUTPUT && other.hasNominal();
      boolean through = load != null || other.limit().quantity().equals(quantity);
      power = tells && through ? other.power() : power;
    }
    if (Double.isNaN(power) && point.mode() != null && point.setting() != null) {
      QuantityKind set = point.mode().settingKind();
      boolean delivers = point.mode().output() != null && isRated(point);
      power =
          set != null && set.name().equals("power") && delivers
              ? point.setting().si().doubleValue()
              : Double.NaN;
    }
    if (load == null) {
      return Double.NaN;
    }
    double ohms = load.doubleValue();
    return switch (quantity) {
      case "current" -> Math.sqrt(power / ohms);
      case "voltage" -> Math.sqrt(power * ohms);
      case "power" -> power;
      default -> Double.NaN;
    };
  }

  private static boolean isRated(Point point) {
    return point.mode() != null
        && point.mode().loads() != null
        && point.load() != null
        && point.mode().loads().contains(point.load().si());
  }

  // ---- choices and ticks ----

  /**
   * A choice with a right answer, or a tick, at a point or before the first point of a test.
   *
   * @param line what is written down: no answer where a fault makes it another one
   */
  record Asked(SheetLine line, PlanStep step) {
    /** Whether its words name what a placeholder stands for. */
    boolean names(Slot slot) {
      return step.words() != null && step.words().has(slot);
    }

    boolean isChoice() {
      return step.act() instanceof Act.Choose;
    }

    /** Whether it has this name, or this one and a hyphen: names stand once in a procedure. */
    boolean isCalled(String name) {
      String own =
          step.act() instanceof Act.Choose choose
              ? choose.name()
              : step.act() instanceof Act.Confirm confirm ? confirm.name() : null;
      return own != null && (own.equals(name) || own.startsWith(name + "-"));
    }

    /** Without the right answer. */
    Instance.Change wrong() {
      return new Instance.Change(line, line.at(Double.NaN));
    }
  }

  /** What is asked at the points of a run and before the first of them. */
  static List<Asked> asked(Stage.Run run) {
    List<Asked> asked = new ArrayList<>();
    for (Point point : run.points()) {
      if (point == run.points().get(0)) {
        run.before().forEach(step -> add(run, point, step, asked));
      }
      point.steps().forEach(step -> add(run, point, step, asked));
    }
    return asked;
  }

  private static void add(Stage.Run run, Point point, PlanStep step, List<Asked> asked) {
    boolean answered =
        step.act() instanceof Act.Confirm
            || (step.act() instanceof Act.Choose choose && choose.pass() != null);
    if (answered) {
      asked.add(
          new Asked(
              line(
                  run, point, "answer", Rational.ONE, 1, SheetLine.Kind.ASKED, SheetLine.NO_ERRORS),
              step));
    }
  }
}
