package passband.diff;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import passband.diff.Mutations.Mutation;
import passband.plan.Plan;
import passband.quantity.QuantityKind;
import passband.quantity.Unit;
import passband.source.Span;
import passband.syntax.Word;
import passband.testing.RecordTree;
import passband.testing.RecordTree.Spot;
import passband.testing.Repository;
import passband.testing.Sheets;
import passband.testing.Snippet;

/**
 * Two digests are equal exactly when the diff is empty, whatever component of a plan is changed,
 * removed, repeated or put in another order. The components are found by reflection: a new one is
 * either part of the meaning or listed here with the reason why it is none.
 */
class MeaningLawTest {
  /** Types whose values have no parts. */
  private static final Set<Class<?>> LEAVES =
      Set.of(Word.class, Unit.class, QuantityKind.class, Span.class);

  /** Components that are no part of the meaning, with the reason. Spans never are. */
  private static final Map<String, String> NO_MEANING = new HashMap<>();

  static {
    String tree = "the checks' way back to the source";
    NO_MEANING.put("Plan.source", tree);
    NO_MEANING.put("Setup.nets", "follows from its wires");
    NO_MEANING.put("Setup.whole", "a plan with a fault has no meaning");
    NO_MEANING.put("Run.tree", tree);
    NO_MEANING.put("Device.tree", tree);
    NO_MEANING.put("Mode.tree", tree);
    NO_MEANING.put("Analyzer.tree", tree);
    NO_MEANING.put("ExtraSetting.tree", tree);
    String line = "the line that the component stands for";
    for (String owner :
        List.of(
            "Lead.unknown", "LoadBank.unknownError", "LoadBank.unknownPower", "Range.unknown")) {
      NO_MEANING.put(owner + "/Unknown.rating", line);
    }
    NO_MEANING.put("Timing.unknownSettle/Unknown.rating", line);
    String place = "places in the source";
    NO_MEANING.put("Point.places", place);
    NO_MEANING.put("Plan.made", "a cache of what follows from the rest");
    NO_MEANING.put("Stays.title", "the title of the setting");
    NO_MEANING.put("Terminal.ownerTitle", "the title of its outlet or analyzer");
    String spelling = "how the source spells it";
    NO_MEANING.put("Lead.ratedText", spelling);
    NO_MEANING.put("Amount.digits", spelling);
    NO_MEANING.put("Series.unit", spelling);
    NO_MEANING.put("End.digit", spelling);
    NO_MEANING.put("End.unit", spelling);
    NO_MEANING.put("End.amount", spelling);
    NO_MEANING.put("Settings.target/Figure.unit", spelling);
    NO_MEANING.put("Swept.from/Figure.unit", spelling);
    NO_MEANING.put("Swept.to/Figure.unit", spelling);
    NO_MEANING.put("Swept.step/Figure.unit", spelling);
    NO_MEANING.put("Accept.by", "what it names is what the limits are made of");
    String name = "follows from the quantity, or from what is derived or swept";
    NO_MEANING.put("ReadQuantity.title", name);
    NO_MEANING.put("Reading.title", name);
    String worked = "follows from the rule, the point, the analyzer and the decision rule";
    NO_MEANING.put("Limit.exact", worked);
    NO_MEANING.put("Limit.computed", worked);
    NO_MEANING.put("Limit.ofMode", worked);
    NO_MEANING.put("ReadQuantity.uncertainty", worked);
    NO_MEANING.put("Limit.ratio", worked);
    NO_MEANING.put("ReadQuantity.range", worked);
    NO_MEANING.put("ReadQuantity.over", "follows from the run's derived values and its points");
    NO_MEANING.put("Reading.uncertainty", worked);
    NO_MEANING.put("Filled.text", "an operand of the step, or a fact of its own");
    NO_MEANING.put("Read.what", "follows from the point's readings and limits");
    NO_MEANING.put("Read.ofSeveral", "follows from the point's readings and limits");
    NO_MEANING.put("Read.sweep", "the run's own");
    NO_MEANING.put("Times.from", "the test's on-time, or that of the instruments, and the duty");
    NO_MEANING.put("Rest.time", "follows from the point's own times");
    NO_MEANING.put("Owner.label", "follows from the printed names of the instruments");
    NO_MEANING.put("Activate.instrument", "follows from the key and those names");
    NO_MEANING.put("Accept.readBy", "what it names shows the reading");
    NO_MEANING.put("Settings.activation", "printed among the settings of the row");
    NO_MEANING.put("Activation.written", "how the source names the contact");
    NO_MEANING.put("Activation.contact", "printed among the settings of the row");
    NO_MEANING.put("Settings.also", "operands of its steps, printed among the settings of the row");
    NO_MEANING.put("Settings.loadAt", "an operand of the step that sets the load");
    NO_MEANING.put("Settings.otherLoads", "operands of the steps that set the loads");
    NO_MEANING.put("Range.step", "follows from the resolution and its unit");
  }

  /** Lists whose order neither the sheet prints nor the compiler goes by. */
  private static final Set<String> NO_ORDER =
      Set.of(
          "Plan.allowed",
          "Limit.stated",
          "Device.modes",
          "Device.actions",
          "Device.states",
          "Device.measures",
          "Mode.outlets",
          "Tolerances.limits",
          "LoadBank.terminations",
          "LoadBank.joins",
          "Outlet.joins",
          "Outlet.limits",
          "Device.limits",
          "Adjustable.terminations",
          "Tolerances.unknown",
          "Mode.activateBy",
          "Series.segments",
          "ExtraSetting.options",
          "Analyzer.measures",
          "Analyzer.actions");

  /**
   * Lists of which only a part has an order: outlets drawn together, leads in use, terminals of
   * what is drawn, loads and ranges with values in common.
   */
  private static final Set<String> SOME_ORDER =
      Set.of(
          "Device.outlets",
          "Bench.leads",
          "Outlet.terminals",
          "Analyzer.terminals",
          "Analyzer.loads",
          "Measure.ranges",
          "Device.settings",
          "Analyzer.settings");

  /** Parts of series, of which the same values can be written in several ways. */
  private static final Set<String> SOME_MEANING =
      Set.of("Series.segments", "Segment.from", "Segment.to", "Segment.step");

  /** So many records are tried of those that are alike: the first and the last. */
  private static final int TRIED = 2;

  // ---- the plans ----

  private static List<Plan> plans() {
    List<Plan> plans = new ArrayList<>(List.of(Sheets.TEASEL, Sheets.YARROW, Sheets.SUNDEW));
    plans.addAll(fixtures());
    return plans;
  }

  private static List<Plan> fixtures() {
    return compiled(Repository.ROOT.resolve("src/test/resources/meaning"), "all.pband");
  }

  private static List<Plan> compiled(java.nio.file.Path folder, String main) {
    Map<String, String> files = new TreeMap<>();
    Repository.files(folder, "")
        .forEach(f -> files.put(folder.relativize(f).toString(), Repository.text(f)));
    Snippet snippet = Snippet.compile(files, main, null);
    assertTrue(
        snippet.diagnostics().stream().noneMatch(d -> !d.code().allowable()), snippet.report());
    return snippet.plans();
  }

  // ---- the components ----

  private static boolean hasMeaning(Spot spot) {
    return !NO_MEANING.containsKey(spot.name())
        && !NO_MEANING.containsKey(spot.owner() + "/" + spot.name())
        && spot.component().getType() != Span.class;
  }

  private static boolean isEntered(Spot spot) {
    return hasMeaning(spot) && !isLeaf(spot.component().getType()) && !isLeafList(spot.value());
  }

  private static boolean isLeaf(Class<?> type) {
    return LEAVES.contains(type);
  }

  private static boolean isLeafList(Object value) {
    return value instanceof List<?> list && !list.isEmpty() && isLeaf(list.get(0).getClass());
  }

  /** The spots to try: of records that are alike, in the same component, the first and the last. */
  private static List<Spot> tried(Plan plan) {
    Map<String, List<Spot>> alike = new LinkedHashMap<>();
    for (Spot spot : RecordTree.spots(plan, MeaningLawTest::isEntered)) {
      String key = spot.owner() + "/" + spot.name() + "/" + form(spot.value());
      alike.computeIfAbsent(key, k -> new ArrayList<>()).add(spot);
    }
    List<Spot> tried = new ArrayList<>();
    for (List<Spot> spots : alike.values()) {
      tried.add(spots.get(0));
      if (spots.size() >= TRIED) {
        tried.add(spots.get(spots.size() - 1));
      }
    }
    return tried;
  }

  /** None, one or more of what kind: values of one form are tried in the same way. */
  private static String form(Object value) {
    if (value instanceof List<?> list) {
      return list.size() < 2 ? "list of " + list.size() : "list";
    }
    return value == null ? "none" : value.getClass().getSimpleName();
  }

  /** Whether it belongs to a record of which a plan has only one. */
  private static boolean isOnce(Spot spot) {
    return spot.name().matches("(Plan|Bench|Start)\\..*");
  }

  /**
   * Values that each component has in a plan, or, for those of records of which it has only one, in
   * any of them; null where it can be.
   */
  private static Map<String, List<Object>> observed(Plan plan, List<Plan> plans) {
    Map<String, List<Object>> observed = new HashMap<>();
    nullable(plans)
        .forEach(name -> observed.computeIfAbsent(name, n -> new ArrayList<>()).add(null));
    for (Spot spot : RecordTree.spots(plan, MeaningLawTest::isEntered)) {
      List<Object> values = observed.computeIfAbsent(spot.name(), n -> new ArrayList<>());
      if (spot.value() != null && values.size() < 4) {
        values.add(spot.value());
      }
    }
    for (Plan other : plans) {
      RecordTree.spots(other, spot -> spot.name().matches("Plan.bench|Plan.stages"))
          .forEach(
              spot -> {
                if (isOnce(spot)) {
                  observed.get(spot.name()).add(spot.value());
                }
              });
    }
    return observed;
  }

  private static Set<String> nullable(List<Plan> plans) {
    Set<String> nullable = new TreeSet<>();
    for (Plan plan : plans) {
      for (Spot spot : RecordTree.spots(plan, MeaningLawTest::isEntered)) {
        if (spot.value() == null) {
          nullable.add(spot.name());
        }
      }
    }
    return nullable;
  }

  // ---- the law ----

  /** What is tried of one plan, and what is wrong with it. */
  private static final class Trial {
    private final Plan plan;
    private final Map<String, List<Object>> observed;
    private final List<String> faults = new ArrayList<>();
    private final Map<String, Set<Mutations.Kind>> kinds = new TreeMap<>();

    Trial(Plan plan, Map<String, List<Object>> observed) {
      this.plan = plan;
      this.observed = observed;
    }

    void all() {
      for (Spot spot : tried(plan)) {
        List<Object> others = observed.getOrDefault(spot.name(), List.of());
        for (Mutation mutation : Mutations.of(spot.value(), others)) {
          if (Mutations.isPossible(spot.record(), spot.component().getName(), mutation.value())) {
            one(spot, mutation);
          }
        }
      }
    }

    private void one(Spot spot, Mutation mutation) {
      Plan other =
          RecordTree.with(
              plan,
              spot,
              mutation.value(),
              MeaningLawTest::isRewritten,
              Map.of("Plan.made", Plan.Made::new));
      boolean another = !plan.digest().equals(other.digest());
      boolean reordered = mutation.kind() == Mutations.Kind.REORDERED;
      boolean meant = hasMeaning(spot) && !(reordered && NO_ORDER.contains(spot.name()));
      boolean either =
          SOME_MEANING.contains(spot.name()) || reordered && SOME_ORDER.contains(spot.name());
      if (another != meant && !either) {
        fault(spot, mutation, another ? "another digest" : "the same digest");
      }
      kinds.computeIfAbsent(spot.name(), n -> new TreeSet<>()).add(mutation.kind());
      List<PlanDiff> there = PlanDiff.between(List.of(plan), List.of(other));
      if (another == there.isEmpty()) {
        fault(spot, mutation, another ? "a silent diff" : "a diff of equal digests");
      }
      List<PlanDiff> back = PlanDiff.between(List.of(other), List.of(plan));
      if (!texts(there, false).equals(texts(back, true))) {
        fault(spot, mutation, "no mirror: " + there + " and " + back);
      }
      if (there.stream().flatMap(d -> d.changes().stream()).anyMatch(Trial::showsNone)) {
        fault(spot, mutation, "a change that shows none: " + there);
      }
    }

    private static boolean showsNone(Change change) {
      return Objects.equals(change.was(), change.now());
    }

    private static List<String> texts(List<PlanDiff> diffs, boolean turned) {
      return diffs.stream()
          .flatMap(d -> d.changes().stream())
          .map(
              c ->
                  c.subject()
                      + (turned
                          ? "\n" + c.now() + "\n" + c.was()
                          : "\n" + c.was() + "\n" + c.now()))
          .sorted()
          .toList();
    }

    private void fault(Spot spot, Mutation mutation, String what) {
      String place = plan.name() + ": " + spot.owner() + "/" + spot.name();
      String change = Mutations.plain(spot.value()) + " -> " + Mutations.plain(mutation.value());
      faults.add(place + " " + mutation.kind() + ", " + change + ": " + what);
    }
  }

  @Test
  void digestsAreEqualExactlyWhenTheDiffIsEmpty() {
    List<Plan> plans = plans();
    Map<String, Set<Mutations.Kind>> kinds = new TreeMap<>();
    List<String> faults = new ArrayList<>();
    for (Plan plan : plans) {
      Trial trial = new Trial(plan, observed(plan, plans));
      trial.all();
      faults.addAll(trial.faults);
      trial.kinds.forEach(
          (name, tried) -> kinds.computeIfAbsent(name, n -> new TreeSet<>()).addAll(tried));
    }
    assertEquals(List.of(), faults, () -> faults.size() + " faults\n" + String.join("\n", faults));
    assertEquals(List.of(), untried(kinds));
  }

  /** What the declarations of the records have and no plan here showed in another form. */
  private static List<String> untried(Map<String, Set<Mutations.Kind>> kinds) {
    List<String> untried = new ArrayList<>();
    RecordTree.components(Plan.class, LEAVES, MeaningLawTest::hasMeaning)
        .forEach(
            (name, component) -> {
              Set<Mutations.Kind> tried = kinds.getOrDefault(name, Set.of());
              boolean list = List.class.isAssignableFrom(component.getType());
              if (tried.isEmpty() && hasMeaning(component)
                  || list && hasMeaning(component) && !tried.contains(Mutations.Kind.REORDERED)) {
                untried.add(name + " " + tried);
              }
            });
    return untried;
  }

  private static boolean isRewritten(RecordComponent component) {
    return hasMeaning(component) && !isLeaf(component.getType());
  }

  private static boolean hasMeaning(RecordComponent component) {
    return !NO_MEANING.containsKey(RecordTree.name(component)) && component.getType() != Span.class;
  }
}
