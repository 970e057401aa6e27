package passband.check;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.plan.Act;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Slot;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * {@code activation-emptied} and {@code step-emptied}, errors that can be allowed: a block in the
 * place of a step performs no action that does what the step does, and no limit of the point is
 * above zero. Free text may do it or not; where a lower limit has to be reached, the reading shows
 * which.
 */
final class StepsDone implements Check {
  /** The other steps that bring a reading about. */
  private static final List<String> OTHERS = List.of("select", "adjust", "set-load", "start");

  /** What may say that a reading is taken. */
  private static final Set<PlanStep.Kind> LOOKS =
      EnumSet.of(PlanStep.Kind.DO, PlanStep.Kind.CONFIRM, PlanStep.Kind.WAIT);

  /** What an action has to name that does the same. */
  private static final Map<String, Slot> SLOTS =
      Map.of("select", Slot.MODE, "adjust", Slot.SETTING, "set-load", Slot.LOAD);

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        requireRead(run, point, diagnostics);
        Limit passing = passesAtZero(point);
        if (passing == null) {
          continue;
        }
        if (run.output().activates()) {
          PlanStep instead = instead(run, point, "activate");
          if (instead != null) {
            sayOff(run, instead, passing, diagnostics);
          }
        }
        for (String name : OTHERS) {
          PlanStep instead = instead(run, point, name);
          if (instead != null) {
            say(run, instead, name, passing, diagnostics);
          }
        }
      }
    }
  }

  /** What stands in the place of reading says that something is read, or looked at. */
  private static void requireRead(Stage.Run run, Point point, Diagnostics diagnostics) {
    PlanStep first = null;
    int planned = 0;
    for (PlanStep step : point.steps()) {
      if ("read".equals(step.insteadOf())) {
        boolean reads = step.act() instanceof Act.Perform one && one.action().equals("read");
        if (reads || LOOKS.contains(step.kind())) {
          return;
        }
        first = first == null ? step : first;
        planned++;
      }
    }
    if (first != null && planned >= written(run, "read") && !point.limits().isEmpty()) {
      diagnostics
          .say(
              Code.MISSING_ITEM,
              first.span(),
              "this stands in the place of 'read', and no step there says that the reading is taken")
          .note(point.limits().get(0).rule().span(), "its box is asked for")
          .hint("perform the instrument's 'read', or say what to write down: do \"…\"");
    }
  }

  private static void sayOff(Stage.Run run, PlanStep step, Limit passing, Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.ACTIVATION_EMPTIED,
            step.span(),
            "this stands in the place of 'activate' and performs no action that turns output on")
        .note(
            passing.rule().span(),
            "with the output off this reads zero, and zero passes, in the test '%s'",
            run.test().text())
        .hint(
            "perform the action 'activate' of the instrument or the generator, accept something"
                + " that only output gives, or say in the test: allow activation-emptied because"
                + " \"…\"");
  }

  private static void say(
      Stage.Run run, PlanStep step, String name, Limit passing, Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.STEP_EMPTIED,
            step.span(),
            "this stands in the place of '%s' and performs no action that does the same",
            name)
        .note(
            passing.rule().span(),
            "where it is not done this may read too little, and too little passes, in the test '%s'",
            run.test().text())
        .hint(
            "perform the action '%s', accept something that has a lower limit too, or say in the"
                + " test: allow step-emptied because \"…\"",
            name);
  }

  /**
   * The first step in the place of another; null where one of them does the same, where what they
   * do does not even name its value, which is said elsewhere, and for {@code activate} where one
   * stops, which the walk says.
   */
  private static @Nullable PlanStep instead(Stage.Run run, Point point, String name) {
    Slot slot = SLOTS.get(name);
    PlanStep first = null;
    int planned = 0;
    boolean named = slot == null;
    for (PlanStep step : point.steps()) {
      if (!name.equals(step.insteadOf())) {
        continue;
      }
      if (step.act() instanceof Act.Perform one && does(one, step, name, slot)) {
        return null;
      }
      named |= has(step, slot);
      first = first == null ? step : first;
      planned++;
    }
    return named && planned >= written(run, name) ? first : null;
  }

  private static boolean does(Act.Perform one, PlanStep step, String name, @Nullable Slot slot) {
    if (name.equals("activate")) {
      return one.stops() || one.activates();
    }
    return slot == null ? one.startsInstrument() : has(step, slot);
  }

  private static boolean has(PlanStep step, @Nullable Slot slot) {
    return slot != null && step.words() != null && step.words().has(slot);
  }

  /** How many steps the blocks have; one with a fault of its own is not among the point's. */
  private static int written(Stage.Run run, String name) {
    int written = 0;
    for (Tree.Steps block : run.tree().steps()) {
      Word replacing = block.replacing();
      written += replacing != null && replacing.text().equals(name) ? block.steps().size() : 0;
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
