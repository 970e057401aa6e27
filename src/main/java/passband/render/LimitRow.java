package passband.render;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import passband.limit.Limit;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * One row of the limit tables. Numbers are plain decimals in their unit, units are UCUM codes; null
 * where a cell is empty.
 *
 * @param nominal six significant digits
 * @param uncertainty expanded, three significant digits rounded up (JCGM 100, 7.2.6)
 * @param accuracyRatio two decimals rounded down
 */
public record LimitRow(
    String point,
    String test,
    String outlet,
    String mode,
    String setting,
    String settingUnit,
    String load,
    String loadUnit,
    String quantity,
    String unit,
    String nominal,
    String lower,
    String upper,
    String acceptLower,
    String acceptUpper,
    String resolution,
    String uncertainty,
    String accuracyRatio,
    String decision,
    String source) {

  /** The rows of a plan, in bench order. */
  public static List<LimitRow> of(Plan plan) {
    List<LimitRow> rows = new ArrayList<>();
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        point.limits().forEach(limit -> rows.add(row(plan, run, point, limit)));
      }
    }
    return rows;
  }

  private static LimitRow row(Plan plan, Stage.Run run, Point point, Limit limit) {
    return new LimitRow(
        limit.id(),
        run.test().text(),
        run.outlet() == null ? null : run.outlet().name().text(),
        point.mode() == null ? null : point.mode().name().text(),
        number(point.setting()),
        unit(point.setting()),
        number(point.load()),
        unit(point.load()),
        limit.quantity(),
        limit.unit().ucum(),
        nominal(limit),
        limit.text(limit.printed().lower()),
        limit.text(limit.printed().upper()),
        limit.text(limit.accept().lower()),
        limit.text(limit.accept().upper()),
        limit.text(limit.resolution()),
        uncertainty(limit),
        limit.ratioText(),
        plan.decision().kind().word()
            + (plan.decision().risk() == null
                ? ""
                : " " + plan.decision().risk().times(Rational.HUNDRED).toPlain() + " %"),
        limit.source().word());
  }

  private static String uncertainty(Limit limit) {
    Real expanded = limit.expanded();
    return expanded == null
        ? null
        : expanded
            .over(Real.of(limit.unit().factor()))
            .toDecimal(3, RoundingMode.UP)
            .toPlainString();
  }

  private static String number(Figure figure) {
    return figure == null ? null : figure.number().toPlain();
  }

  private static String unit(Figure figure) {
    return figure == null ? null : figure.unit().ucum();
  }

  /** Six significant digits without needless zeros; null for null. */
  static String nominal(Limit limit) {
    Real si = limit.exact().nominal();
    if (si == null) {
      return null;
    }
    var decimal = si.over(Real.of(limit.unit().factor())).toDecimal(6, RoundingMode.HALF_EVEN);
    return decimal.signum() == 0 ? "0" : decimal.stripTrailingZeros().toPlainString();
  }
}
