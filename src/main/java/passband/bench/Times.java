package passband.bench;

import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.model.Analyzer.LoadBank;
import passband.plan.Act;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Amount;

/**
 * What time does to the bench: while output is on it heats a load and makes a rest due; while it is
 * off the rest passes and the load cools. Time counts only where a step says how long it takes.
 */
final class Times {
  private static final Unit SECOND = Units.of("s");
  private static final Unit WATT = Units.of("W");

  private final Plan plan;
  private final Diagnostics diagnostics;
  private final SortedMap<Variable, Rational> cooling = new TreeMap<>();

  Times(Plan plan, Diagnostics diagnostics) {
    this.plan = plan;
    this.diagnostics = diagnostics;
    for (LoadBank bank : plan.instruments().loads()) {
      Rational continuous = LoadHeat.continuous(bank);
      if (continuous != null) {
        cooling.put(Variable.heat(bank), continuous);
      }
    }
  }

  /** The bench after a step outside points, where output is off or nothing is known of it. */
  BenchState after(PlanStep step, BenchState before, BenchState after) {
    return step.act() instanceof Act.Wait wait && before.isOff()
        ? after.with(before.strain().off(wait.time().si(), cooling))
        : after;
  }

  /** The bench after a step of a point. */
  BenchState after(PlanStep step, BenchState before, BenchState after, Stage.Run run, Point point) {
    Strain strain = before.strain();
    if (strain.on() == null && (comesOn(before, after) || mayBringOn(step))) {
      return after.with(strain.activated());
    }
    if (step.act() instanceof Act.Rest rest) {
      return after.with(strain.off(rest.time().si(), cooling));
    }
    if (step.act() instanceof Act.Wait wait) {
      Rational time = wait.time().si();
      if (strain.on() == null) {
        return before.isOff() ? after.with(strain.off(time, cooling)) : after;
      }
      return after.with(longer(step, strain, time, "this wait is over", run, point));
    }
    Rational reading = reading(step, point);
    if (strain.on() != null && reading.signum() > 0) {
      return after.with(longer(step, strain, reading, "this is read", run, point));
    }
    return strain.on() != null && after.isOff() && !before.isOff()
        ? after.with(stopped(strain, run, point))
        : after;
  }

  private static boolean comesOn(BenchState before, BenchState after) {
    return !after.isOff() && after.get(Variable.OUTPUT) != null && before.isOff();
  }

  /** What is done in the place of the activation may be what brings output on. */
  private static boolean mayBringOn(PlanStep step) {
    boolean acts = step.act() instanceof Act.Free || step.act() instanceof Act.Perform;
    return acts && "activate".equals(step.insteadOf());
  }

  /** How long a step reads an instrument that does not hold its reading, in s. */
  private static Rational reading(PlanStep step, Point point) {
    return step.act() instanceof Act.Read read
        ? point.on().reading(read.by().role())
        : Rational.ZERO;
  }

  /**
   * Output stays on for a time in s. The on-time covers that: rest, duty and heat are worked out
   * from it.
   */
  private Strain longer(
      PlanStep step, Strain strain, Rational time, String when, Stage.Run run, Point point) {
    Strain longer = strain.longer(time);
    Rational on = point.onTime();
    Rational waited = longer.on();
    // That the on-time does not even cover what the instrument needs is said of the test.
    boolean isSaid = step.act() instanceof Act.Read && !point.on().notCovered().isEmpty();
    if (!isSaid && waited != null && (on == null || on.compareTo(waited) < 0)) {
      sayShort(step, on, waited, when, run);
    }
    return longer;
  }

  private void sayShort(
      PlanStep step, @Nullable Rational on, Rational waited, String when, Stage.Run run) {
    String least = new Figure(waited, SECOND).text();
    Amount written = run.tree().onTime();
    DiagnosticBuilder said =
        diagnostics.say(
            Code.ON_TIME_SHORT,
            step.span(),
            "output is on for %s when %s, but %s",
            least,
            when,
            on == null
                ? "the test has no on-time"
                : "the on-time is " + new Figure(on, SECOND).text());
    if (written == null) {
      said.hint("add to the test: on-time %s", least);
    } else {
      said.note(written.span(), "the on-time is here")
          .hint("write at least: on-time %s", least)
          .fix(Fix.replace(written.span(), least));
    }
  }

  private Strain stopped(Strain strain, Stage.Run run, Point point) {
    Strain off = strain.stopped(point.rest() == null ? Rational.ZERO : point.rest());
    Rational time = on(strain, point);
    if (time == null) {
      return off;
    }
    for (var asked : LoadHeat.asked(plan, run, point).entrySet()) {
      off = heated(off, strain, asked.getKey(), asked.getValue(), time, point);
    }
    return off;
  }

  private Strain heated(
      Strain off, Strain strain, LoadBank bank, Rational power, Rational time, Point point) {
    Rational continuous = LoadHeat.continuous(bank);
    Rational holds = LoadHeat.holds(bank);
    if (continuous == null || holds == null) {
      return off;
    }
    Variable load = Variable.heat(bank);
    // Too much for the load by itself is said by a check.
    if (!LoadHeat.takes(bank, power, time)) {
      return off;
    }
    Rational heat = strain.heat(load).plus(power.minus(continuous).times(time));
    if (heat.compareTo(holds) <= 0) {
      return off.withHeat(load, heat);
    }
    diagnostics
        .say(
            Code.LOAD_OVERPOWERED,
            point.span(),
            "after the points before it and their rests, this one overheats the load at %s",
            WATT.rounded(Real.of(power)))
        .note(bank.span(), "its continuous rating is %s", WATT.rounded(Real.of(continuous)))
        .hint("shorten the on-time, or put a 'wait' or a point of lower power before it");
    return off.withHeat(load, Rational.ZERO);
  }

  /** How long output was on, in s; null where nothing says. */
  private static @Nullable Rational on(Strain strain, Point point) {
    Rational on = point.on().counted();
    Rational waited = strain.on();
    return on == null || waited == null ? on : on.max(waited);
  }
}
