package passband.detect;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How often a good generator fails. */
class FalseFailsTest {
  private static final String TUSSOCK = "tussock-4/tussock-4-output.pband";
  private static final String SEDGE = "sedge-170/sedge-170-full.pband";
  private static final String FESCUE = "fescue-3/fescue-3-service.pband";

  /**
   * Whoever has the limits and the errors can work the false fails out again: every reading with
   * limits, of whatever quantity, by draws. Values that are worked out from readings can only add.
   */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "campion-2/campion-2-energy.pband",
        TUSSOCK,
        FESCUE,
        "quecke-2/quecke-2-ausgang.pband",
        SEDGE,
        "keen"
      })
  void falseFailsCountEveryReadingWithLimits(String name) {
    SheetLines lines = SheetLines.of(CatalogueTest.plan(name));
    boolean worked = lines.all().stream().anyMatch(line -> !line.uses().isEmpty());
    for (Detection.FalseFail fail : FalseFails.of(lines, new Kernel())) {
      for (boolean above : new boolean[] {false, true}) {
        List<Observation> readings = new ArrayList<>();
        for (SheetLine line : lines.all()) {
          var exact = line.limit().exact();
          var nominal = exact.nominal();
          var end = above ? exact.upper() : exact.lower();
          var other = above ? exact.lower() : exact.upper();
          if (end == null) {
            continue;
          }
          double limit = end.doubleValue();
          double from =
              nominal != null
                  ? nominal.doubleValue()
                  : other != null
                      ? (limit + other.doubleValue()) / 2
                      : above ? 0 : Double.POSITIVE_INFINITY;
          double truth =
              Double.isInfinite(from) ? limit / fail.share() : from + fail.share() * (limit - from);
          readings.add(line.at(truth));
        }
        int visits = 20_000;
        double drawn = Simulation.failing(readings, visits, 7);
        double power = (above ? fail.high() : fail.low()).value();
        double error = 4 * Math.sqrt(Math.max(power * (1 - power), 0.25 / visits) / visits);
        String said = name + " " + fail.share() + (above ? " high " : " low ") + power;
        assertTrue(power >= drawn - error, said + " drawn " + drawn);
        assertTrue(worked || power <= drawn + error, said + " drawn " + drawn);
      }
    }
  }

  /** What is no output fails falsely too: the sheet fails as often as any of it, or more. */
  @Test
  void aReadingOfAnotherQuantityFailsFalselyToo() {
    SheetLines lines = SheetLines.of(CatalogueTest.plan(SEDGE));
    Kernel kernel = new Kernel();
    double sheet = FalseFails.of(lines, kernel).get(4).high().value();
    for (SheetLine.Kind kind :
        List.of(SheetLine.Kind.TRIP, SheetLine.Kind.HF_LEAKAGE, SheetLine.Kind.MAINS_LEAKAGE)) {
      List<SheetLine> some = lines.of(kind);
      assertFalse(some.isEmpty(), kind.toString());
      for (SheetLine line : some) {
        double limit = line.limit().exact().upper().doubleValue();
        double there = kernel.failing(List.of(line.at(limit))).value();
        assertTrue(sheet >= there, kind + " " + there);
      }
    }
  }
}
