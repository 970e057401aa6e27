package passband.check;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.limit.Limit;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Join;
import passband.model.Terminal;
import passband.plan.Nets;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.source.Span;
import passband.syntax.Word;

/**
 * {@code circuit-open}, {@code circuit-shorted} and {@code return-missing}, errors: the loop from a
 * pole through leads, jacks and load to the other pole, or to the return electrode, is looked for
 * in the graph of the setup. What is measured between two jacks of its own, such as leakage, closes
 * its loop through those.
 */
final class Circuit implements Check {

  /** The two ends of what the current goes through in the analyzer. */
  private record Through(Terminal from, Terminal to, Span span) {}

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      if (run.setup() != null && !run.setup().whole()) {
        continue;
      }
      Set<List<Object>> looked = new HashSet<>();
      for (Point point : run.delivered()) {
        if (!looked.add(kind(point))) {
          continue; // another point of the kind had the same circuit
        }
        Mode mode = point.mode();
        Outlet outlet = point.outlet();
        if (mode != null && outlet != null && mode.isOn(outlet)) {
          output(plan, run, mode, outlet, point.limits(), diagnostics);
        } else if (mode == null && run.setup() != null) {
          passive(plan, run, run.setup(), point, diagnostics);
        }
      }
    }
  }

  /** What a point's circuit depends on, its run apart. */
  private static List<Object> kind(Point point) {
    List<Object> kind = new ArrayList<>();
    kind.add(point.mode() == null ? "" : point.mode());
    kind.add(point.outlet() == null ? "" : point.outlet().name().text());
    point.limits().forEach(limit -> kind.add(limit.quantity()));
    return kind;
  }

  // ---- output ----

  private static void output(
      Plan plan,
      Stage.Run run,
      Mode mode,
      Outlet outlet,
      List<Limit> limits,
      Diagnostics diagnostics) {
    Span where = where(run);
    if (run.setup() == null && run.tree().setup() != null) {
      return; // it names one that is not there, which has been said
    }
    if (run.setup() == null) {
      diagnostics
          .say(
              Code.CIRCUIT_OPEN,
              run.test().span(),
              "the test '%s' delivers output but has no setup",
              run.test().text())
          .hint("add 'setup NAME'");
      return;
    }
    Nets nets = run.setup().nets();
    List<Terminal> active = run.outlet() == null ? outlet.poles() : run.outlet().poles();
    List<Terminal> back = mode.through() == null ? active : mode.through().poles();
    if (shorted(plan, nets, outlet, back, run, diagnostics)) {
      return;
    }
    for (Limit limit : limits) {
      Through own = between(plan, limit);
      if (own != null) {
        leakage(plan, nets, active, own, limit.quantity(), run, diagnostics);
      } else if (WiredLoads.between(plan.instruments(), nets, active, back).isEmpty()) {
        if (mode.through() != null && !nets.wired(back)) {
          diagnostics
              .say(
                  Code.RETURN_MISSING,
                  where,
                  "the output of '%s' returns through '%s', but no lead of the setup goes there",
                  mode.name().text(),
                  mode.through().name().text())
              .note(run.test().span(), "this test uses the setup")
              .note(mode.name().span(), "the mode is declared here");
        } else {
          sayOpen(plan, run, outlet, mode, diagnostics);
        }
      }
    }
  }

  private static void sayOpen(
      Plan plan, Stage.Run run, Outlet outlet, Mode mode, Diagnostics diagnostics) {
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.CIRCUIT_OPEN,
                where(run),
                "no circuit leads from '%s' through the load to %s",
                outlet.name().text(),
                mode.through() == null
                    ? "its other pole"
                    : "'" + mode.through().name().text() + "'")
            .note(run.test().span(), "this test uses the setup")
            .note(mode.name().span(), "the mode is declared here");
    plan.instruments().loads().forEach(load -> said.note(load.span(), "the load is here"));
    if (mode.through() == null && outlet.poles().size() == 1) {
      said.hint(
          "'%s' has one pole; say in the mode where its output returns: on %s through OUTLET",
          outlet.name().text(), outlet.name().text());
      returns(plan, run, outlet, mode, said);
    }
  }

  /** To the other outlets that leads join to the load's other side. */
  private static void returns(
      Plan plan, Stage.Run run, Outlet outlet, Mode mode, DiagnosticBuilder said) {
    List<Word> written = mode.tree().outlets();
    if (run.setup() == null || written.isEmpty()) {
      return;
    }
    Nets nets = run.setup().nets();
    Span last = written.get(written.size() - 1).span();
    for (Outlet other : plan.device().outlets()) {
      boolean closes =
          other != outlet
              && !WiredLoads.between(plan.instruments(), nets, outlet.poles(), other.poles())
                  .isEmpty();
      if (closes) {
        String through = " through " + other.name().text();
        Span after = new Span(last.file(), last.end(), last.end());
        said.fix(Fix.insert("write '" + through.strip() + "'", after, through));
      }
    }
  }

  private static Span where(Stage.Run run) {
    return run.setup() == null ? run.test().span() : run.setup().name().span();
  }

  private static boolean shorted(
      Plan plan,
      Nets nets,
      Outlet outlet,
      List<Terminal> back,
      Stage.Run run,
      Diagnostics diagnostics) {
    for (Terminal a : outlet.poles()) {
      for (Terminal b : back) {
        if (!a.same(b) && nets.joined(a, b) && !together(outlet, a, b)) {
          diagnostics.say(
              Code.CIRCUIT_SHORTED,
              where(run),
              "leads connect %s and %s without the load between them",
              a.id(),
              b.id());
          return true;
        }
      }
    }
    for (Analyzer.LoadBank bank : plan.instruments().loads()) {
      if (nets.joined(bank.from(), bank.to())) {
        diagnostics
            .say(Code.CIRCUIT_SHORTED, where(run), "leads short-circuit the load")
            .note(bank.span(), "the load is here");
        return true;
      }
    }
    return false;
  }

  /** Whether the outlet wants both of them joined. */
  private static boolean together(Outlet outlet, Terminal a, Terminal b) {
    for (Join join : outlet.joins()) {
      boolean forth = join.one().same(a) && join.other().same(b);
      if (forth || (join.one().same(b) && join.other().same(a))) {
        return true;
      }
    }
    return false;
  }

  // ---- what is measured between jacks of its own ----

  private static @Nullable Through between(Plan plan, Limit limit) {
    Analyzer.Measure measure = plan.measure(limit);
    return measure == null || measure.from() == null || measure.to() == null
        ? null
        : new Through(measure.from(), measure.to(), measure.span());
  }

  private static void leakage(
      Plan plan,
      Nets nets,
      List<Terminal> active,
      Through through,
      String quantity,
      Stage.Run run,
      Diagnostics diagnostics) {
    List<Terminal> all = allPoles(plan.device());
    boolean from = nets.reaches(active, through.from) && nets.reaches(all, through.to);
    boolean to = nets.reaches(active, through.to) && nets.reaches(all, through.from);
    if (nets.joined(through.from, through.to)) {
      diagnostics
          .say(
              Code.CIRCUIT_SHORTED,
              where(run),
              "leads short-circuit the jacks between which %s is measured",
              quantity)
          .note(through.span, "the jacks are named here");
    } else if (!from && !to) {
      diagnostics
          .say(
              Code.CIRCUIT_OPEN,
              where(run),
              "no circuit leads from the outlet through %s and %s, between which %s is measured",
              through.from.id(),
              through.to.id(),
              quantity)
          .note(run.test().span(), "this test uses the setup")
          .note(through.span, "the jacks are named here");
    }
  }

  /** All poles, and what is earthed. */
  private static List<Terminal> allPoles(Device device) {
    List<Terminal> poles = new ArrayList<>();
    device.outlets().forEach(o -> poles.addAll(o.terminals()));
    poles.removeIf(terminal -> !terminal.kind().carriesOutput());
    return poles;
  }

  /**
   * A test without output: a swept load lies across two poles, a leakage is measured from a pole to
   * another.
   */
  private static void passive(
      Plan plan, Stage.Run run, Setup setup, Point point, Diagnostics diagnostics) {
    Nets nets = setup.nets();
    List<Terminal> all = allPoles(plan.device());
    if (run.sweep() != null && run.sweep().what().equals("load")) {
      if (WiredLoads.between(plan.instruments(), nets, all, all).isEmpty()) {
        diagnostics
            .say(
                Code.CIRCUIT_OPEN,
                where(run),
                "the swept load is not connected between two poles of the device")
            .note(run.test().span(), "this test uses the setup");
      }
    }
    for (Limit limit : point.limits()) {
      Through own = between(plan, limit);
      if (own != null) {
        leakage(plan, nets, all, own, limit.quantity(), run, diagnostics);
      }
    }
  }
}
