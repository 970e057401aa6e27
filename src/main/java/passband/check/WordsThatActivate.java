package passband.check;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.model.Device.Outlet;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.Words;
import passband.syntax.TerminalKind;

/**
 * {@code activation-in-words}, an error that can be allowed: a free text, or that of a wait, names
 * a key or a contact by which output comes on, in the place of no step that turns it on or off.
 * What the text asks for is not known; a hand may hold the key while the next lead is connected.
 */
final class WordsThatActivate implements Check {
  /** The steps in whose place a key or a contact may be named. */
  private static final List<String> OWN = List.of("activate", "read", "stop");

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    List<Terminal> named = telling(plan);
    for (Stage stage : plan.stages()) {
      if (stage instanceof Stage.Section section) {
        look(section.steps(), named, diagnostics);
      } else if (stage instanceof Stage.Run run) {
        look(run.before(), named, diagnostics);
        for (Point point : run.points()) {
          look(point.steps(), named, diagnostics);
        }
        look(run.after(), named, diagnostics);
      }
    }
  }

  /** The keys and contacts whose printed names are no common words. */
  private static List<Terminal> telling(Plan plan) {
    List<Terminal> named = new ArrayList<>();
    for (Analyzer unit : plan.instruments().units()) {
      for (Terminal one : unit.terminals()) {
        if (one.kind() == TerminalKind.KEY && isTelling(one.title())) {
          named.add(one);
        }
      }
    }
    for (Outlet outlet : plan.device().outlets()) {
      for (Terminal one : outlet.contacts()) {
        if (isTelling(one.title())) {
          named.add(one);
        }
      }
    }
    return named;
  }

  /** Of several words, or with a capital or a digit: a "pedal" is named for many reasons. */
  private static boolean isTelling(String title) {
    boolean telling = title.indexOf(' ') >= 0;
    for (int i = 0; i < title.length(); i++) {
      telling |= Character.isUpperCase(title.charAt(i)) || Character.isDigit(title.charAt(i));
    }
    return telling && title.length() > 2;
  }

  private static void look(List<PlanStep> steps, List<Terminal> named, Diagnostics diagnostics) {
    for (PlanStep step : steps) {
      boolean free = step.act() instanceof Act.Free || step.act() instanceof Act.Wait;
      boolean own = step.insteadOf() != null && OWN.contains(step.insteadOf());
      Terminal found = free && !own ? in(step.words(), named) : null;
      if (found != null) {
        diagnostics
            .say(
                Code.ACTIVATION_IN_WORDS,
                step.span(),
                "this text names '%s', by which output comes on",
                found.title())
            .note(found.name().span(), "it is declared here")
            .hint(
                "a test turns output on and off by itself, or by a block 'each replacing activate';"
                    + " where this text turns none on, say so: allow activation-in-words because"
                    + " \"…\"");
      }
    }
  }

  private static @Nullable Terminal in(@Nullable Words words, List<Terminal> named) {
    if (words == null) {
      return null;
    }
    String text = words.text(Words.Filled::text);
    for (Terminal one : named) {
      if (has(text, one.title())) {
        return one;
      }
    }
    return null;
  }

  /** Whether a text has a name in it, not as a part of a longer word. */
  private static boolean has(String text, String name) {
    for (int at = text.indexOf(name); at >= 0; at = text.indexOf(name, at + 1)) {
      int end = at + name.length();
      boolean begins = at == 0 || !Character.isLetterOrDigit(text.charAt(at - 1));
      boolean ends = end == text.length() || !Character.isLetterOrDigit(text.charAt(end));
      if (begins && ends) {
        return true;
      }
    }
    return false;
  }
}
