package passband.check;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;

/**
 * {@code prefix-slip}: a stated limit that is some thousand times its neighbours, or a thousandth
 * of them. Looked for where a test states limits of one quantity at three points or more.
 */
final class PrefixSlip implements Check {
  private static final Rational LEAST = Rational.of(100);

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      for (String quantity : Figures.quantities(run.points())) {
        look(run.points(), quantity, diagnostics);
      }
    }
  }

  /** A stated limit and how large it is. */
  private record Sized(Point point, Limit limit, Rational size) {}

  private static void look(List<Point> points, String quantity, Diagnostics diagnostics) {
    List<Sized> stated = new ArrayList<>();
    for (Point point : points) {
      Limit limit = Figures.limit(point, quantity);
      Rational size = limit == null ? null : size(limit);
      if (limit != null && size != null && limit.source() == Limit.Source.STATED) {
        stated.add(new Sized(point, limit, size));
      }
    }
    if (stated.size() < 3) {
      return;
    }
    List<Rational> sizes = new ArrayList<>();
    stated.forEach(one -> sizes.add(one.size));
    Collections.sort(sizes);
    Rational middle = sizes.get((sizes.size() - 1) / 2);
    for (Sized one : stated) {
      Rational share = one.size.over(middle);
      if (share.compareTo(LEAST) >= 0 || share.reciprocal().compareTo(LEAST) >= 0) {
        diagnostics
            .say(
                Code.PREFIX_SLIP,
                one.point.span(),
                "the stated limits %s are far from those of the other rows",
                one.limit.words(one.limit.printed()))
            .hint("check the unit and its prefix");
      }
    }
  }

  private static @Nullable Rational size(Limit limit) {
    Rational upper = limit.printed().upper();
    return upper == null ? limit.printed().lower() : upper;
  }
}
