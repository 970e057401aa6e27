package passband.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import passband.diagnostic.Diagnostics;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.testing.Examples;
import passband.testing.Sheets;
import passband.testing.Snippet;

/** What the bench is like at the readings of compiled procedures, and after them. */
class WalkTest {
  private static final List<Plan> PLANS = List.of(Sheets.TEASEL, Sheets.YARROW, Sheets.SUNDEW);

  private static final String MONO =
      """
      use "bench.pband"
      procedure example "Example" {
        revision "A" on 2026-01-31
        device gen
        analyzer %s
        leads set
        caution burn "Output burns."
        setup mono "Mono" {
          connect red   from outlet.active     to analyzer.high
          connect plate from device.back.plate to analyzer.low
          connect grey  from outlet.cut        to analyzer.key
        }
        test a "A" {
          outlet one, two
          setup  mono
          accept power from output, read as current
          table {
            mode | setting/W | load/ohm
            hew  | 20        | 400
          }
        }
        test b "B" {
          outlet one
          setup  mono
          accept power from output, read as current
          table {
            mode | setting/W | load/ohm
            hew  | 20, 60    | 400
          }
        }
      }
      """;

  private static List<Moment> walk(Plan plan) {
    return Walk.of(plan, new Diagnostics());
  }

  private static Map<String, Point> points(Plan plan) {
    Map<String, Point> points = new TreeMap<>();
    plan.points().forEach(point -> points.put(point.id(), point));
    return points;
  }

  /** The last moment of each point at which output is still on, or the last but one. */
  @Test
  void atEachReadingTheBenchIsWhatTheRowAsksFor() {
    int readings = 0;
    for (Plan plan : PLANS) {
      Map<String, Point> points = points(plan);
      for (Moment moment : walk(plan)) {
        if (moment.kind().equals("read")) {
          Point point = points.get(moment.point());
          BenchState bench = moment.before();
          assertEquals(point.mode() == null, bench.isOff(), point.id());
          if (point.mode() != null) {
            assertEquals(point.mode().title(), bench.value(Variable.MODE), point.id());
            assertEquals(point.outlet().title(), bench.value(Variable.OUTLET), point.id());
            assertEquals(point.setting().text(), bench.value(Variable.SETTING), point.id());
          }
          if (point.load() != null) {
            assertEquals(point.load().text(), bench.value(Variable.load("analyzer")), point.id());
          }
          readings++;
        }
      }
    }
    assertTrue(readings > 30, readings + " readings");
  }

  @Test
  void theLeadsAreThoseOfTheSetup() {
    for (Plan plan : PLANS) {
      Map<String, Stage.Run> runs = new TreeMap<>();
      plan.runs().forEach(run -> run.points().forEach(point -> runs.put(point.id(), run)));
      for (Moment moment : walk(plan)) {
        if (moment.point() != null) {
          long wired =
              moment.before().known().entrySet().stream()
                  .filter(e -> e.getKey().kind() == Variable.Kind.LEAD)
                  .filter(e -> !e.getValue().value().equals(BenchState.OFF))
                  .count();
          assertEquals(runs.get(moment.point()).setup().wires().size(), wired, moment.toString());
        }
      }
    }
  }

  @Test
  void atTheEndOutputIsOffAndStatesAreLeftAndSettingsAreBack() {
    for (Plan plan : PLANS) {
      List<Moment> moments = walk(plan);
      BenchState end = moments.get(moments.size() - 1).after();
      assertTrue(end.isOff());
      assertEquals(BenchState.NONE, end.value(Variable.INSIDE));
      end.known()
          .forEach(
              (what, known) ->
                  assertTrue(
                      what.kind() != Variable.Kind.LEAD || known.value().equals(BenchState.OFF),
                      what.words()));
    }
  }

  /** A knob that two outlets share is set anew for each: nothing is left over. */
  @Test
  void everyLineSetsModeSettingAndLoad() {
    Snippet snippet = Examples.compile(MONO.formatted("meter").getBytes());
    assertFalse(
        snippet.diagnostics().stream().anyMatch(d -> !d.code().allowable()),
        () -> snippet.report());
    Map<String, Long> kinds =
        walk(snippet.plans().get(0)).stream()
            .collect(Collectors.groupingBy(Moment::kind, Collectors.counting()));
    for (String kind : List.of("select", "adjust", "set-load", "activate", "read", "stop")) {
      assertEquals(4, kinds.get(kind), kind);
    }
  }

  /** Output goes off before anything is written where the instrument holds the reading. */
  @Test
  void aHeldReadingIsWrittenAfterTheStop() {
    String holding =
        """
        analyzer holder "Holder" {
          jack high "HIGH" floating
          jack low  "LOW"
          key  key  "KEY"
          settle 3 s
          load from high to low {
            values 10 ohm to 1 kohm step 10 ohm
            error  0.5 %
            power  200 W continuous
          }
          measure current {
            range      0.1 mA to 3 A
            resolution 0.1 mA
            error      0.2 % of reading + 0.1 mA
          }
          action hold "Press HOLD."
        }
        """;
    String source =
        MONO.formatted("holder").replace("procedure example", holding + "procedure example");
    Snippet snippet = Examples.compile(source.getBytes());
    assertFalse(
        snippet.diagnostics().stream().anyMatch(d -> !d.code().allowable()),
        () -> snippet.report());
    List<Moment> moments = walk(snippet.plans().get(0));
    String kinds =
        moments.stream()
            .filter(m -> "b/one/hew/60W/400ohm".equals(m.point()))
            .map(Moment::kind)
            .collect(Collectors.joining(" "));
    assertEquals("select adjust set-load start activate hold stop read rest", kinds);
    for (Moment moment : moments) {
      if (moment.kind().equals("read")) {
        assertNotNull(moment.point());
        assertTrue(moment.before().isOff());
        assertEquals("holding", moment.before().value(Variable.unit("analyzer")));
      }
    }
  }

  /** Everything that a point makes due is over before output comes again. */
  @Test
  void noRestIsDueWhereOutputComesOn() {
    int activations = 0;
    int rests = 0;
    for (Plan plan : PLANS) {
      for (Moment moment : walk(plan)) {
        if (moment.kind().equals("activate")) {
          assertEquals(Rational.ZERO, moment.before().strain().rest(), moment.toString());
          activations++;
        }
        if (moment.kind().equals("rest")) {
          assertTrue(moment.before().strain().rest().signum() > 0, moment.toString());
          rests++;
        }
      }
    }
    assertTrue(activations > 20 && rests > 10, activations + " activations, " + rests + " rests");
  }
}
