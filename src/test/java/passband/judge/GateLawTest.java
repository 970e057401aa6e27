package passband.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import passband.evidence.BadInput;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.ItemList;
import passband.plan.Plan;
import passband.testing.GeneratedProcedures;
import passband.testing.Records;
import passband.testing.Sheets;

/**
 * After a gate that failed every value of output is a fail, whatever it is; after one that is open
 * none passes: with each item before a gate wrong, and with each of them left out.
 */
class GateLawTest {
  private static final int GENERATED = 60;

  private static Stream<Plan> plans() {
    return Stream.concat(
        Sheets.demo().stream(),
        Stream.iterate(0, seed -> seed < GENERATED, seed -> seed + 1)
            .map(GeneratedProcedures::plan));
  }

  private static Map<String, Verdict> verdicts(ItemList list, Records records) throws BadInput {
    Map<String, Verdict> verdicts = new HashMap<>();
    Judge.judge(list, records.readings(), null)
        .judgements()
        .forEach(j -> verdicts.put(j.item().id(), j.verdict()));
    return verdicts;
  }

  private interface Change {
    /** Null where this item cannot be so. */
    Records of(Records good, Item item);
  }

  /** How many gates were tried with a change of an item before them. */
  private static int everyGate(Change change, boolean fails) throws BadInput {
    int tried = 0;
    for (Plan plan : plans().toList()) {
      ItemList list = Evidence.of(plan).list();
      for (int at = 0; at < list.items().size(); at++) {
        if (list.items().get(at) instanceof Item.Tick gate && gate.stops() != null) {
          for (Item item : list.items().subList(0, at)) {
            Records changed = change.of(Records.of(list, false), item);
            boolean asked = Records.of(list, false).ids().contains(gate.id());
            if (changed != null && asked) {
              stops(gate, verdicts(list, changed), fails, plan.name() + ": " + item.id());
              tried++;
            }
          }
        }
      }
    }
    return tried;
  }

  private static void stops(
      Item.Tick gate, Map<String, Verdict> verdicts, boolean fails, String at) {
    assertNotEquals(Verdict.PASS, verdicts.get(gate.id()), at);
    for (String id : gate.stops()) {
      Verdict verdict = verdicts.get(id);
      if (fails && verdict != Verdict.NOT_APPLICABLE && verdict != Verdict.NOT_DONE) {
        assertEquals(Verdict.FAIL, verdict, at + ", then " + id);
      }
      assertNotEquals(Verdict.PASS, verdict, at + ", then " + id);
    }
  }

  @Test
  void afterAGateThatFailedEveryValueIsAFail() throws BadInput {
    int tried =
        everyGate(
            (good, item) -> {
              boolean has = good.ids().contains(item.id());
              if (has && item instanceof Item.Choice choice && choice.pass() != null) {
                String other =
                    choice.options().stream()
                        .filter(o -> !o.equals(choice.pass()))
                        .findFirst()
                        .get();
                return good.with(item.id(), other + ",,,1,choice");
              }
              if (has && item instanceof Item.Reading reading && reading.limits() != null) {
                boolean open = reading.limits().acceptUpper() == null;
                String value =
                    open
                        ? reading
                            .limits()
                            .acceptLower()
                            .subtract(reading.scale().resolution())
                            .toPlainString()
                        : reading
                            .limits()
                            .acceptUpper()
                            .add(reading.scale().resolution())
                            .toPlainString();
                return good.with(item.id(), Records.reading(value, reading.scale().unit()));
              }
              return null;
            },
            true);
    assertTrue(tried > GENERATED, tried + " tried");
  }

  @Test
  void afterAGateThatIsOpenNoValuePasses() throws BadInput {
    int tried =
        everyGate(
            (good, item) ->
                good.ids().contains(item.id()) && !(item instanceof Item.Derived)
                    ? good.without(item.id())
                    : null,
            false);
    assertTrue(tried > GENERATED, tried + " tried");
  }

  /** The gate's own box as well. */
  @Test
  void aGateThatIsNotTickedIsOpen() throws BadInput {
    for (Plan plan : plans().toList()) {
      ItemList list = Evidence.of(plan).list();
      for (Item item : list.items()) {
        if (item instanceof Item.Tick gate
            && gate.stops() != null
            && Records.of(list, false).ids().contains(gate.id())) {
          Records open = Records.of(list, false).without(gate.id());
          stops(gate, verdicts(list, open), false, plan.name().text());
        }
      }
    }
  }

  /** What stands behind a gate is every value of output after it, and nothing else. */
  @Test
  void theDemoStopsItsOutput() {
    List<Item.Tick> gates =
        Sheets.demo().stream()
            .flatMap(plan -> Evidence.of(plan).list().items().stream())
            .filter(item -> item instanceof Item.Tick tick && tick.stops() != null)
            .map(item -> (Item.Tick) item)
            .toList();
    assertTrue(gates.stream().anyMatch(gate -> gate.stops().size() > 10));
  }
}
