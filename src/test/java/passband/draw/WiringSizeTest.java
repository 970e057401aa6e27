package passband.draw;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import passband.plan.Plan;
import passband.plan.Stage;
import passband.testing.GeneratedProcedures;
import passband.testing.Sheets;

/** What the check asks of a drawing before it is drawn. */
class WiringSizeTest {
  @Test
  void noDrawingIsHigherThanItsBound() {
    List<Plan> plans =
        Stream.concat(
                Sheets.demo().stream(), LongStream.range(0, 50).mapToObj(GeneratedProcedures::plan))
            .toList();
    for (Plan plan : plans) {
      for (Stage.Run run : plan.runs()) {
        if (run.setup() != null) {
          double high = WiringDrawing.of(plan, run).height();
          double bound = WiringSize.bound(plan, run.setup());
          assertTrue(high <= bound, run.title() + ": " + high + " and " + bound);
        }
      }
    }
  }

  @Test
  void noLetterIsWiderThanItsBound() {
    for (int c = 0x20; c < 0x3000; c++) {
      String letter = Character.toString(c);
      assertTrue(TextWidths.width(letter, 1, false) <= WiringSize.widest(c), letter);
      assertTrue(TextWidths.width(letter, 1, true) <= 1.25 * WiringSize.widest(c), letter);
    }
  }
}
