package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.plan.PlanStep;
import passband.plan.PlanStep.Kind;
import passband.testing.Snippet;

/** What was pressed is let go of once: in the words of the instrument where they name it. */
class HeldTest {
  private static final String SOURCE =
      """
      device oak "Oak" {
        outlet only "Only" {
          pole    left  "left pin"
          pole    right "right pin"
          contact wired "wired contact"
          contact bare  "TRY button" by hand
        }
        outlet foot "Foot socket" {
          contact pedal "pedal"
        }
        mode hum "Hum" on only {
          setting power 10 W to 20 W step 10 W
          load    100 ohm
          peak-voltage at most 200 V
          duty    continuous
          activate by wired, bare, foot.pedal
        }
        action select "Press {mode}."
        action adjust "Turn to {setting}."
      }
      analyzer elm "Elm" {
        jack high "HIGH"
        jack low  "LOW"
        key  go   "GO"
        settle 3 s
        load from high to low {
          values 100 ohm
          error  0.5 %
          power  100 W continuous
        }
        measure current {
          range      10 mA to 2 A
          resolution 0.1 mA
          error      0.1 %
        }
        STOP
      }
      leads oak-leads {
        lead red   "red lead",   rated 2 kV
        lead black "black lead", rated 2 kV
        lead grey  "grey lead",  rated 2 kV
        accessory step "footswitch"
      }
      procedure oak-output "Oak" {
        revision "A" on 2026-11-02
        device   oak
        analyzer elm
        leads    oak-leads
        caution burn      "High-frequency output burns."
        caution authority "The maker's service manual comes first."
        setup all "All" {
          connect red   from outlet.left  to analyzer.high
          connect black from outlet.right to analyzer.low
          connect grey  from outlet.wired to analyzer.go
          connect step  at device.foot.pedal
        }
        test hum-output "Hum" {
          outlet only
          setup  all
          accept power within 20 % of setting, read as current
          table {
            mode | setting/W | load/ohm | activation
            hum  | 10, 20    | 100      | CONTACT
          }
          BLOCK
        }
      }
      """;

  private static List<String> stops(String contact, String stop, String block) {
    Snippet snippet =
        Snippet.compile(
            SOURCE.replace("CONTACT", contact).replace("STOP", stop).replace("BLOCK", block));
    List<String> stops = new ArrayList<>();
    for (PlanStep step : snippet.plan().points().get(0).steps()) {
      if (step.standsFor(Kind.STOP)) {
        stops.add(step.text());
      }
    }
    return stops;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "wired; Let go of “GO” and press END.",
        "bare; Let go of “TRY button” and press END.",
        "foot.pedal; Let go of “pedal” of the footswitch and press END."
      })
  void theInstrumentsWordsNameIt(String contact, String said) {
    String stop = "action stop \"Let go of {held} and press END.\"";
    assertEquals(List.of(said), stops(contact, stop, ""));
    String block = "each replacing stop {\n perform analyzer.stop\n }";
    assertEquals(1, stops(contact, stop, block).size());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "wired; Press END.",
        "bare; Let go of the “TRY button”. Press END.",
        "foot.pedal; Let go of the “pedal” of the footswitch. Press END."
      })
  void elseTheSheetSaysItForAHand(String contact, String said) {
    assertEquals(List.of(said), stops(contact, "action stop \"Press END.\"", ""));
  }

  private static final String ALARM =
      """
      test alarm "Alarm" {
        outlet only
        setup  all
        output off
        allow  too-coarse because "The load has steps of 5 ohm."
        sweep  load up from 50 ohm to 200 ohm step 5 ohm until "the alarm sounds" as trip
        accept trip from 100 ohm to 150 ohm
      }
      test hum-output""";

  /** Where output is off nobody holds anything: the sheet does not send a hand to a key. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {"Let go of {held} and press END.; 1", "Let go of the key and press END.; 0"})
  void nothingIsHeldWhereOutputIsOff(String words, int errors) {
    Snippet snippet =
        Snippet.compile(
            SOURCE
                .replace("test hum-output", ALARM)
                .replace("values 100 ohm", "values 50 ohm to 200 ohm step 5 ohm")
                .replace("CONTACT", "wired")
                .replace("STOP", "action stop \"" + words + "\"")
                .replace("BLOCK", ""));
    List<Diagnostic> said = snippet.diagnostics().stream().filter(Diagnostic::isError).toList();
    assertEquals(errors, said.size(), said.toString());
    for (Diagnostic one : said) {
      assertEquals(Code.UNKNOWN_PLACEHOLDER, one.code());
      assertEquals("nothing is held that '{held}' could name", one.message());
    }
  }

  /** With the output off nothing is held: what is said then is another action that stops. */
  @Test
  void whereNothingIsHeldNothingIsLetGoOf() {
    String off =
        SOURCE.replace(
            "test hum-output",
            "test quiet \"Quiet\" {\n outlet only\n setup all\n output off\n"
                + " accept current at most 20 mA\n table {\n load/ohm\n 100\n }\n }\n"
                + " test hum-output");
    String stop = "action stop \"Let go of {held} and press END.\"";
    String rest = stop + "\n action rest \"Press END.\" as stop";
    List<String> said = new ArrayList<>();
    for (PlanStep step : quiet(off, rest).plan().points().get(0).steps()) {
      if (step.standsFor(Kind.STOP)) {
        said.add(step.text());
      }
    }
    assertEquals(List.of("Press END."), said);
    List<String> codes = new ArrayList<>();
    quiet(off, stop).diagnostics().forEach(one -> codes.add(one.code().id()));
    assertTrue(codes.contains("unknown-placeholder"), codes.toString());
  }

  private static Snippet quiet(String source, String stop) {
    return Snippet.compile(
        source.replace("STOP", stop).replace("CONTACT", "wired").replace("BLOCK", ""));
  }
}
