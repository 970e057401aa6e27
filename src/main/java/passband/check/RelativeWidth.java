package passband.check;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.syntax.LimitExpression;

/**
 * {@code limits-out-of-family}: stated limits whose width, as a share of their middle, is out of
 * line with that of the rows beside them, by setting and along a load curve. Looked for where
 * nothing else tells how wide they should be: limits from the rows alone, of a quantity of which
 * the mode's profile says nothing.
 */
final class RelativeWidth implements Check {
  /** How much wider or narrower than both rows beside it. Common practice, no source. */
  private static final Rational FACTOR = Rational.of(3, 2);

  /** At the lowest setting, where a tolerance of a fixed amount widens the limits. */
  private static final Rational AT_LOWEST = Rational.of(3);

  private static final Rational LEAST_STEPS = Rational.TEN;

  /** A row's limits and their relative width. */
  private record Row(Point point, Limit limit, Rational width) {}

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      for (String quantity : Figures.quantities(run.points())) {
        for (List<Point> family : LimitOrder.families(run.points())) {
          look(rows(family, quantity), AT_LOWEST, diagnostics);
        }
        for (List<Point> curve : LimitOrder.curves(run.points())) {
          look(rows(curve, quantity), FACTOR, diagnostics);
        }
      }
    }
  }

  private static List<Row> rows(List<Point> family, String quantity) {
    List<Row> rows = new ArrayList<>();
    for (Point point : family) {
      Limit limit = Figures.limit(point, quantity);
      Rational width = limit == null ? null : width(limit);
      if (limit != null && width != null) {
        rows.add(new Row(point, limit, width));
      }
    }
    return rows;
  }

  /** Null where there is none, where it is too small to tell, or something else governs it. */
  private static @Nullable Rational width(Limit limit) {
    Rational low = limit.printed().lower();
    Rational high = limit.printed().upper();
    boolean alone = limit.written() instanceof LimitExpression.Stated && limit.ofMode() == null;
    if (!alone || low == null || high == null || low.signum() <= 0) {
      return null;
    }
    Rational steps = high.minus(low).over(limit.resolution());
    return steps.compareTo(LEAST_STEPS) < 0 ? null : high.minus(low).over(high.plus(low));
  }

  /**
   * Each row beside the two next to it; the first of two beside the other.
   *
   * @param atFirst how much wider the first may be
   */
  private static void look(List<Row> rows, Rational atFirst, Diagnostics diagnostics) {
    int last = rows.size() - 1;
    int checked = last < 2 ? last - 1 : last;
    for (int i = 0; i <= checked; i++) {
      Row one = rows.get(i == 0 ? 1 : i - 1);
      Row other = rows.get(i == 0 ? Math.min(2, last) : i == last ? i - 2 : i + 1);
      if (isOut(rows.get(i).width, one.width, other.width, i == 0 ? atFirst : FACTOR)) {
        say(rows.get(i), one, last < 2 ? "row" : "rows", diagnostics);
      }
    }
  }

  private static boolean isOut(Rational width, Rational one, Rational other, Rational wider) {
    Rational most = one.compareTo(other) > 0 ? one : other;
    Rational least = one.compareTo(other) > 0 ? other : one;
    return width.compareTo(most.times(wider)) > 0 || width.times(FACTOR).compareTo(least) < 0;
  }

  private static void say(Row row, Row beside, String rows, Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.LIMITS_OUT_OF_FAMILY,
            row.point.span(),
            "the stated limits %s are ±%s %% wide, those of the %s beside them ±%s %%",
            row.limit.words(row.limit.printed()),
            percent(row.width),
            rows,
            percent(beside.width))
        .note(beside.point.span(), "%s", beside.limit.words(beside.limit.printed()))
        .hint("check both limits against the manual");
  }

  private static String percent(Rational share) {
    return share.times(Rational.HUNDRED).floorTo(Rational.of(1, 10)).toFixed(1);
  }
}
