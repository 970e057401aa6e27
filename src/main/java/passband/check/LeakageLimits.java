package passband.check;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Device;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.syntax.LimitExpression;
import passband.syntax.Tree;

/**
 * {@code prefix-slip}, an error that can be allowed: a limit of a leakage above the highest that
 * the standards have for any condition, so that a generator that leaks passes. From memory: IEC
 * 60601-2-2, 201.8.7 (high-frequency leakage, 150 mA); IEC 60601-1, 8.7.3 (earth leakage 10 mA and
 * touch current 0.5 mA with a single fault, patient leakage 5 mA with mains on the applied part).
 */
final class LeakageLimits implements Check {
  /** In A. */
  private static final Map<String, Rational> MOST =
      Map.of(
          "hf-leakage", Rational.of(150, 1_000),
          "earth-leakage", Rational.of(10, 1_000),
          "touch-current", Rational.of(500, 1_000_000),
          "patient-leakage", Rational.of(5, 1_000));

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        for (Limit limit : point.limits()) {
          Rational most = MOST.get(limit.quantity());
          Real upper = limit.exact().upper();
          if (most != null && upper != null && upper.compareTo(Real.of(most)) > 0) {
            say(plan.device(), run, point, limit, most, diagnostics);
          }
        }
      }
    }
  }

  private static void say(
      Device device,
      Stage.Run run,
      Point point,
      Limit limit,
      Rational most,
      Diagnostics diagnostics) {
    Tree.QuantityLimit line = line(device, run, point, limit);
    DiagnosticBuilder said =
        diagnostics.say(
            Code.PREFIX_SLIP,
            line == null ? limit.rule().span() : line.span(),
            "no standard allows a %s above %s mA: is the unit right?",
            limit.quantity(),
            most.times(Rational.of(1_000)).toPlain());
    if (line != null) {
      said.note(limit.rule().span(), "it is accepted here");
    }
    said.hint("check the unit and its prefix against the service manual");
  }

  /** The profile's line that the limit comes from; null where the rule gives it. */
  private static Tree.@Nullable QuantityLimit line(
      Device device, Stage.Run run, Point point, Limit limit) {
    if (!(limit.written() instanceof LimitExpression.OfDevice)) {
      return null;
    }
    if (point.mode() != null) {
      for (Tree.QuantityLimit one : point.mode().limits()) {
        if (one.quantity().text().equals(limit.quantity())) {
          return one;
        }
      }
    }
    return device.bound(run.outlet(), limit.quantity());
  }
}
