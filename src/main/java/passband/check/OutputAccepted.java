package passband.check;

import java.util.ArrayList;
import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Device.Mode;
import passband.plan.Plan;
import passband.plan.Point;
import passband.syntax.Tree;

/**
 * {@code mode-untested}: a mode that is set in some test, but whose output no test has limits for.
 * Said at the first of its points.
 */
final class OutputAccepted implements Check {
  @Override
  public boolean needsWhole() {
    return true;
  }

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Mode mode : plan.device().modes()) {
      List<Point> points = new ArrayList<>(plan.points());
      points.removeIf(point -> point.mode() != mode);
      Tree.QuantityLimit output = mode.output();
      if (output != null && !points.isEmpty() && !isAccepted(mode, points)) {
        diagnostics
            .say(
                Code.MODE_UNTESTED,
                points.get(0).span(),
                "no test accepts the %s of '%s'",
                output.quantity().text(),
                mode.name().text())
            .note(output.span(), "the mode's tolerance is here")
            .hint("add 'accept %s from output'", output.quantity().text());
      }
    }
  }

  /** Whether a limit of some point is of what the mode's output line is about. */
  private static boolean isAccepted(Mode mode, List<Point> points) {
    for (Point point : points) {
      for (Limit limit : point.limits()) {
        if (limit.ofMode() != null && !isOther(mode, limit)) {
          return true;
        }
      }
    }
    return false;
  }

  /** Whether a limit is of a quantity that the mode has another line for. */
  private static boolean isOther(Mode mode, Limit limit) {
    for (Tree.QuantityLimit line : mode.limits()) {
      if (line.quantity().text().equals(limit.quantity())) {
        return true;
      }
    }
    return false;
  }
}
