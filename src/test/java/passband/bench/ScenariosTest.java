package passband.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.plan.Act;
import passband.plan.Stage;
import passband.testing.Snippet;

/** One slip in a whole service visit: what is said of it, and where. */
class ScenariosTest {
  private static final String VISIT = read();

  private static final String RATED = "test mono-rated \"Rated load\" {\n";

  private static String read() {
    try (InputStream in = ScenariosTest.class.getResourceAsStream("/bench/visit.pband")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /** A change of the visit: each old text by its new one. */
  private static String with(String... changes) {
    String source = VISIT;
    for (int i = 0; i < changes.length; i += 2) {
      assertTrue(source.contains(changes[i]), changes[i]);
      source = source.replace(changes[i], changes[i + 1]);
    }
    return source;
  }

  /** The setup named, without one of its lines. */
  private static String without(String setup, String line) {
    int start = VISIT.indexOf("  setup " + setup + " ");
    int at = VISIT.indexOf(line, start);
    assertTrue(start > 0 && at > start, setup);
    return VISIT.substring(0, at) + VISIT.substring(VISIT.indexOf('\n', at) + 1);
  }

  private static Arguments found(
      String name, Code code, String at, String note, String... sources) {
    return Arguments.of(name, code, at, note, sources[0]);
  }

  static Stream<Arguments> slips() {
    return Stream.of(
        found(
            "a test without a mode that does not say it delivers nothing",
            Code.MISSING_ITEM,
            "alarm-up",
            null,
            with("    output off\n    sweep", "    sweep")),
        found(
            "words in the place of what stops the output",
            Code.STOP_EMPTIED,
            "each replacing stop",
            null,
            with(RATED, RATED + "    each replacing stop { do \"Look at the screen.\" }\n")),
        found(
            "free work in the place of a reading that is watched",
            Code.ACTS_WHILE_ON,
            "do \"Swap the leads.\"",
            "slice | 5, 20, 85, 170 | 350",
            with(
                RATED,
                RATED + "    each replacing read { do \"Swap the leads.\" }\n",
                "  action hold     \"Press KEEP; the display stands still.\"\n",
                "")),
        found(
            "an on-time that ends before the reading has settled",
            Code.ON_TIME_SHORT,
            "2 s",
            "3 s",
            with(RATED, RATED + "    on-time 2 s\n")),
        found(
            "two contacts that both activate the mode",
            Code.ACTIVATION_AMBIGUOUS,
            "slice | 5, 20, 85, 170 | 350",
            null,
            with(
                "    connect blue   from outlet.blue         to rf.key-2\n",
                "    connect footswitch at device.foot.cut, device.foot.coag, device.foot.pincers\n")),
        found(
            "the halves of the plate apart while output is delivered",
            Code.POLES_NOT_JOINED,
            "mono",
            "join half-a, half-b",
            without("mono", "    link    bar")),
        found(
            "output that a faulty generator would deliver into nothing",
            Code.CIRCUIT_OPEN,
            "unloaded",
            null,
            with(
                "  setup pedal ",
                """
                  setup unloaded "Plate on the box, nothing at the active socket" {
                    connect white from device.plate.half-a to box.a
                    connect brown from device.plate.half-b to box.b
                    connect footswitch at device.foot.cut, device.foot.coag
                  }
                  setup pedal\s""",
                "  test display ",
                """
                  test refused "Output is refused while the plate is off" {
                    outlet mono-1
                    setup  unloaded
                    output inhibited
                    accept power at most 1 W, read by device
                    table {
                      mode  | setting/W | load/ohm | activation
                      slice | 85        | 300      | foot.cut
                    }
                  }
                  test display\s""")),
        found(
            "a current through an open load",
            Code.NO_LOAD,
            "open",
            null,
            with(
                "225 ohm to 900 ohm step 25 ohm",
                "225 ohm to 900 ohm step 25 ohm, open",
                "slice | 120       | 100      | 72 ",
                "slice | 120       | open     | 72 ")),
        found(
            "an option before anybody was asked for it",
            Code.ASKED_LATER,
            "radio",
            null,
            with(
                "  section inspection ",
                "  section early \"Early\" {\n    when    radio is \"fitted\"\n"
                    + "    confirm early-paired \"It is paired.\"\n  }\n\n  section inspection ")),
        found(
            "two instruments that could show the current",
            Code.READER_AMBIGUOUS,
            "current",
            null,
            with(
                "analyzer knoll-2 \"Knoll 2 resistance box\" {\n",
                "analyzer knoll-2 \"Knoll 2 resistance box\" {\n  settle 1 s\n  measure current {\n"
                    + "    range 10 mA to 3 A\n    resolution 1 mA\n    error 1 %\n  }\n"
                    + "  action read \"Write down what it shows.\"\n")),
        found(
            "three phases around one adjustment",
            Code.REPEATED_ITEM,
            "afterwards",
            "trim",
            with(
                "  decision guarded\n",
                "  decision guarded\n  phases   as-found, as-left, afterwards\n",
                "  section radio-present ",
                "  adjust trim \"Trim\" affects mono-rated {\n"
                    + "    record trimmed \"What was adjusted\"\n  }\n\n"
                    + "  section radio-present ")),
        found(
            "an instrument that reads what only a bridge of its own joins",
            Code.CIRCUIT_OPEN,
            "bipo",
            "bipolar-rated",
            with(
                "    power  1 W continuous",
                "    power  200 W continuous",
                "from outlet.left         to rf.load-high",
                "from outlet.left         to box.a",
                "from outlet.right        to rf.load-low",
                "from outlet.right        to box.b")),
        found(
            "a load that is set at another instrument than the one that takes the output",
            Code.LOAD_NOT_WIRED,
            "350",
            "load from load-high to load-low",
            with(
                "values 20 ohm to 300 ohm step 1 ohm",
                "values 20 ohm to 500 ohm step 1 ohm",
                "mode  | setting/W      | load/ohm\n      slice",
                "mode  | setting/W      | box.load/ohm\n      slice")),
        found(
            "a stop of an instrument that did not turn the output on",
            Code.STOP_EMPTIED,
            "each replacing stop",
            "key-1",
            with(
                RATED,
                RATED + "    each replacing stop { perform box.halt }\n",
                "  action set-load \"Set the three dials to {load}.\"\n",
                "  action set-load \"Set the three dials to {load}.\"\n"
                    + "  action halt \"Press its button.\" as stop\n")),
        found(
            "a stop in the place of what turns the output on",
            Code.NOT_SET_AT_READING,
            "mono-rated",
            "slice | 5, 20, 85, 170 | 350",
            with(RATED, RATED + "    each replacing activate { perform standby }\n")),
        found(
            "output that is turned on before the first point",
            Code.WRONG_KIND,
            "perform rf.activate",
            null,
            with(RATED, RATED + "    before { perform rf.activate }\n")),
        found(
            "output that is turned on after a point",
            Code.WRONG_KIND,
            "perform rf.activate",
            null,
            with(
                RATED,
                RATED + "    each { perform rf.activate }\n",
                "\"Hold down {key}.\"",
                "\"Hold down the key.\"")),
        found(
            "a leakage of the output where output is never on",
            Code.WRONG_KIND,
            "hf-leakage",
            "output off",
            with("accept trip from", "accept hf-leakage at most 1 mA\n    accept trip from")),
        found(
            "a setting without the mode that it is of",
            Code.MISSING_COLUMN,
            "setting/W",
            null,
            with(
                "  test mono-rated ",
                """
                  test quiet "Quiet" {
                    outlet plate
                    setup  monitor
                    output off
                    accept power at most 1 W, read by device
                    table {
                      setting/W
                      20
                    }
                  }
                  test mono-rated\s""")),
        found(
            "a step that turns the output on, said to stop it",
            Code.WRONG_KIND,
            "stop",
            null,
            with("\"Hold down {key}.\"", "\"Hold down {key}.\" as stop")));
  }

  /** Each step of a point but {@code stop}, which has a fault of its own. */
  @ParameterizedTest
  @ValueSource(strings = {"select", "adjust", "set-load", "start", "activate", "read"})
  void aBlockWithoutStepsIsSaidOnceWhateverStepItTakesAway(String step) {
    Snippet snippet =
        Snippet.compile(with(RATED, RATED + "    each replacing " + step + " {\n    }\n"));
    assertEquals(List.of(Code.MISSING_ITEM.id()), snippet.codes(), snippet.report());
    assertEquals("each replacing " + step, text(snippet));
  }

  private static String text(Snippet snippet) {
    return snippet.diagnostics().get(0).span().text().strip();
  }

  /** However many tests come after one that sets it. */
  @Test
  void aSettingThatNothingBringsToRestIsSaidOnce() {
    Snippet snippet =
        Snippet.compile(
            with(
                "  measure power {\n    range      1 W",
                "  setting boost \"Boost\" one of off, on\n"
                    + "  measure power {\n    range      1 W",
                "mode  | setting/W | load/ohm | target/W | tol/%",
                "mode  | setting/W | load/ohm | target/W | tol/% | boost",
                "| 72       | 25\n",
                "| 72       | 25    | off\n",
                "| 108      | 20\n",
                "| 108      | 20    | off\n",
                "| 91       | 20\n",
                "| 91       | 20    | on\n",
                "| 66       | 25\n",
                "| 66       | 25    | on\n"));
    assertEquals(List.of(Code.NOT_SET_AT_READING.id()), snippet.codes(), snippet.report());
  }

  /** A row without the setting tests its rest position, if it reads the same of the same mode. */
  @Test
  void theRestPositionIsTestedByRowsThatDoNotSetIt() {
    String[] boosted = {
      "  measure power {\n    range      1 W",
      "  setting boost \"Boost\" one of off, on leave off\n  measure power {\n    range      1 W",
      "      slice | 30        | 350      | yellow\n",
      "      slice | 30        | 350      | yellow | on\n",
      "      crust | 30        | 450      | blue\n",
      "      crust | 30        | 450      | blue   | on\n",
      "mode  | setting/W | load/ohm | activation\n      slice | 30",
      "mode  | setting/W | load/ohm | activation | boost\n      slice | 30"
    };
    List<String> changes = new ArrayList<>();
    for (int i : List.of(6, 7, 0, 1, 2, 3, 4, 5)) {
      changes.add(boosted[i]);
    }
    Snippet snippet = Snippet.compile(with(changes.toArray(String[]::new)));
    assertEquals(List.of(), snippet.codes(), snippet.report());
  }

  /** The foot comes off the pedal before anything else is done, whatever the block says. */
  @Test
  void aPedalIsLetGoOfBeforeWhatStandsInThePlaceOfStop() {
    String pedals = "test pedals \"Footswitch\" {\n";
    Snippet snippet =
        Snippet.compile(
            with(
                pedals,
                pedals
                    + "    each replacing stop {\n      perform rf.stop\n"
                    + "      do \"Look at the plate.\"\n    }\n"));
    assertEquals(List.of(), snippet.codes(), snippet.report());
    List<Moment> moments = Walk.of(snippet.plans().get(0), new Diagnostics());
    int looked = 0;
    for (int i = 0; i < moments.size(); i++) {
      if (moments.get(i).text().equals("Look at the plate.")) {
        Moment let = moments.get(i - 2);
        assertTrue(
            let.text().matches("Let go of the .* of the three-pedal footswitch\\."), let.text());
        assertTrue(!let.before().isOff() && let.after().isOff(), let.text());
        looked++;
      }
    }
    assertEquals(2, looked);
  }

  /** A line that is done again may have left it anywhere, so the end of the run brings it back. */
  @Test
  void aSettingThatARunMovesIsBroughtToRestThoughItsLastLineIsThere() {
    Snippet snippet =
        Snippet.compile(
            with(
                "  measure power {\n    range      1 W",
                "  setting boost \"Boost\" one of off, on leave off\n"
                    + "  measure power {\n    range      1 W",
                "mode  | setting/W | load/ohm | target/W | tol/%",
                "mode  | setting/W | load/ohm | target/W | tol/% | boost",
                "| 72       | 25\n",
                "| 72       | 25    | on\n",
                "| 108      | 20\n",
                "| 108      | 20    | on\n",
                "| 91       | 20\n",
                "| 91       | 20    | off\n",
                "| 66       | 25\n",
                "| 66       | 25    | off\n"));
    assertEquals(List.of(), snippet.codes(), snippet.report());
    for (Stage.Run run : snippet.plans().get(0).runs()) {
      boolean curve = run.test().text().equals("mono-curve");
      long back = run.after().stream().filter(step -> step.act() instanceof Act.Set).count();
      assertEquals(curve ? 1 : 0, back, run.test().text());
    }
  }

  @Test
  void theVisitItselfHasNoSlip() {
    Snippet snippet = Snippet.compile(VISIT);
    assertEquals(List.of(), snippet.codes(), snippet.report());
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("slips")
  void isSaidWhereItStands(String name, Code code, String at, String note, String source) {
    Snippet snippet = Snippet.compile(source);
    List<Diagnostic> errors = new ArrayList<>(snippet.diagnostics());
    errors.removeIf(d -> !d.code().id().equals(code.id()));
    assertTrue(!errors.isEmpty(), () -> name + "\n" + snippet.report());
    Diagnostic first = errors.get(0);
    assertEquals(at, first.span().text(), snippet.report());
    if (note != null) {
      assertTrue(
          first.notes().stream().anyMatch(n -> n.span().text().equals(note)), snippet.report());
    }
  }

  /** One panel for both outlets: what was set for one is not taken to be set for the other. */
  @Test
  void aSettingIsSaidAgainAfterAnotherOutletsOwn() {
    StringBuilder tests = new StringBuilder();
    String[] rows = {"mono-1", "20", "mono-2", "60", "mono-1", "20"};
    for (int i = 0; i < rows.length; i += 2) {
      tests.append(
          "  test again-%d \"Again %d\" {\n    outlet %s\n    setup mono\n    accept by rated-output\n    table {\n      mode | setting/W | load/ohm\n      slice | %s | 350\n    }\n  }\n\n"
              .formatted(i, i, rows[i], rows[i + 1]));
    }
    Snippet snippet = Snippet.compile(with("  test mono-curve ", tests + "  test mono-curve "));
    assertEquals(List.of(), snippet.codes(), snippet.report());
    long adjusted =
        Walk.of(snippet.plans().get(0), new Diagnostics()).stream()
            .filter(m -> m.point() != null && m.point().startsWith("again-"))
            .filter(m -> m.kind().equals("adjust"))
            .count();
    assertEquals(3, adjusted);
  }
}
