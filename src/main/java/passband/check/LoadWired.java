package passband.check;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer.LoadBank;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.source.Span;
import passband.syntax.Tree;

/**
 * {@code load-not-wired}, an error: a load that the analyzer has, but not between the jacks to
 * which the setup wires the output; and loads between several pairs of jacks that are all wired to
 * it. The generator would deliver into another load, and the limits would be those of this one.
 */
final class LoadWired implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      Setup setup = run.setup();
      if (setup == null || plan.instruments().loads().size() < 2) {
        continue;
      }
      for (Point point : run.delivered()) {
        if (point.load() != null) {
          Span where = point.places().load();
          look(plan, setup, point.mode(), point.outlet(), point.load(), where, diagnostics);
          lookAt(plan, setup, point, diagnostics);
        }
      }
      Tree.Sweep written = run.tree().sweep();
      if (run.sweep() != null && written != null && run.sweep().what().equals("load")) {
        Span from = written.from().span();
        Span to = written.to().span();
        if (look(plan, setup, null, run.outlet(), run.sweep().from(), from, diagnostics)) {
          look(plan, setup, null, run.outlet(), run.sweep().to(), to, diagnostics);
        }
      }
    }
  }

  /** The instrument whose load a row sets is one to which the output goes. */
  private static void lookAt(Plan plan, Setup setup, Point point, Diagnostics diagnostics) {
    List<LoadBank> wired = WiredLoads.of(plan.instruments(), setup, point.mode(), point.outlet());
    if (!wired.isEmpty() && point.loadAt() != null && !hasOf(point.loadAt(), wired)) {
      sayAt(setup, point.loadAt(), point.places().load(), wired.get(0), diagnostics);
    }
  }

  private static boolean hasOf(String role, List<LoadBank> banks) {
    for (LoadBank bank : banks) {
      if (bank.from().owner().equals(role)) {
        return true;
      }
    }
    return false;
  }

  private static void sayAt(
      Setup setup, String role, Span where, LoadBank wired, Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.LOAD_NOT_WIRED,
            where,
            "the load is set at '%s', but the setup '%s' wires the output to %s and %s",
            role,
            setup.name().text(),
            wired.from().id(),
            wired.to().id())
        .note(setup.name().span(), "the wiring is here")
        .note(wired.span(), "the load that takes the output is here")
        .hint("name the column after the instrument that takes the output, or correct the wiring");
  }

  /** Whether nothing is wrong with it. */
  private static boolean look(
      Plan plan,
      Setup setup,
      @Nullable Mode mode,
      @Nullable Outlet outlet,
      Figure load,
      Span where,
      Diagnostics diagnostics) {
    LoadBank elsewhere = plan.instruments().load(load.si());
    List<LoadBank> wired = WiredLoads.of(plan.instruments(), setup, mode, outlet);
    if (elsewhere == null || wired.isEmpty()) {
      return true; // load-not-available or circuit-open
    }
    LoadBank second = beside(wired.get(0), wired);
    if (second != null) {
      sayBoth(setup, wired.get(0), second, diagnostics);
      return false;
    }
    for (LoadBank bank : wired) {
      if (bank.values().contains(load.si())) {
        return true;
      }
    }
    say(setup, load, where, elsewhere, wired.get(0), diagnostics);
    return false;
  }

  /** One of other jacks: the output divides between them, whatever each is set to. */
  private static @Nullable LoadBank beside(LoadBank first, List<LoadBank> wired) {
    for (LoadBank bank : wired) {
      boolean same = bank.from().same(first.from()) && bank.to().same(first.to());
      boolean turned = bank.from().same(first.to()) && bank.to().same(first.from());
      if (!same && !turned) {
        return bank;
      }
    }
    return null;
  }

  private static void sayBoth(
      Setup setup, LoadBank first, LoadBank second, Diagnostics diagnostics) {
    diagnostics
        .say(
            Code.LOAD_NOT_WIRED,
            setup.name().span(),
            "the setup '%s' wires two loads to the output at once, between %s and %s and between %s"
                + " and %s: it divides between them",
            setup.name().text(),
            first.from().id(),
            first.to().id(),
            second.from().id(),
            second.to().id())
        .note(first.span(), "one is here")
        .note(second.span(), "the other is here")
        .hint("wire the output to one of them");
  }

  private static void say(
      Setup setup,
      Figure load,
      Span where,
      LoadBank elsewhere,
      LoadBank wired,
      Diagnostics diagnostics) {
    DiagnosticBuilder said =
        diagnostics.say(
            Code.LOAD_NOT_WIRED,
            where,
            "the setup '%s' wires the output to %s and %s, and the load between them has no %s",
            setup.name().text(),
            wired.from().id(),
            wired.to().id(),
            load.text());
    said.note(setup.name().span(), "the wiring is here")
        .note(
            elsewhere.span(),
            "%s is between %s and %s",
            load.text(),
            elsewhere.from().id(),
            elsewhere.to().id())
        .hint("wire the output to the jacks of that load, or correct the load");
  }
}
