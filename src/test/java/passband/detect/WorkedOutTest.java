package passband.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.evidence.WrittenFormula;
import passband.judge.Judge;
import passband.judge.Judgement;
import passband.judge.Verdict;
import passband.plan.Plan;
import passband.testing.Records;
import passband.testing.Repository;
import passband.testing.Snippet;

/** Values with limits that a sheet works out from readings count in what it catches. */
class WorkedOutTest {
  private static final String SEDGE = "sedge-170/sedge-170-full.pband";

  private static Set<WorkedOut> all(SheetLines lines) {
    Set<WorkedOut> all = new LinkedHashSet<>();
    lines.all().forEach(line -> all.addAll(line.uses()));
    lines.unjudged().forEach(line -> all.addAll(line.uses()));
    return all;
  }

  /** Every one of the demo and of the example is counted: the report has no note of any. */
  @Test
  void everyOneIsCounted() {
    assertEquals(17, all(SheetLines.of(CatalogueTest.plan(SEDGE))).size());
    assertEquals(0, SheetLines.of(CatalogueTest.plan(SEDGE)).workedOut());
    SheetLines lines = SheetLines.of(CatalogueTest.plan("worked"));
    assertEquals(0, lines.workedOut());
    assertEquals(16, all(lines).size());
  }

  /**
   * Readings about their nominal values pass here exactly where the judge passes them, with and
   * without a guard band. A mean of repeated readings has a guard band of its own there when they
   * scatter, which a generator of this model does not.
   */
  @ParameterizedTest
  @CsvSource({"worked, 60", "worked-guarded, 60", SEDGE + ", 12"})
  void passesWhatTheJudgePasses(String name, int visits) throws BadInput {
    Plan plan = CatalogueTest.plan(name);
    ItemList list = Evidence.of(plan).list();
    Map<String, Item> items = new TreeMap<>();
    list.items().forEach(item -> items.put(item.id(), item));
    SplittableRandom random = new SplittableRandom(4);
    Set<WorkedOut> all = all(SheetLines.of(plan));
    int passed = 0;
    int failed = 0;
    for (int visit = 0; visit < visits; visit++) {
      Records records = Records.of(list, false);
      Map<WorkedOut, Boolean> expected = new java.util.LinkedHashMap<>();
      Map<SheetLine, Double> written = new java.util.HashMap<>();
      for (WorkedOut value : all) {
        boolean scatters = value.limit().id().contains("middle") && name.contains("guarded");
        double[] displayed = new double[value.parts().size()];
        for (int i = 0; i < displayed.length; i++) {
          SheetLine part = value.parts().get(i);
          double nominal = value.nominals().get(i);
          double factor = 1 + random.nextDouble(-0.06, 0.06);
          displayed[i] =
              part.limit().quantity().equals("load")
                  ? nominal
                  : written.computeIfAbsent(
                      part, p -> p.at(nominal).window().rounded(nominal * factor));
        }
        if (!scatters) {
          expected.put(value, value.criterion().passes(displayed));
        }
      }
      written.forEach(
          (line, value) -> {
            Item.Measured item = (Item.Measured) items.get(line.limit().id());
            double inUnit = value / line.limit().unit().factor().doubleValue();
            String text =
                new java.math.BigDecimal(inUnit)
                    .setScale(item.scale().decimals(), java.math.RoundingMode.HALF_EVEN)
                    .toPlainString();
            records.with(item.id(), Records.reading(text, item.scale().unit()));
          });
      Map<String, Judgement> judged = new TreeMap<>();
      for (Judgement one : Judge.judge(list, records.readings(), null).judgements()) {
        judged.put(one.item().id(), one);
      }
      for (Map.Entry<WorkedOut, Boolean> one : expected.entrySet()) {
        Judgement judgement = judged.get(one.getKey().limit().id());
        if (judgement.causes().stream().anyMatch(c -> c.code().name().equals("GATE_FAILED"))) {
          continue; // another line's fault
        }
        boolean passes = judgement.verdict() == Verdict.PASS;
        assertEquals(passes, one.getValue(), one.getKey().limit().id() + " " + judgement);
        passed += passes ? 1 : 0;
        failed += passes ? 0 : 1;
      }
    }
    assertTrue(passed > 30 && failed > 5, passed + " pass, " + failed + " fail");
  }

  // ---- the probability ----

  private static Criterion criterion(String formula, List<String> names, double from, double to) {
    Arithmetic arithmetic = Arithmetic.of(new WrittenFormula(formula).tree(), names, Map.of());
    return new Criterion(
        new Criterion.Formula(formula + names, arithmetic), from, to, true, 0, List.of());
  }

  private static Observation reading(double truth, double step, String own, double half) {
    return new Observation(
        truth,
        new Window(null, null, step),
        new ErrorTerm(own, half, Spread.RECTANGULAR),
        Observation.NO_ERROR);
  }

  /**
   * By hand, with displays so fine that they do not matter. The difference of two independent
   * errors on [−1, 1] is triangular on [−2, 2]: beyond 1.2 either way lie (0.8/2)² = 0.16. With one
   * error in both there is no difference at all.
   */
  @Test
  void aDifferenceOfTwoReadings() {
    Criterion within = criterion("max(a, b) - min(a, b)", List.of("a", "b"), -9, 1.2);
    List<Observation> apart = List.of(reading(100, 1e-3, "x", 1), reading(100, 1e-3, "y", 1));
    Chance chance = new Kernel().failing(List.of(), List.of(new Reckoning(within, apart)));
    assertEquals(0.16, chance.value(), 2e-3);
    assertEquals(Chance.Proof.QUADRATURE, chance.proof());
    List<Observation> together = List.of(reading(100, 1e-3, "x", 1), reading(100, 1e-3, "x", 1));
    assertEquals(
        0, new Kernel().failing(List.of(), List.of(new Reckoning(within, together))).value());
  }

  /**
   * A display of whole units, exactly: 10.2 with an error on [−1, 1] shows 9 below 9.5, so in 0.15
   * of all visits, 11 from 10.5 on, in 0.35; the square of 11 is more than 110, that of 9 less than
   * 90.
   */
  @Test
  void aDisplayTurnsOverExactly() {
    Observation one = reading(10.2, 1, "x", 1);
    Criterion square = criterion("a ^ 2", List.of("a"), 90, 110);
    assertEquals(
        0.5,
        new Kernel().failing(List.of(), List.of(new Reckoning(square, List.of(one)))).value(),
        1e-12);
    Criterion least = criterion("sqrt(a)", List.of("a"), 3.1, 9);
    assertEquals(
        0.15,
        new Kernel().failing(List.of(), List.of(new Reckoning(least, List.of(one)))).value(),
        1e-12);
  }

  /** Where it cannot be worked out it does not pass; what cannot fail is sure. */
  @Test
  void whatHasNoValueDoesNotPass() {
    Criterion ratio = criterion("a / b", List.of("a", "b"), 0.9, 1.1);
    Observation one = reading(1, 1e-3, "x", 1e-2);
    Observation dead = reading(0, 1e-3, "y", 0);
    Observation none = reading(Double.NaN, 1e-3, "y", 0);
    assertTrue(
        new Kernel().failing(List.of(), List.of(new Reckoning(ratio, List.of(one, none)))).sure());
    assertEquals(
        1,
        new Kernel().failing(List.of(), List.of(new Reckoning(ratio, List.of(one, dead)))).value());
    Observation good = reading(1, 1e-3, "y", 1e-2);
    assertTrue(
        new Kernel().failing(List.of(), List.of(new Reckoning(ratio, List.of(one, good)))).never());
  }

  /** Draws and quadrature agree within four standard errors on all that hangs together. */
  @ParameterizedTest
  @ValueSource(strings = {"worked", "worked-guarded"})
  void drawsAgree(String name) {
    SheetLines lines = SheetLines.of(CatalogueTest.plan(name));
    Kernel kernel = new Kernel();
    int open = 0;
    for (double gain :
        new double[] {-0.05, -0.02, -0.01, -0.005, -0.002, 0, 0.002, 0.005, 0.01, 0.02, 0.05}) {
      for (List<SheetLine> some : Gain.read(lines).values()) {
        Visit visit = new Visit();
        for (SheetLine line : Gain.withParts(some)) {
          visit.add(line, line.at(line.scaled(1 + gain)));
        }
        Chance chance = visit.failing(kernel);
        int visits = 40_000;
        double drawn = Simulation.failing(visit.readings(), visit.reckonings(), visits, 3);
        double error = Math.sqrt(chance.value() * chance.passing() / visits);
        boolean draws = chance.proof() == Chance.Proof.SIMULATION;
        assertEquals(
            chance.value(), drawn, (draws ? 6 : 4) * error + 1e-3, gain + " " + some.size());
        open += chance.proof() == Chance.Proof.QUADRATURE ? 1 : 0;
      }
    }
    assertTrue(open > 4, open + " open");
  }

  /** With values worked out never less is caught; here more of fading and of a bad instrument. */
  @Test
  void aValueNeverCatchesLess() {
    SheetLines lines = SheetLines.of(CatalogueTest.plan("worked"));
    Kernel kernel = new Kernel();
    List<String> more = new ArrayList<>();
    for (Instance one : Instances.of(lines)) {
      if (one.chance() == Instance.JOINTLY && !one.changes().isEmpty()) {
        List<Observation> alone = one.changes().stream().map(Instance.Change::seen).toList();
        double without = kernel.failing(alone).value();
        double with = one.failing(kernel).value();
        assertTrue(with >= without - 1e-3, one.fault().id() + " " + one.where());
        if (with > without + 0.5) {
          more.add(one.fault().id());
        }
      }
    }
    assertTrue(more.containsAll(List.of("G28", "B09")), more.toString());
    assertFalse(more.contains("P04"), more.toString());
  }

  // ---- choices and ticks ----

  private static List<Outcome> outcomes(String fault, String asked) {
    Plan plan =
        CatalogueTest.changed(
            "thin.pband",
            "soft | 10        | 200\n    }",
            "soft | 10, 20 | 200\n hard | 20 | 250\n }\n each {\n " + asked + "\n }");
    Kernel kernel = new Kernel();
    List<Outcome> outcomes = new ArrayList<>();
    for (Instance one : Instances.of(SheetLines.of(plan))) {
      if (one.fault().id().equals(fault)) {
        outcomes.add(one.outcome(one.failing(kernel)));
      }
    }
    return outcomes;
  }

  /** A question that names what is set finds that it is something else; another one does not. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "B05 | choose panel \"{mode} is shown\" from \"yes\", \"no\" pass \"yes\" | true",
        "B05 | confirm \"The panel shows {mode}.\" | true",
        "B05 | choose panel \"{mode} is shown\" from \"yes\", \"no\" | false",
        "B05 | confirm \"The panel is lit.\" | false",
        "B05 | do \"Look whether {mode} is shown.\" | false",
        "B01 | confirm \"The dial shows {load}.\" | true",
        "B01 | confirm \"The dial shows {mode}.\" | false",
        "B02 | confirm \"The dial shows {load}.\" | true",
        "B03 | confirm \"The dial shows {load}.\" | true",
        "B04 | confirm \"The display shows {setting}.\" | true",
        "B10 | confirm range \"The analyzer chooses its range by itself.\" | true",
        "B10 | confirm range-2 \"The analyzer chooses its range by itself.\" | true",
        "B10 | confirm ranges \"The analyzer chooses its range by itself.\" | false",
        "B10 | confirm other \"The analyzer chooses its range by itself.\" | false",
      })
  void aQuestionCatchesWhatItNames(String fault, String asked, boolean catches) {
    List<Outcome> outcomes = outcomes(fault, asked);
    assertFalse(outcomes.isEmpty());
    boolean all = outcomes.stream().allMatch(one -> one == Outcome.CAUGHT);
    boolean before = outcomes(fault, "do \"Go on.\"").stream().allMatch(o -> o == Outcome.CAUGHT);
    assertEquals(catches || before, all, outcomes.toString());
  }

  /** Advice that has a line of source in it is right: with this line the fault is caught. */
  @Test
  void adviceThatIsWrittenOutCatches() {
    Map<String, List<Outcome>> ticks = new TreeMap<>();
    for (Fault fault : Fault.all()) {
      int at = fault.advice().indexOf(": confirm ");
      if (at >= 0) {
        ticks.put(fault.id(), outcomes(fault.id(), fault.advice().substring(at + 2)));
      }
    }
    assertEquals(List.of(Outcome.NOT_APPLICABLE), ticks.remove("B11"), "it has no link");
    assertEquals(Set.of("B05", "B06", "B07", "B10"), ticks.keySet());
    for (Map.Entry<String, List<Outcome>> some : ticks.entrySet()) {
      assertEquals(Set.of(Outcome.CAUGHT), Set.copyOf(some.getValue()), some.getKey());
    }
  }

  /** A reading that has no lower limit passes without its lead; a tick called wiring does not. */
  @Test
  void aTickCalledWiringFindsALeadThatNoReadingFinds() {
    String path = "fescue-3/fescue-3-service.pband";
    Map<String, String> sources = new TreeMap<>(Repository.texts(Repository.PROCEDURES));
    assertTrue(leakageLeads(sources, path).contains(Outcome.MISSED));
    sources.computeIfPresent(
        path,
        (p, text) ->
            text.replace(
                "do \"Switch the generator off, plug",
                "confirm wiring-2 \"Every lead is there.\"\n do \"Switch the generator off, plug"));
    assertEquals(Set.of(Outcome.CAUGHT), leakageLeads(sources, path));
  }

  private static Set<Outcome> leakageLeads(Map<String, String> sources, String path) {
    Plan plan = Snippet.compile(sources, path, null).plans().get(0);
    Kernel kernel = new Kernel();
    Set<Outcome> outcomes = new LinkedHashSet<>();
    for (Instance one : Instances.of(SheetLines.of(plan))) {
      boolean lead = one.fault().id().equals("B06") || one.fault().id().equals("B07");
      if (lead && one.where().startsWith("mains-leakage")) {
        outcomes.add(one.outcome(one.failing(kernel)));
      }
    }
    return outcomes;
  }
}
