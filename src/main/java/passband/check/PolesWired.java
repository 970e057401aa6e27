package passband.check;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Analyzer.Measure;
import passband.model.Device.Outlet;
import passband.model.Join;
import passband.model.Terminal;
import passband.plan.Delivery;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.plan.WiredLoads;
import passband.source.Span;

/**
 * {@code pole-unwired}, an error that can be allowed: a pole of an outlet whose output is read that
 * no setup of the procedure connects to anything: it is never tested. A pole of an outlet through
 * which output returns that the test's own setup does not connect: half of a return electrode is
 * left open.
 */
final class PolesWired implements Check {
  @Override
  public boolean needsWhole() {
    return true;
  }

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    Set<String> wired = new LinkedHashSet<>();
    Map<Outlet, Stage.Run> used = new LinkedHashMap<>();
    for (Stage.Run run : plan.runs()) {
      Setup setup = run.setup();
      if (setup == null) {
        continue;
      }
      wired.addAll(ends(setup));
      for (Point point : run.output() == Delivery.ON ? run.points() : List.<Point>of()) {
        if (readsOutput(plan, setup, point)) {
          use(used, point.outlet(), run);
          Outlet back = point.mode() == null ? null : point.mode().through();
          if (back != null) {
            look(
                setup.name().span(),
                "this setup does not connect",
                back,
                run,
                ends(setup),
                diagnostics);
          }
        }
      }
    }
    Span at = plan.name().span();
    used.forEach((outlet, run) -> look(at, "no setup connects", outlet, run, wired, diagnostics));
  }

  private static Set<String> ends(Setup setup) {
    Set<String> ends = new LinkedHashSet<>();
    for (Wire wire : setup.wires()) {
      ends.add(wire.from().id());
      ends.add(wire.to().id());
    }
    return ends;
  }

  /**
   * Whether something is read that goes through a load, and not by a path of its own. Where the
   * circuit is open, that is what is said.
   */
  private static boolean readsOutput(Plan plan, Setup setup, Point point) {
    if (point.mode() == null
        || point.outlet() == null
        || WiredLoads.of(plan.instruments(), setup, point.mode(), point.outlet()).isEmpty()) {
      return false;
    }
    for (Limit limit : point.limits()) {
      Measure measure = plan.measure(limit);
      if (measure != null && measure.from() == null) {
        return true;
      }
    }
    return false;
  }

  private static void use(Map<Outlet, Stage.Run> used, @Nullable Outlet outlet, Stage.Run run) {
    if (outlet != null) {
      used.putIfAbsent(outlet, run);
    }
  }

  /** A pole that has to be joined to another is missed by {@code poles-not-joined}. */
  private static boolean isToBeJoined(Outlet outlet, Terminal pole) {
    for (Join join : outlet.joins()) {
      if (join.one().same(pole) || join.other().same(pole)) {
        return true;
      }
    }
    return false;
  }

  private static void look(
      Span at,
      String what,
      Outlet outlet,
      Stage.Run run,
      Set<String> wired,
      Diagnostics diagnostics) {
    for (Terminal pole : outlet.poles()) {
      if (!wired.contains(pole.id()) && !isToBeJoined(outlet, pole)) {
        diagnostics
            .say(
                Code.POLE_UNWIRED, at, "%s %s, but output goes through its outlet", what, pole.id())
            .note(pole.name().span(), "the pole is declared here")
            .note(run.test().span(), "this test uses the outlet")
            .hint("connect a lead to it, or a link to the pole beside it");
      }
    }
  }
}
