package passband.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.testing.Snippet;

/**
 * Circuits closed, open and shorted, on a bench with leakage jacks and a split return electrode.
 */
class CircuitTest {
  private static final String BENCH =
      """
      device gen "Gen" {
        outlet bip "Bipolar" {
          pole    left   "left"
          pole    right  "right"
          contact switch "switch"
        }
        outlet hand "Hand" {
          pole    tip "tip"
          contact cut "cut"
        }
        outlet plate "Plate" {
          pole a "half A"
          pole b "half B"
        }
        outlet case "Case" {
          earth stud "stud"
        }
        mode thin "Thin" on bip {
          setting power 1 W to 40 W step 1 W
          load    100 ohm
          peak-voltage at most 200 V
          duty    continuous
          activate by switch
        }
        mode hew "Hew" on hand through plate {
          setting power 1 W to 40 W step 1 W
          load    100 ohm
          peak-voltage at most 200 V
          duty    continuous
          activate by cut
        }
        mode spark "Spark" on hand through case {
          setting power 1 W to 40 W step 1 W
          load    100 ohm
          peak-voltage at most 200 V
          duty    continuous
          activate by cut
        }
        setting supply "Supply" one of normal, open leave normal
        action supply "Set {supply}."
        action select "Press {mode}."
        action adjust "Turn to {setting}."
      }
      analyzer meter "Meter" {
        jack high "HIGH" floating holds 2
        jack low  "LOW" holds 2
        jack in   "IN" floating holds 2
        jack out  "OUT" holds 2
        key  key  "KEY"
        settle 3 s
        load from high to low {
          values 10 ohm to 1 kohm step 10 ohm
          error  1 %
          power  400 W continuous
        }
        measure current {
          range 1 mA to 2 A
          resolution 1 mA
          error 1 %
        }
        measure hf-leakage from in to out {
          range 1 uA to 1 A
          resolution 1 uA
          error 1 %
        }
        measure touch-current from in to out {
          range 1 uA to 1 A
          resolution 1 uA
          error 1 %
        }
        action set-load "Set {load}."
        action start "Start."
        action read "Read."
        action stop "Stop."
      }
      leads set "Set" {
        lead one   "one",   rated 5 kV
        lead two   "two",   rated 5 kV
        lead three "three", rated 5 kV
        lead four  "four",  rated 5 kV
        link bar   "bar",   rated 5 kV
      }
      procedure p "P" {
        revision "A" on 2026-01-31
        device gen
        analyzer meter
        leads set
        caution burn "Burns."
        setup s "S" {
      %s
        }
        test t "T" {
          outlet %o
          setup s
          accept %a
          %t
        }
      }
      """;

  private static final String OUTPUT =
      """
      table {
            mode | setting/W | load/ohm
            MODE | 20 | 100
          }
      """;
  private static final String PASSIVE =
      """
      output off
          table {
            supply
            normal, open
          }
      """;

  private static List<String> circuit(String wires, String outlet, String accept, String table) {
    StringBuilder lines = new StringBuilder();
    for (String wire : wires.split(";")) {
      lines.append("      ").append(wire.strip()).append('\n');
    }
    Snippet snippet =
        Snippet.compile(
            BENCH
                .replace("%s", lines.toString().stripTrailing())
                .replace("%o", outlet)
                .replace("%a", accept)
                .replace("%t", table));
    List<String> found =
        snippet.codes().stream()
            .filter(c -> c.startsWith("circuit") || c.equals("return-missing"))
            .toList();
    assertTrue(
        !found.isEmpty() || snippet.diagnostics().stream().noneMatch(d -> !d.code().allowable()),
        snippet.report());
    return found;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        // through the load, either way round
        "connect one from outlet.left to analyzer.high; connect two from outlet.right to analyzer.low | -",
        "connect one from outlet.right to analyzer.high; connect two from outlet.left to analyzer.low | -",
        // both poles on one end of the load
        "connect one from outlet.left to analyzer.high; connect two from outlet.right to analyzer.high | circuit-shorted",
        // one pole only, or the other on a jack without the load
        "connect one from outlet.left to analyzer.high | circuit-open",
        "connect one from outlet.left to analyzer.high; connect two from outlet.right to analyzer.in | circuit-open",
        // the load bridged; a jumper elsewhere does no harm
        "connect one from outlet.left to analyzer.high; connect two from outlet.right to analyzer.low; link bar from analyzer.high to analyzer.low | circuit-shorted",
        "connect one from outlet.left to analyzer.high; connect two from outlet.right to analyzer.low; link bar from analyzer.in to analyzer.out | -",
        "connect one from outlet.left to analyzer.high; link bar from analyzer.high to analyzer.low | circuit-shorted",
        // over a detour
        "connect one from outlet.left to analyzer.in; link bar from analyzer.in to analyzer.high; connect two from outlet.right to analyzer.low | -"
      })
  void outputBetweenTwoPoles(String wires, String code) {
    String key = "; connect three from outlet.switch to analyzer.key";
    assertEquals(
        code == null ? List.of() : List.of(code),
        circuit(
            wires + key, "bip", "current from 100 mA to 900 mA", OUTPUT.replace("MODE", "thin")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "connect one from outlet.tip to analyzer.high; connect two from device.plate.a to analyzer.low | -",
        "connect one from outlet.tip to analyzer.low; connect two from device.plate.b to analyzer.high | -",
        "connect one from outlet.tip to analyzer.high | return-missing",
        "connect one from outlet.tip to analyzer.high; connect two from device.plate.a to analyzer.in | circuit-open",
        "connect one from outlet.tip to analyzer.high; connect two from device.case.stud to analyzer.low | return-missing",
        "connect one from outlet.tip to analyzer.high; connect two from device.plate.a to analyzer.high | circuit-shorted"
      })
  void outputThroughTheReturnElectrode(String wires, String code) {
    String key = "; connect three from outlet.cut to analyzer.key";
    assertEquals(
        code == null ? List.of() : List.of(code),
        circuit(
            wires + key, "hand", "current from 100 mA to 900 mA", OUTPUT.replace("MODE", "hew")));
  }

  /** Each mode of a test has a circuit of its own, whichever comes first. */
  @ParameterizedTest
  @CsvSource({"hew,spark", "spark,hew"})
  void eachModeOfOneTest(String first, String second) {
    String wires =
        "connect one from outlet.tip to analyzer.high; connect two from device.plate.a to"
            + " analyzer.low; connect three from outlet.cut to analyzer.key";
    String rows =
        OUTPUT.replace("MODE | 20 | 100", first + " | 20 | 100\n" + second + " | 20 | 100");
    assertEquals(
        List.of("return-missing"), circuit(wires, "hand", "current from 100 mA to 900 mA", rows));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "connect one from outlet.tip to analyzer.in; connect two from device.case.stud to analyzer.out | -",
        "connect one from outlet.tip to analyzer.out; connect two from device.case.stud to analyzer.in | -",
        "connect one from outlet.tip to analyzer.in | circuit-open",
        "connect two from device.case.stud to analyzer.out | circuit-open",
        "connect one from outlet.tip to analyzer.in; connect two from device.case.stud to analyzer.out; link bar from analyzer.in to analyzer.out | circuit-shorted",
        "connect one from outlet.tip to analyzer.high; connect two from device.case.stud to analyzer.low | circuit-open"
      })
  void leakageUnderOutput(String wires, String code) {
    String key = "; connect three from outlet.cut to analyzer.key";
    assertEquals(
        code == null ? List.of() : List.of(code),
        circuit(wires + key, "hand", "hf-leakage at most 100 mA", OUTPUT.replace("MODE", "hew")));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "connect one from outlet.a to analyzer.in; connect two from device.case.stud to analyzer.out | -",
        "connect one from outlet.a to analyzer.in | circuit-open",
        "connect one from outlet.a to analyzer.in; connect two from device.case.stud to analyzer.out; link bar from analyzer.out to analyzer.in | circuit-shorted"
      })
  void leakageWithoutOutput(String wires, String code) {
    assertEquals(
        code == null ? List.of() : List.of(code),
        circuit(wires, "plate", "touch-current at most 100 uA", PASSIVE));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "connect one from outlet.a to analyzer.high; connect two from outlet.b to analyzer.low | -",
        "connect one from outlet.b to analyzer.high; connect two from outlet.a to analyzer.low | -",
        "connect one from outlet.a to analyzer.high | circuit-open",
        "connect one from outlet.a to analyzer.high; connect two from outlet.b to analyzer.high | circuit-open"
      })
  void aSweptLoad(String wires, String code) {
    assertEquals(
        code == null ? List.of() : List.of(code),
        circuit(
            wires,
            "plate",
            "trip from 50 ohm to 150 ohm",
            "output off\n    sweep load up from 10 ohm to 200 ohm step 10 ohm until \"it beeps\" as trip"));
  }
}
