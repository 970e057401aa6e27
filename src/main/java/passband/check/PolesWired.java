package passband.check;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Analyzer.Measure;
import passband.model.Device.Mode;
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
 * no setup of the procedure connects to anything, or of one whose leakage is read that no setup
 * with such a test connects: it is never tested. A pole of an outlet through which output returns
 * that the test's own setup does not connect: half of a return electrode is left open, and a
 * generator that monitors it holds its output back.
 */
final class PolesWired implements Check {
  @Override
  public boolean needsWhole() {
    return true;
  }

  private static final String BESIDE =
      "connect a lead to it, or a link to the pole beside it, or say in the setup or the procedure"
          + " that the message names: allow pole-unwired because \"…\"";

  /** A link between poles that deliver would be a short circuit. */
  private static final String APART =
      "read the leakage from this pole in a setup and a test of its own, or say in the setup: allow"
          + " pole-unwired because \"…\"";

  /** An outlet whose leakage is read, and what its setups connect. */
  private record Leaking(Stage.Run run, Setup setup, Set<String> wired) {}

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    Set<String> wired = new LinkedHashSet<>();
    Map<Outlet, Stage.Run> used = new LinkedHashMap<>();
    Map<Outlet, Leaking> leaking = new LinkedHashMap<>();
    for (Stage.Run run : plan.runs()) {
      Setup setup = run.setup();
      if (setup == null) {
        continue;
      }
      wired.addAll(ends(setup));
      for (Point point : run.points()) {
        boolean on = run.output() == Delivery.ON;
        if (on && readsOutput(plan, setup, point)) {
          use(used, point.outlet(), run);
          back(point, run, setup, 1, diagnostics);
        }
        if (on && Leakage.isHf(plan, point)) {
          back(point, run, setup, 2, diagnostics);
        }
        if (run.outlet() != null && Leakage.isOfPoles(plan, point)) {
          leaking
              .computeIfAbsent(
                  run.outlet(), outlet -> new Leaking(run, setup, new LinkedHashSet<>()))
              .wired
              .addAll(ends(setup));
        }
      }
    }
    Span at = plan.name().span();
    used.forEach(
        (outlet, run) ->
            look(
                at,
                "no setup connects %s, but output goes through its outlet",
                outlet,
                run,
                wired,
                BESIDE,
                diagnostics));
    leaking.forEach(
        (outlet, one) ->
            look(
                one.setup.name().span(),
                "no setup connects %s where the leakage of its outlet is read",
                outlet,
                one.run,
                one.wired,
                isDriven(plan, outlet) ? APART : BESIDE,
                diagnostics));
  }

  /**
   * The way back of a point's output; with less than {@code least} poles it may be left open: no
   * generator monitors a plate of one piece by its halves.
   */
  private static void back(
      Point point, Stage.Run run, Setup setup, int least, Diagnostics diagnostics) {
    Outlet back = point.mode() == null ? null : point.mode().through();
    if (back != null && back.poles().size() >= least) {
      look(
          setup.name().span(),
          "this setup does not connect %s, but output goes through its outlet",
          back,
          run,
          ends(setup),
          BESIDE,
          diagnostics);
    }
  }

  /** Whether some mode delivers between its poles. */
  private static boolean isDriven(Plan plan, Outlet outlet) {
    for (Mode mode : plan.device().modes()) {
      if (mode.isOn(outlet)) {
        return true;
      }
    }
    return false;
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
      String format,
      Outlet outlet,
      Stage.Run run,
      Set<String> wired,
      String hint,
      Diagnostics diagnostics) {
    for (Terminal pole : outlet.poles()) {
      if (!wired.contains(pole.id()) && !isToBeJoined(outlet, pole)) {
        diagnostics
            .say(Code.POLE_UNWIRED, at, format, pole.id())
            .note(pole.name().span(), "the pole is declared here")
            .note(run.test().span(), "this test uses the outlet")
            .hint("%s", hint);
      }
    }
  }
}
