package passband.edit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.diagnostic.Diagnostic;
import passband.plan.Meaning;
import passband.testing.Snippet;

/**
 * What a beginner writes from habit: each slip is an error whose fix gives back a file about which
 * nothing is said and that means the same; the message names what is to be written.
 */
public class BeginnersSlipsTest {
  private static final String SOURCE =
      """
      device gale "Gale" {
        outlet mono "Mono" {
          pole    active "active socket"
          contact switch "switch contact"
        }
        outlet plate "Plate" {
          pole socket "plate socket"
        }
        mode hew "Hew" on mono through plate {
          setting  power 1 W to 80 W step 1 W
          load     0.5 kohm
          output   power within +20 % -20 % of setting
          peak-voltage at most 1.2 kV
          duty     10 s on, 20 s off
          activate by switch
        }
        measure rate {
          range      1 kHz to 5 MHz
          resolution 1 kHz
          error      1 %
        }
        action select "Press {mode} on the panel."
        action adjust "Turn the knob to {setting}."
      }

      analyzer meter "Meter" {
        jack high "HIGH" floating
        jack low  "LOW" floating
        key  go   "GO"
        settle 3 s
        load from high to low {
          values 50 ohm to 1 kohm step 50 ohm
          error  0.5 %
          power  300 W for 10 s, 50 W continuous
        }
        measure current {
          range      10 mA to 2 A
          resolution 0.1 mA
          error      0.2 % of reading + 0.2 mA
        }
        action set-load "Turn LOAD to {load}."
        action start    "Press START."
        action read     "Write down the display."
        action stop     "Press STOP; the lamp must go out."
      }

      leads drawer "Drawer" {
        lead red   "red lead",   rated 2 kV
        lead black "black lead", rated 2 kV
        lead blue  "blue lead",  rated 2 kV
      }

      procedure gale-output "Gale: output" {
        revision "A" on 2026-11-20
        device   gale
        analyzer meter
        leads    drawer
        decision simple

        # No output before this.
        caution burn      "High-frequency output burns. Touch no lead."
        caution authority "The maker's service manual comes first."

        setup mono-load "Mono into the load" {
          connect red   from outlet.active       to analyzer.high
          connect black from device.plate.socket to analyzer.low
          connect blue  from outlet.switch       to analyzer.go
        }

        test hew-output "Hew" {
          outlet mono
          setup  mono-load
          accept power within 20 % of setting, read as current
          table {
            mode | setting/W | load/ohm | stated power/W
            hew  | 1         | 500      | 0.8 to 1.2
            hew  | 40        | 500      | 32 to 48
            hew  | 80        | 500      | 64 to 96
          }
        }
        test hew-window "Hew, window" {
          outlet mono
          setup  mono-load
          accept current from 225 mA to 260 mA
          allow  rule-tighter-than-mode because "A window of our own."
          table {
            mode | setting/W | load/ohm
            hew  | 30        | 500
          }
        }
      }
      """;

  /** A slip: what is written, in the place of what, and a part of what the message says. */
  private record Slip(String proper, String written, String says) {
    @Override
    public String toString() {
      return proper.strip() + " as " + written.strip();
    }
  }

  private static Slip slip(String proper, String written, String says) {
    return new Slip(proper, written, says);
  }

  static List<Slip> slips() {
    String atMost = "peak-voltage at most 1.2 kV";
    String share = "accept power within 20 % of setting";
    String row = "hew  | 40        | 500      | 32 to 48";
    String settle = "settle 3 s";
    return List.of(
        slip(atMost, "peak-voltage max 1.2 kV", "at most"),
        slip(atMost, "peak-voltage max. 1.2 kV", "at most"),
        slip(atMost, "peak-voltage maximum 1.2 kV", "at most"),
        slip(atMost, "peak-voltage MAX 1.2 kV", "at most"),
        slip(atMost, "peak-voltage <= 1.2 kV", "at most"),
        slip(atMost, "peak-voltage ≤ 1.2 kV", "at most"),
        slip(atMost, "peak-voltage ≤1.2 kV", "at most"),
        slip(atMost, "peak-voltage < 1.2 kV", "at most"),
        slip(atMost, "peak-voltage up to 1.2 kV", "at most"),
        slip(atMost, "peak-voltage at most 1,2 kV", "1.2"),
        slip(atMost, "peak-voltage at most 1.2 kv", "kV"),
        slip(atMost, "peak-voltage at most 1.2 KV", "kV"),
        slip(atMost, "peak-voltage at most 1.2kV", ""),
        slip(atMost, "peak-voltage at most 1.2\u00a0kV", ""),
        slip(atMost, "peak-voltage at\u00a0most 1.2 kV", ""),
        slip(atMost, "peak-voltage at most 1.2\u202fkV", ""),
        slip(share, "accept power ± 20 % of setting", "within"),
        slip(share, "accept power ±20% of setting", "within"),
        slip(share, "accept power +/- 20 % of setting", "within"),
        slip(share, "accept power +/-20% of setting", "within"),
        slip(share, "accept power within ± 20 % of setting", "within"),
        slip(share, "accept power within +/- 20 % of setting", "within"),
        slip("within +20 % -20 %", "within +20 % −20 %", "-20"),
        slip("within +20 % -20 %", "within +20 % –20 %", "-20"),
        slip(share, "accept power within 20 percent of setting", "%"),
        slip(share, "accept power 20 % of setting", "within"),
        slip(share, "accept power within 20 % of the setting", "of setting"),
        slip(share, "Accept power within 20 % of setting", "accept"),
        slip(share, "ACCEPT power within 20 % of setting", "accept"),
        slip("32 to 48", "32-48", "32 to 48"),
        slip("32 to 48", "32 - 48", "32 to 48"),
        slip("32 to 48", "32–48", "32 to 48"),
        slip("32 to 48", "32 — 48", "32 to 48"),
        slip("32 to 48", "32−48", "32 to 48"),
        slip("32 to 48", "32..48", "32 to 48"),
        slip("32 to 48", "32…48", "32 to 48"),
        slip("32 to 48", "40 ± 8", "32 to 48"),
        slip("0.8 to 1.2", "0,8 to 1,2", "0.8"),
        slip("0.8 to 1.2", "0,8 – 1,2", "0.8 to 1.2"),
        slip("current from 225 mA to 260 mA", "current 225-260 mA", "from 225 mA to 260 mA"),
        slip("current from 225 mA to 260 mA", "current from 225–260 mA", "225 mA to 260 mA"),
        slip("current from 225 mA to 260 mA", "current between 225 mA and 260 mA", "from"),
        slip("current from 225 mA to 260 mA", "current 225 mA to 260 mA", "from"),
        slip("current from 225 mA to 260 mA", "current from 225 ma to 260 ma", "mA"),
        slip("current from 225 mA to 260 mA", "current from 225 MA to 260 mA", ""),
        slip("\"Hew\" on", "“Hew” on", "\"Hew\""),
        slip("\"Hew\" on", "„Hew“ on", "\"Hew\""),
        slip("\"Hew\" on", "«Hew» on", "\"Hew\""),
        slip("\"Hew\" on", "'Hew' on", "\"Hew\""),
        slip("\"Hew\" on", "‘Hew’ on", "\"Hew\""),
        slip("\"Hew\" on", "\"Hew” on", "\"Hew\""),
        slip("hew-output \"Hew\" {", "hew-output \"Hew {", "\"Hew\""),
        slip("jack high \"HIGH\"", "jack high \"HIGH", "\"HIGH\""),
        slip("\"black lead\",", "\"black lead,", "\"black lead\""),
        slip("jack high \"HIGH\"", "jack high HIGH", "\"HIGH\""),
        slip("0.5 kohm", "0.5 k\u2126", ""),
        slip("0.5 kohm", "0.5 kΩ", ""),
        slip("0.5 kohm", "0.5 Kohm", "kohm"),
        slip("0.5 kohm", "0.5 kOhm", "kohm"),
        slip("0.5 kohm", "0.5 KOHM", "kohm"),
        slip("0.5 kohm", "0,5 kohm", "0.5"),
        slip("0.5 kohm", "500 Ohm", "ohm"),
        slip("0.5 kohm", "500 OHM", "ohm"),
        slip("0.5 kohm", "500 ohms", "ohm"),
        slip("0.5 kohm", "500 \u2126", ""),
        slip("0.5 kohm", "500 R", "ohm"),
        slip("resolution 1 kHz", "resolution 1 khz", "kHz"),
        slip("resolution 1 kHz", "resolution 1 KHz", "kHz"),
        slip("resolution 1 kHz", "resolution 1 kHZ", "kHz"),
        slip("reading + 0.2 mA", "reading + 200 \u00b5A", ""),
        slip("reading + 0.2 mA", "reading + 200 \u03bcA", ""),
        slip("load/ohm |", "load/\u2126 |", ""),
        slip("load/ohm |", "load/Ω |", ""),
        slip("load/ohm |", "load/Ohm |", "ohm"),
        slip("load/ohm |", "load (ohm) |", "load/ohm"),
        slip("setting/W |", "setting [W] |", "setting/W"),
        slip("setting/W |", "Setting/W |", "setting"),
        slip(row, "hew\t40\t500\t32 to 48", "|"),
        slip(row, "hew\t40\t500\t32–48", "|"),
        slip(row, "| hew | 40 | 500 | 32 to 48 |", ""),
        slip(row, "hew ; 40 ; 500 ; 32 to 48", "|"),
        slip("on mono through plate", "on mono", "through plate"),
        slip("# No output", "// No output", "#"),
        slip("# No output", "/* No output", "#"),
        slip("# No output", "-- No output", "#"),
        slip("# No output", "; No output", "#"),
        slip(settle, "settle 3 s // stable", "#"),
        slip(settle, "settle 3 sec", "s"),
        slip(settle, "settle 3 S", "s"),
        slip(settle, "settle: 3 s", "settle 3 s"),
        slip(settle, "settle = 3 s", "settle 3 s"),
        slip(settle, "settle 3 s;", "settle 3 s"),
        slip("2026-11-20", "20.11.2026", "2026-11-20"),
        slip("2026-11-20", "2026–11–20", "2026-11-20"),
        slip("revision \"A\"", "revision A", "\"A\""),
        slip("setup  mono-load", "setup  mono_load", "mono-load"),
        slip("setup  mono-load", "setup  mono–load", "mono-load"),
        slip("step 50 ohm", "by 50 ohm", "step"),
        slip("1 W to 80 W step 1 W", "1-80 W step 1 W", "1 W to 80 W"),
        slip("1 W to 80 W step 1 W", "1 W - 80 W step 1 W", "1 W to 80 W"),
        slip("1 W to 80 W step 1 W", "1…80 W step 1 W", "1 W to 80 W"));
  }

  /** The source without a slip. */
  public static String source() {
    return SOURCE;
  }

  /** By what is written in the place of what, the source with each slip that is said. */
  public static Map<String, String> written() {
    Map<String, String> all = new LinkedHashMap<>();
    for (Slip slip : slips()) {
      int at = SOURCE.indexOf(slip.proper);
      String source =
          SOURCE.substring(0, at) + slip.written + SOURCE.substring(at + slip.proper.length());
      if (!said(source).isEmpty()) {
        all.put(slip.toString(), source);
      }
    }
    return all;
  }

  private static List<Diagnostic> said(String source) {
    return Snippet.compile(source).diagnostics();
  }

  @Test
  void theSourceIsClean() {
    assertEquals("", Snippet.compile(SOURCE).report());
  }

  @ParameterizedTest
  @MethodSource("slips")
  void theFixGivesACleanFileThatMeansTheSame(Slip slip) {
    assertTrue(SOURCE.contains(slip.proper), slip.proper);
    String source =
        SOURCE.replaceFirst(
            java.util.regex.Pattern.quote(slip.proper),
            java.util.regex.Matcher.quoteReplacement(slip.written));
    List<Diagnostic> first = said(source);
    if (first.isEmpty()) {
      assertEquals("", slip.says, "nothing is said: it is read as it stands");
    }
    boolean named = slip.says.isEmpty();
    StringBuilder path = new StringBuilder(Snippet.compile(source).report());
    for (int i = 0; i < 4 && !said(source).isEmpty(); i++) {
      Diagnostic one =
          said(source).stream().filter(d -> !d.fixes().isEmpty()).findFirst().orElse(null);
      assertFalse(one == null, () -> "no fix\n" + path);
      String text = one.message() + " " + one.hint() + " " + one.fixes().get(0).title();
      named |= text.contains(slip.says);
      source = FixTest.applied(source, one.fixes().get(0));
      path.append("-- after ").append(one.fixes().get(0).title()).append('\n');
      path.append(Snippet.compile(source).report());
    }
    String end = source;
    assertEquals("", Snippet.compile(end).report(), path::toString);
    assertTrue(named, () -> "it does not name " + slip.says + "\n" + path);
    assertEquals(
        Meaning.of(Snippet.compile(SOURCE).plan()).digest(),
        Meaning.of(Snippet.compile(end).plan()).digest(),
        end);
  }
}
