package passband.check;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.limit.Limit;
import passband.model.Device.Mode;
import passband.plan.Delivery;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.source.Span;
import passband.syntax.Adjust;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * {@code adjusted-untested}: tests that read the output of a mode, and an adjustment that has
 * another test of the mode repeated and not these. What they read before would go on counting. Said
 * once an adjustment, at its name.
 */
final class AdjustedRead implements Check {
  @Override
  public boolean needsWhole() {
    return true;
  }

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Tree.Part part : plan.tree().parts()) {
      if (part instanceof Adjust adjust) {
        check(plan, adjust, diagnostics);
      }
    }
  }

  private static void check(Plan plan, Adjust adjust, Diagnostics diagnostics) {
    Set<String> affected = new LinkedHashSet<>();
    adjust.affects().forEach(test -> affected.add(test.text()));
    Set<Mode> adjusted = new LinkedHashSet<>();
    for (Stage.Run run : plan.runs()) {
      if (affected.contains(run.test().text())) {
        adjusted.addAll(modesRead(run));
      }
    }
    Set<String> left = new LinkedHashSet<>();
    Set<String> modes = new LinkedHashSet<>();
    for (Stage.Run run : plan.runs()) {
      Set<Mode> both = modesRead(run);
      both.retainAll(adjusted);
      if (!both.isEmpty() && !affected.contains(run.test().text())) {
        left.add(run.test().text());
        both.forEach(mode -> modes.add(mode.name().text()));
      }
    }
    if (!left.isEmpty()) {
      say(adjust, List.copyOf(left), List.copyOf(modes), diagnostics);
    }
  }

  private static void say(
      Adjust adjust, List<String> left, List<String> modes, Diagnostics diagnostics) {
    List<Word> affects = adjust.affects();
    Span last = affects.get(affects.size() - 1).span();
    String names = Figures.list(left);
    diagnostics
        .say(
            Code.ADJUSTED_UNTESTED,
            adjust.name().span(),
            "%s %s the output of %s, which is adjusted, and %s not repeated",
            names,
            left.size() == 1 ? "reads" : "read",
            Figures.list(modes),
            left.size() == 1 ? "is" : "are")
        .hint("name what the adjustment can change in its 'affects'")
        .fix(
            Fix.insert(
                "add " + names + " to what the adjustment affects", last.atEnd(), ", " + names));
  }

  /** The modes that deliver while an instrument reads. */
  private static Set<Mode> modesRead(Stage.Run run) {
    Set<Mode> modes = new LinkedHashSet<>();
    if (run.output() != Delivery.ON) {
      return modes;
    }
    for (Point point : run.points()) {
      if (reads(run, point)) {
        for (Point delivering : point.delivered()) {
          if (delivering.mode() != null) {
            modes.add(delivering.mode());
          }
        }
      }
    }
    return modes;
  }

  /** Whether anything is read but the end of a sweep. */
  private static boolean reads(Stage.Run run, Point point) {
    for (Limit limit : point.limits()) {
      if (run.sweep() == null || !limit.quantity().equals(run.sweep().as())) {
        return true;
      }
    }
    return false;
  }
}
