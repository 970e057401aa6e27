package passband.check;

import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Analyzer.LoadBank;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.syntax.Tree;

/**
 * {@code sweep-too-short}, an error: a sweep that begins or ends within the limits of the value at
 * which its event has to happen. What happens beyond its ends is taken for what happens at them.
 */
final class SweepReach implements Check {
  /** No sweep goes through more values by hand. */
  private static final int MOST_STEPS = 10_000;

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      Stage.Swept sweep = run.sweep();
      if (sweep != null && sweep.what().equals("load")) {
        onTheDial(plan, run, sweep, diagnostics);
      }
      for (Point point : sweep == null ? List.<Point>of() : run.points()) {
        for (Limit limit : point.limits()) {
          if (sweep != null && limit.quantity().equals(sweep.as())) {
            look(run, sweep, limit, diagnostics);
          }
        }
      }
    }
  }

  /** Each value that the sweep comes to is one that the load has. */
  private static void onTheDial(
      Plan plan, Stage.Run run, Stage.Swept sweep, Diagnostics diagnostics) {
    LoadBank bank =
        WiredLoads.bank(plan.instruments(), run.setup(), null, run.outlet(), sweep.from().si());
    Tree.Sweep tree = run.tree().sweep();
    if (bank == null || tree == null) {
      return;
    }
    Rational step = sweep.up() ? sweep.step().si() : sweep.step().si().negate();
    Rational value = sweep.from().si();
    for (int i = 0; i < MOST_STEPS && between(value, sweep); i++) {
      if (!bank.values().contains(value)) {
        diagnostics
            .say(
                Code.LOAD_NOT_AVAILABLE,
                tree.step().span(),
                "by this step the sweep comes to %s, which the load cannot be set to",
                new Figure(value, sweep.from().unit()).text())
            .note(bank.span(), "the load is here");
        return;
      }
      value = value.plus(step);
    }
  }

  private static boolean between(Rational value, Stage.Swept sweep) {
    Rational low = sweep.from().si().min(sweep.to().si());
    Rational high = sweep.from().si().max(sweep.to().si());
    return value.compareTo(low) >= 0 && value.compareTo(high) <= 0;
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
