package passband.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The independent check of what is said to be caught: the steps of the sheet are worked on models
 * of a generator, of a bench and of a person, of which one is as an entry of the catalogue has it.
 * {@code -Ddetect.visits=200000} draws more of them.
 */
class WorkingTest {
  private static final int VISITS = Integer.getInteger("detect.visits", 6_000);

  /** Visits where the closed form is sure: none of them may be otherwise. */
  private static final int SURE_VISITS = 60;

  /**
   * What the closed form leaves out: the quadrature's own error (3e-5), and that the instrument's
   * error is taken at the true value, not at the one that the load's error has moved.
   */
  private static final double SECOND_ORDER = 5e-4;

  private static final long SEED = 22;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "keen",
        "thin",
        "fine",
        "worn",
        "top-first",
        "peak",
        "loose",
        "worked",
        "worked-guarded",
        "sedge-170/sedge-170-full.pband",
        "tussock-4/tussock-4-output.pband",
        "fescue-3/fescue-3-service.pband",
        "quecke-2/quecke-2-ausgang.pband",
        "campion-2/campion-2-energy.pband"
      })
  void whatIsSaidToBeCaughtIsCaught(String name) {
    SheetLines lines = SheetLines.of(CatalogueTest.plan(name));
    Working.Good good = Working.Good.of(lines);
    Troubles troubles = new Troubles(lines);
    Kernel kernel = new Kernel();
    int open = 0;
    List<String> wide = new ArrayList<>();
    for (Instance one : Instances.of(lines)) {
      Chance power = one.failing(kernel);
      if (one.outcome(power) == Outcome.NOT_APPLICABLE) {
        continue;
      }
      String what = one.fault().id() + " " + one.size().text() + " " + one.where();
      boolean sure = power.proof() == Chance.Proof.CERTAIN;
      int visits = sure ? SURE_VISITS : VISITS;
      double drawn = (double) good.with(troubles.of(one)).failing(visits, SEED) / visits;
      double error = Math.sqrt(power.value() * power.passing() / visits);
      assertEquals(power.value(), drawn, sure ? 0 : 4 * error + SECOND_ORDER, what);
      open += sure ? 0 : 1;
      if (!sure && Math.abs(drawn - power.value()) > 3 * error + SECOND_ORDER) {
        wide.add(what);
      }
    }
    assertTrue(wide.size() <= 1 + open / 100, wide + " of " + open);
  }

  /** A good generator, a bench in order and a careful person: nothing fails, all is written. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "keen",
        "worked-guarded",
        "sedge-170/sedge-170-full.pband",
        "tussock-4/tussock-4-output.pband",
        "fescue-3/fescue-3-service.pband",
        "quecke-2/quecke-2-ausgang.pband",
        "campion-2/campion-2-energy.pband"
      })
  void nothingFailsWhereNothingIsWrong(String name) {
    SheetLines lines = SheetLines.of(CatalogueTest.plan(name));
    Working worked = Working.Good.of(lines).with(new Trouble());
    assertEquals(0, worked.failing(2_000, SEED));
    List<SheetLine> asked = new ArrayList<>(lines.read());
    lines.asked().forEach(one -> asked.add(one.line()));
    List<SheetLine> written = worked.items().stream().map(Working.Item::line).toList();
    assertEquals(Set.copyOf(asked), new HashSet<>(written));
    assertEquals(asked.size(), written.size());
  }

  /** Every entry of the catalogue is worked somewhere. */
  @Test
  void everyEntryIsWorked() {
    Set<String> worked = new HashSet<>();
    for (String name : List.of("keen", "worn", "sedge-170/sedge-170-full.pband")) {
      for (Instance one : Instances.of(SheetLines.of(CatalogueTest.plan(name)))) {
        if (!one.changes().isEmpty()) {
          worked.add(one.fault().id());
        }
      }
    }
    assertEquals(Set.copyOf(Fault.all().stream().map(Fault::id).toList()), worked);
  }
}
