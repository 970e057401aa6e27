package passband.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.model.Instruments;
import passband.model.Terminal;
import passband.plan.Nets;
import passband.plan.Plan;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.syntax.TerminalKind;

/**
 * {@code terminal-crowded}, {@code lead-used-twice} and {@code contact-on-output}, errors: more
 * leads in a terminal than it holds, one lead in two places, and a contact or key wired to what
 * carries output.
 */
final class Leads implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      if (run.setup() != null) {
        twice(run.setup(), diagnostics);
        crowded(run.setup(), diagnostics);
        run.setup().wires().forEach(w -> kinds(plan.instruments(), run.setup(), w, diagnostics));
      }
    }
  }

  private static void twice(Setup setup, Diagnostics diagnostics) {
    Map<String, Wire> seen = new HashMap<>();
    for (Wire wire : setup.wires()) {
      Wire first = seen.putIfAbsent(wire.lead().name().text(), wire);
      if (first != null && !first.span().equals(wire.span())) {
        diagnostics
            .say(
                Code.LEAD_USED_TWICE,
                wire.span(),
                "the %s is already in use in this setup",
                wire.lead().title())
            .note(first.span(), "first used here");
      }
    }
  }

  private static void crowded(Setup setup, Diagnostics diagnostics) {
    Map<String, List<Wire>> leads = new HashMap<>();
    Map<String, List<Wire>> links = new HashMap<>();
    for (Wire wire : setup.wires()) {
      for (Terminal end : List.of(wire.from(), wire.to())) {
        List<Wire> there =
            (wire.lead().link() ? links : leads).computeIfAbsent(end.id(), k -> new ArrayList<>());
        if (isThere(wire, there)) {
          continue;
        }
        there.add(wire);
        int holds = wire.lead().link() ? 1 : end.holds();
        if (there.size() > holds) {
          diagnostics
              .say(
                  Code.TERMINAL_CROWDED,
                  wire.span(),
                  "%s takes only %d %s%s",
                  end.id(),
                  holds,
                  wire.lead().link() ? "link" : "lead",
                  holds == 1 ? "" : "s")
              .note(there.get(0).span(), "another is here")
              .note(setup.name().span(), "the setup is here")
              .hint("if the terminal takes more, add 'holds 2' to it in the profile");
        }
      }
    }
  }

  /** An accessory takes the place of one lead wherever it touches. */
  private static boolean isThere(Wire wire, List<Wire> there) {
    for (Wire other : there) {
      if (wire.lead().accessory() && other.lead() == wire.lead()) {
        return true;
      }
    }
    return false;
  }

  private static void kinds(
      Instruments instruments, Setup setup, Wire wire, Diagnostics diagnostics) {
    boolean from = wire.from().kind().carriesOutput();
    if (!wire.conducts() || from == wire.to().kind().carriesOutput()) {
      return;
    }
    Terminal quiet = from ? wire.to() : wire.from();
    Terminal live = from ? wire.from() : wire.to();
    if (!carries(instruments, setup, live)) {
      return;
    }
    diagnostics
        .say(
            Code.CONTACT_ON_OUTPUT,
            wire.span(),
            "this connects the %s %s to the %s %s, which carries output",
            quiet.kind().word(),
            quiet.id(),
            live.kind().word(),
            live.id())
        .note(quiet.name().span(), "the %s is declared here", quiet.kind().word())
        .hint("connect contacts to keys and poles to jacks");
  }

  /**
   * Whether output can come to a terminal: a pole, an end of a load or of a measurement, or joined
   * to one.
   */
  private static boolean carries(Instruments instruments, Setup setup, Terminal live) {
    Nets nets = setup.nets();
    List<Terminal> ends = new ArrayList<>();
    instruments.loads().forEach(l -> ends.addAll(List.of(l.from(), l.to())));
    for (Analyzer.Measure measure : instruments.measures()) {
      if (measure.from() != null && measure.to() != null) {
        ends.addAll(List.of(measure.from(), measure.to()));
      }
    }
    for (Wire wire : setup.wires()) {
      ends.add(wire.from());
      ends.add(wire.to());
    }
    ends.removeIf(e -> e.kind() == TerminalKind.CONTACT || e.kind() == TerminalKind.KEY);
    ends.removeIf(e -> e.kind() == TerminalKind.JACK && !isEnd(instruments, e));
    return nets.reaches(ends, live);
  }

  private static boolean isEnd(Instruments instruments, Terminal jack) {
    for (Analyzer.LoadBank load : instruments.loads()) {
      if (load.from().same(jack) || load.to().same(jack)) {
        return true;
      }
    }
    for (Analyzer.Measure measure : instruments.measures()) {
      if (isAt(measure.from(), jack) || isAt(measure.to(), jack)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isAt(@Nullable Terminal end, Terminal jack) {
    return end != null && end.same(jack);
  }
}
