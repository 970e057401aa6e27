package passband.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.bench.BenchState;
import passband.bench.Moment;
import passband.bench.Variable;
import passband.bench.Walk;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Mode;
import passband.model.Terminal;
import passband.plan.Contacts;
import passband.plan.Plan;

/**
 * What is left of the row before, worked through on the bench machine: a printed step is left out,
 * and what stood before it still stands when the row is read.
 */
class SlipsOnTheBenchTest {
  private static final List<String> PROCEDURES =
      List.of(
          "keen",
          "top-first",
          "sedge-170/sedge-170-full.pband",
          "tussock-4/tussock-4-output.pband",
          "fescue-3/fescue-3-service.pband",
          "quecke-2/quecke-2-ausgang.pband");

  /** By point, what the variables of a kind have at its readings without its step of a kind. */
  private static Map<String, String> left(Plan plan, String step, Variable.Kind kind) {
    Map<String, String> left = new TreeMap<>();
    for (Moment moment : Walk.of(plan, new Diagnostics())) {
      if (moment.point() == null || !moment.kind().equals(step)) {
        continue;
      }
      for (BenchState.Change change : moment.before().changes(moment.after())) {
        if (change.what().kind() == kind && change.was() != null && change.now() != null) {
          left.put(moment.point(), change.was());
        }
      }
    }
    return left;
  }

  /** The points at which a fault of the catalogue changes a reading. */
  private static Map<String, Instance> instances(SheetLines lines, String fault) {
    Map<String, Instance> instances = new TreeMap<>();
    for (Instance one : Instances.of(lines)) {
      if (one.fault().id().equals(fault) && !one.changes().isEmpty()) {
        instances.put(one.where(), one);
      }
    }
    return instances;
  }

  @ParameterizedTest
  @CsvSource({"B03, set-load, LOAD", "B05, select, MODE"})
  void theRowsAreThoseOfTheMachine(String fault, String step, Variable.Kind kind) {
    int all = 0;
    for (String name : PROCEDURES) {
      Plan plan = CatalogueTest.plan(name);
      SheetLines lines = SheetLines.of(plan);
      Map<String, String> expected = left(plan, step, kind);
      Map<String, SheetLine> output = new TreeMap<>();
      lines.output().forEach(line -> output.put(line.point().id(), line));
      expected.keySet().retainAll(output.keySet());
      // What an outlet is in while the panel shows another one's mode, the machine does not know,
      // and neither what a contact brings that is not one of the mode's.
      expected
          .entrySet()
          .removeIf(
              left ->
                  kind == Variable.Kind.MODE
                      && plan.device().modes().stream()
                          .filter(mode -> mode.title().equals(left.getValue()))
                          .noneMatch(mode -> delivers(plan, mode, output.get(left.getKey()))));
      Map<String, Instance> found = instances(lines, fault);
      assertEquals(expected.keySet(), found.keySet(), name);
      all += found.size();
    }
    assertTrue(all > 10, all + " rows");
  }

  private static boolean delivers(Plan plan, Mode mode, SheetLine line) {
    Terminal contact = LimitEffects.contact(line.point());
    return mode.isOn(line.outlet())
        && mode.activateBy().stream()
            .map(ref -> Contacts.named(plan.device(), line.outlet(), ref))
            .anyMatch(own -> own != null && own.same(contact));
  }
}
