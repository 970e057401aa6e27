package passband.check;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.model.Terminal;
import passband.plan.Nets;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.syntax.TerminalKind;

/**
 * {@code earth-unsaid}, an error that can be allowed: leads connect a pole that must not be on
 * earth to a jack of which the profile says neither {@code on earth} nor {@code floating}; {@link
 * PoleEarthed} would let it pass. Said once an instrument. A jack that nothing of the kind goes to
 * need not say it.
 */
final class EarthSaid implements Check {
  /** A jack that does not say it, and where it has to. */
  private record Unsaid(Terminal jack, Stage.Run run, Setup setup) {}

  @Override
  public boolean needsWhole() {
    return true;
  }

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Analyzer unit : plan.instruments().units()) {
      Map<String, Unsaid> unsaid = new LinkedHashMap<>();
      for (Stage.Run run : plan.runs()) {
        Setup setup = run.setup();
        if (setup != null && setup.whole()) {
          look(plan, unit, run, setup, unsaid);
        }
      }
      List<Unsaid> inOrder = new ArrayList<>();
      for (Terminal jack : unit.terminals()) {
        Unsaid one = unsaid.get(jack.id());
        if (one != null) {
          inOrder.add(one);
        }
      }
      if (!inOrder.isEmpty()) {
        say(unit, inOrder, diagnostics);
      }
    }
  }

  private static void look(
      Plan plan, Analyzer unit, Stage.Run run, Setup setup, Map<String, Unsaid> unsaid) {
    Nets nets = setup.nets();
    for (Point point : run.points()) {
      boolean leaks = PoleEarthed.measuresLeakage(plan, nets, point);
      List<Terminal> poles = PoleEarthed.floating(plan, run, point, leaks);
      for (Terminal jack : poles.isEmpty() ? List.<Terminal>of() : unit.terminals()) {
        boolean said = jack.floatsOn() != null || jack.kind() != TerminalKind.JACK;
        if (!said && nets.reaches(poles, jack)) {
          unsaid.putIfAbsent(jack.id(), new Unsaid(jack, run, setup));
        }
      }
    }
  }

  private static void say(Analyzer unit, List<Unsaid> unsaid, Diagnostics diagnostics) {
    List<String> names = new ArrayList<>();
    unsaid.forEach(one -> names.add(one.jack.name().text()));
    Unsaid first = unsaid.get(0);
    DiagnosticBuilder said =
        diagnostics.say(
            Code.EARTH_UNSAID,
            first.jack.name().span(),
            "a pole that must not be on earth goes to %s of '%s', and nothing says whether the"
                + " instrument connects %s to earth",
            Figures.list(names),
            unit.name().text(),
            names.size() == 1 ? "it" : "them");
    said.note(first.setup.name().span(), "leads connect it here")
        .note(first.run.test().span(), "in this test")
        .hint(
            "look in the instrument's data sheet, and write 'floating' or 'on earth' after the jack");
  }
}
