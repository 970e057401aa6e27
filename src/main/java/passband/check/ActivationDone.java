package passband.check;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.plan.Act;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * {@code activation-emptied}, an error that can be allowed: a block in the place of {@code
 * activate} performs no action that turns output on, and no limit of the point is above zero. Free
 * text may turn output on or not; where a lower limit has to be reached, the reading shows which.
 */
final class ActivationDone implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      if (!run.output().activates()) {
        continue;
      }
      for (Point point : run.points()) {
        PlanStep instead = instead(run, point);
        Limit passing = passesAtZero(point);
        if (instead != null && passing != null) {
          say(run, instead, passing, diagnostics);
        }
      }
    }
  }

  private static void say(Stage.Run run, PlanStep step, Limit passing, Diagnostics diagnostics) {
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.ACTIVATION_EMPTIED,
                step.span(),
                "this stands in the place of 'activate' and performs no action that turns output on")
            .note(
                passing.rule().span(),
                "with the output off this reads zero, and zero passes, in the test '%s'",
                run.test().text());
    said.hint(
        "perform the action 'activate' of the instrument or the generator, accept something that"
            + " only output gives, or say in the test: allow activation-emptied because \"…\"");
  }

  /** The first step in the place of the activation; null where one of them is one, or stops. */
  private static @Nullable PlanStep instead(Stage.Run run, Point point) {
    PlanStep first = null;
    int planned = 0;
    for (PlanStep step : point.steps()) {
      if (!"activate".equals(step.insteadOf())) {
        continue;
      }
      if (step.act() instanceof Act.Perform one && (one.stops() || one.activates())) {
        return null; // what stops is said by the walk
      }
      first = first == null ? step : first;
      planned++;
    }
    return planned < written(run) ? null : first;
  }

  /** How many steps the blocks have; one with a fault of its own is not among the point's. */
  private static int written(Stage.Run run) {
    int written = 0;
    for (Tree.Steps block : run.tree().steps()) {
      Word replacing = block.replacing();
      written +=
          replacing != null && replacing.text().equals("activate") ? block.steps().size() : 0;
    }
    return written;
  }

  /** A limit that zero meets, where all do; null where some reading shows that output is on. */
  private static @Nullable Limit passesAtZero(Point point) {
    for (Limit limit : point.limits()) {
      Rational lower = limit.accept().lower();
      if (lower != null && lower.signum() > 0) {
        return null;
      }
    }
    return point.limits().isEmpty() ? null : point.limits().get(0);
  }
}
