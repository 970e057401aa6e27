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
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
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
                    + "  section radio-present ")));
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
