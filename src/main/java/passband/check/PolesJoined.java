package passband.check;

import java.util.ArrayList;
import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer.LoadBank;
import passband.model.Device.Outlet;
import passband.model.Join;
import passband.plan.Delivery;
import passband.plan.Nets;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.WiredLoads;

/**
 * {@code poles-not-joined}, an error: a setup through which output is delivered, or in which a
 * leakage of the outlet is read, leaves apart what its outlet, the outlet of its return path or its
 * load says has to be joined. Leakage of a pole that is left open does not flow through the meter
 * (IEC 60601-1, 8.7.4.7: the patient connections of an applied part are connected together, from
 * memory). Output that is inhibited may be tried on an outlet whose poles are apart on purpose.
 */
final class PolesJoined implements Check {
  @Override
  public boolean needsWhole() {
    return true;
  }

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      Setup setup = run.setup();
      if (setup == null) {
        continue;
      }
      Nets nets = setup.nets();
      for (Point point : run.delivered()) {
        for (Join join : joins(plan, run, setup, point)) {
          if (!nets.joined(join.one(), join.other())) {
            say(run, setup, join, diagnostics);
          }
        }
      }
    }
  }

  private static void say(Stage.Run run, Setup setup, Join join, Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.POLES_NOT_JOINED,
            setup.name().span(),
            "this setup does not join %s and %s, but %s",
            join.one().id(),
            join.other().id(),
            run.output().activates()
                ? "output goes through it"
                : "the leakage of both has to flow through the meter")
        .note(join.span(), "they have to be joined")
        .note(run.test().span(), "this test uses the setup")
        .hint("connect a link between them");
  }

  private static List<Join> joins(Plan plan, Stage.Run run, Setup setup, Point point) {
    List<Join> joins = new ArrayList<>();
    Outlet outlet = point.outlet();
    if (outlet == null) {
      return joins;
    }
    if (point.mode() == null) {
      return Leakage.isOfPoles(plan, point) ? outlet.joins() : joins;
    }
    if (run.output() == Delivery.ON) {
      joins.addAll(outlet.joins());
      Outlet through = point.mode().through();
      joins.addAll(through == null ? List.of() : through.joins());
    }
    for (LoadBank bank : WiredLoads.of(plan.instruments(), setup, point.mode(), outlet)) {
      joins.addAll(bank.joins());
    }
    return joins;
  }
}
