package passband.draw;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import passband.plan.Plan;
import passband.plan.Stage;
import passband.testing.GeneratedProcedures;
import passband.testing.LongTexts;
import passband.testing.Repository;
import passband.testing.Sheets;
import passband.testing.Snippet;

/** What the check asks of a drawing before it is drawn. */
class WiringSizeTest {
  private static final Pattern PROCEDURE = Pattern.compile("(?m)^procedure ");

  /** The procedures of the demo library with longer texts, the same at every run. */
  private static Stream<Plan> withLongNames(int seed) {
    Map<String, String> library = Repository.texts(Repository.PROCEDURES);
    Random random = new Random(seed);
    LongTexts texts = new LongTexts(library, (text, place) -> random.nextInt(12) - 3);
    Map<String, String> files = new TreeMap<>(texts.files());
    return files.keySet().stream()
        .filter(name -> PROCEDURE.matcher(files.get(name)).find())
        .flatMap(main -> Snippet.compile(files, main, null).plans().stream());
  }

  @Test
  void noDrawingIsHigherThanItsBound() {
    List<Plan> plans = new ArrayList<>(Sheets.demo());
    LongStream.range(0, 50).mapToObj(GeneratedProcedures::plan).forEach(plans::add);
    IntStream.range(0, 20)
        .mapToObj(WiringSizeTest::withLongNames)
        .forEach(s -> s.forEach(plans::add));
    int drawings = 0;
    for (Plan plan : plans) {
      for (Stage.Run run : plan.runs()) {
        if (run.setup() != null) {
          double high = WiringDrawing.of(plan, run).height();
          double bound = WiringSize.bound(plan, run.setup());
          assertTrue(high <= bound, run.title() + ": " + high + " and " + bound);
          drawings++;
        }
      }
    }
    assertTrue(drawings > 500, drawings + " drawings");
  }

  /**
   * Else each check would take as long as a drawing; a wiring is looked at once for all its runs.
   */
  @Test
  void fewDrawingsOfTheDemoHaveToBeMadeForTheirCheck() {
    Set<String> seen = new HashSet<>();
    int made = 0;
    int all = 0;
    for (Plan plan : Sheets.demo()) {
      for (Stage.Run run : plan.runs()) {
        String outlet = run.outlet() == null ? "-" : run.outlet().name().text();
        if (run.setup() != null) {
          boolean first = seen.add(plan.name() + " " + run.setup().name() + " on " + outlet);
          made += first && WiringSize.height(plan, run, run.setup()) > 0 ? 1 : 0;
          all++;
        }
      }
    }
    assertTrue(made <= all / 5, made + " of " + all);
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
