package passband.compile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Outlet;
import passband.model.Device.State;
import passband.plan.Act;
import passband.plan.PlanStep;
import passband.plan.Stage;
import passband.resolve.Names;
import passband.resolve.Scope;
import passband.syntax.Adjust;
import passband.syntax.Gate;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * Puts sections, runs and adjustments into the order they are done in. The first phase goes through
 * everything; adjustments follow it; later phases go through the tests that an adjustment affects,
 * or through all where there is none. The tests between two sections are done outlet by outlet, and
 * on each setup by setup; with {@code order by test} in the order in which they are written.
 */
final class BenchOrder {
  private final Tree.Procedure tree;
  private final List<TestPlanner> tests;
  private final Steps steps;
  private final Names names;
  private final Diagnostics diagnostics;
  private final Options options;

  BenchOrder(
      Tree.Procedure tree,
      List<TestPlanner> tests,
      Steps steps,
      Names names,
      Diagnostics diagnostics) {
    this.tree = tree;
    this.tests = tests;
    this.steps = steps;
    this.names = names;
    this.diagnostics = diagnostics;
    this.options = new Options(tree, names, diagnostics);
  }

  List<Stage> stages() {
    List<Stage> stages = new ArrayList<>();
    stages.add(new Stage.Start(ready(tree.name())));
    int lastTest = lastTest();
    List<Tree.Part> body = tree.parts().subList(0, lastTest + 1);
    List<String> phases = phases();
    goThrough(body, phases.isEmpty() ? null : phases.get(0), null, stages);
    adjustments(stages);
    Set<String> affected = affected();
    for (String phase : phases.subList(Math.min(1, phases.size()), phases.size())) {
      goThrough(body, phase, affected, stages);
    }
    stages.add(new Stage.End(List.of()));
    goThrough(tree.parts().subList(lastTest + 1, tree.parts().size()), null, null, stages);
    return OverPoints.settled(Rewiring.of(RestPositions.of(stages, steps)), diagnostics);
  }

  /** Output off, no lead connected, in none of the states that tests enter. */
  private PlanStep ready(Word of) {
    Set<State> states = new LinkedHashSet<>();
    for (TestPlanner test : tests) {
      if (test.state() != null) {
        states.add(test.state());
      }
    }
    return new PlanStep(new Act.Ready(List.copyOf(states)), null, null, of.span());
  }

  /** In how many phases a test is done; once where there are no phases. */
  int times(TestPlanner test) {
    int phases = phases().size();
    Set<String> affected = affected();
    boolean repeated = affected == null || affected.contains(test.name().text());
    return repeated ? Math.max(1, phases) : 1;
  }

  private int lastTest() {
    int last = -1;
    for (int i = 0; i < tree.parts().size(); i++) {
      Tree.Part part = tree.parts().get(i);
      last = part instanceof Tree.Test || part instanceof Gate ? i : last;
    }
    return last;
  }

  /** The tests that adjustments affect; null when every test is repeated. */
  private @Nullable Set<String> affected() {
    Set<String> names = new LinkedHashSet<>();
    boolean any = false;
    for (Tree.Part part : tree.parts()) {
      if (part instanceof Adjust adjust) {
        any = true;
        adjust.affects().forEach(a -> names.add(a.text()));
      }
    }
    return any ? names : null;
  }

  /** The names of the phases, each once. */
  private List<String> phases() {
    Set<String> phases = new LinkedHashSet<>();
    tree.phases().forEach(phase -> phases.add(phase.text()));
    return List.copyOf(phases);
  }

  private void adjustments(List<Stage> stages) {
    for (Tree.Part part : tree.parts()) {
      if (part instanceof Adjust adjust) {
        sayOutsidePhases(adjust);
        sayWithoutSteps(adjust);
        List<String> affects = new ArrayList<>();
        Scope.distinct(diagnostics, "affected test", adjust.affects(), affected -> affected);
        for (Word affected : adjust.affects()) {
          nameTest(affected);
          affects.add(affected.text());
        }
        List<PlanStep> all = new ArrayList<>(steps.of(adjust.steps(), TextPlace.OUTSIDE));
        all.add(ready(adjust.name()));
        stages.add(
            new Stage.Adjust(
                adjust.name(), title(adjust.title(), adjust.name()), affects, List.copyOf(all)));
      }
    }
  }

  private void sayWithoutSteps(Adjust adjust) {
    if (adjust.steps().isEmpty()) {
      diagnostics
          .say(
              Code.MISSING_ITEM,
              adjust.span(),
              "the adjustment '%s' has no step: nobody knows what to adjust",
              adjust.name().text())
          .hint("write what is adjusted and how, 'do \"…\"'");
    }
  }

  /**
   * With fewer than two phases nothing would be tested again after the adjustment; with more,
   * nobody could tell which of them it stands between.
   */
  private void sayOutsidePhases(Adjust adjust) {
    if (phases().size() < 2) {
      diagnostics
          .say(
              Code.MISSING_ITEM,
              adjust.name().span(),
              "an adjustment stands between two phases, but the procedure has %s",
              phases().isEmpty() ? "none" : "only one")
          .hint("add 'phases as-found, as-left'");
    } else if (phases().size() > 2) {
      Word third = tree.phases().get(tree.phases().size() - 1);
      diagnostics
          .say(
              Code.REPEATED_ITEM,
              third.span(),
              "an adjustment stands between two phases; '%s' is one more",
              third.text())
          .note(adjust.name().span(), "the adjustment is here")
          .hint("name the phase before the adjustment and the one after it");
    }
  }

  private void nameTest(Word name) {
    List<String> known = new ArrayList<>();
    tests.forEach(test -> known.add(test.name().text()));
    if (known.contains(name.text())) {
      names.use(name, tests.get(known.indexOf(name.text())).name());
    } else {
      Scope.unknown(diagnostics, name, "test", known);
    }
  }

  private static String title(@Nullable Word title, Word name) {
    return title == null ? name.text() : title.text();
  }

  /**
   * @param only the tests to do, sections left out; null for all with their sections
   */
  private void goThrough(
      List<Tree.Part> parts,
      @Nullable String phase,
      @Nullable Set<String> only,
      List<Stage> stages) {
    List<TestPlanner> together = new ArrayList<>();
    for (Tree.Part part : parts) {
      if (part instanceof Tree.Test test) {
        if (only == null || only.contains(test.name().text())) {
          addPlanned(test, together);
        }
      } else if (part instanceof Gate gate) {
        runs(together, phase, only != null, stages);
        together.clear();
        gate(gate, phase, only, stages);
      } else if (part instanceof Tree.Section section && only == null) {
        runs(together, phase, false, stages);
        together.clear();
        stages.add(
            new Stage.Section(
                section.name(),
                title(section.title(), section.name()),
                new Stage.Condition(List.of(), options.of(section.when(), section)),
                steps.of(section.steps(), TextPlace.OUTSIDE)));
      }
    }
    runs(together, phase, only != null, stages);
  }

  /**
   * In a later phase it is passed again only if an adjustment affects a test before it.
   *
   * @param only the tests to do; null for all
   */
  private void gate(
      Gate gate, @Nullable String phase, @Nullable Set<String> only, List<Stage> stages) {
    Set<String> adjusted = new LinkedHashSet<>();
    int before = 0;
    for (Tree.Part part : tree.parts()) {
      if (part == gate) {
        break;
      }
      before++;
      for (TestPlanner test : tests) {
        if (only != null && test.tree() == part && only.contains(test.name().text())) {
          adjusted.addAll(adjustmentsOf(test));
        }
      }
    }
    if (before == 0) {
      diagnostics.say(
          Code.MISSING_ITEM, gate.span(), "there is nothing before this gate that could pass");
    }
    if (only == null || !adjusted.isEmpty()) {
      Stage.Condition condition = Stage.Condition.after(List.copyOf(adjusted));
      stages.add(new Stage.Gate(gate.name(), gate.text().text(), new Stage.When(phase, condition)));
    }
  }

  private void addPlanned(Tree.Test test, List<TestPlanner> to) {
    for (TestPlanner planner : tests) {
      if (planner.tree() == test) {
        to.add(planner);
      }
    }
  }

  /** A test and the outlet it is done on. */
  private record Visit(TestPlanner test, Outlet outlet) {}

  private void runs(
      List<TestPlanner> together, @Nullable String phase, boolean ifAdjusted, List<Stage> stages) {
    List<Visit> visits = new ArrayList<>();
    for (TestPlanner test : together) {
      test.outlets().forEach(outlet -> visits.add(new Visit(test, outlet)));
    }
    for (Visit visit : tree.byOutlet() ? byOutlet(visits) : visits) {
      List<String> adjusted = ifAdjusted ? adjustmentsOf(visit.test) : List.of();
      Stage.Run run = visit.test.run(visit.outlet, when(phase, adjusted, visit.test));
      if (run != null) {
        stages.add(run);
      }
    }
  }

  private Stage.When when(@Nullable String phase, List<String> adjusted, TestPlanner test) {
    Tree.Test tree = test.tree();
    return new Stage.When(
        phase, new Stage.Condition(adjusted, options.of(tree.conditions().when(), tree)));
  }

  /** The names of the adjustments that affect a test. */
  private List<String> adjustmentsOf(TestPlanner test) {
    List<String> names = new ArrayList<>();
    for (Tree.Part part : tree.parts()) {
      if (part instanceof Adjust adjust) {
        for (Word affected : adjust.affects()) {
          if (affected.text().equals(test.name().text()) && !names.contains(adjust.name().text())) {
            names.add(adjust.name().text());
          }
        }
      }
    }
    return names;
  }

  private static List<Visit> byOutlet(List<Visit> visits) {
    Set<String> places = new LinkedHashSet<>();
    visits.forEach(v -> places.add(outletName(v)));
    List<Visit> sorted = new ArrayList<>();
    for (String place : places) {
      Map<String, List<Visit>> bySetup = new LinkedHashMap<>();
      for (Visit visit : visits) {
        if (outletName(visit).equals(place)) {
          bySetup.computeIfAbsent(setupName(visit), s -> new ArrayList<>()).add(visit);
        }
      }
      bySetup.values().forEach(sorted::addAll);
    }
    return sorted;
  }

  private static String outletName(Visit visit) {
    return visit.outlet == null ? "" : visit.outlet.name().text();
  }

  private static String setupName(Visit visit) {
    return visit.test.tree().setup() == null ? "" : visit.test.tree().setup().text();
  }
}
