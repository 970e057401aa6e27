package passband.check;

import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Real;
import passband.syntax.Tree;

/**
 * {@code sweep-too-short}, an error: a sweep that begins or ends within the limits of the value at
 * which its event has to happen. What happens beyond its ends is taken for what happens at them.
 */
final class SweepReach implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      Stage.Swept sweep = run.sweep();
      for (Point point : sweep == null ? List.<Point>of() : run.points()) {
        for (Limit limit : point.limits()) {
          if (sweep != null && limit.quantity().equals(sweep.as())) {
            look(run, sweep, limit, diagnostics);
          }
        }
      }
    }
  }

  private static void look(Stage.Run run, Stage.Swept sweep, Limit limit, Diagnostics diagnostics) {
    boolean rises = sweep.from().si().compareTo(sweep.to().si()) < 0;
    Figure low = rises ? sweep.from() : sweep.to();
    Figure high = rises ? sweep.to() : sweep.from();
    Real lower = limit.exact().lower();
    Real upper = limit.exact().upper();
    if (lower != null && Real.of(low.si()).compareTo(lower) >= 0) {
      say(run, low, limit, diagnostics);
    } else if (upper != null && Real.of(high.si()).compareTo(upper) <= 0) {
      say(run, high, limit, diagnostics);
    }
  }

  private static void say(Stage.Run run, Figure end, Limit limit, Diagnostics diagnostics) {
    Tree.Sweep tree = run.tree().sweep();
    diagnostics
        .say(
            Code.SWEEP_TOO_SHORT,
            tree == null ? run.test().span() : tree.span(),
            "the sweep goes no further than %s, which is not past the limits %s",
            end.text(),
            limit.words(limit.printed()))
        .note(limit.rule().span(), "the limits are here");
  }
}
