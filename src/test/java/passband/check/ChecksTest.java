package passband.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.diagnostic.Code;
import passband.plan.Plan;
import passband.testing.Snippet;

/** A procedure without a fault, and what is said when one thing in it is changed. */
class ChecksTest {
  private static final String SOUND =
      """
      device gen "Gen" {
        outlet bip "Bipolar" {
          pole    left   "left"
          pole    right  "right"
          contact switch "switch"
          contact second "second"
        }
        outlet case "Case" {
          earth stud "stud"
        }
        outlet pedal "Pedal" {
          contact down "down"
        }
        mode thin "Thin" on bip {
          setting power 0 W to 40 W step 1 W
          load    100 ohm
          output  power within 20 % of setting
          peak-voltage at most 200 V
          duty    6 s on, 20 s off
          activate by switch
        }
        setting supply "Supply" one of normal, open leave normal
        action supply "Set {supply}."
        action select "Press {mode}."
        action adjust "Turn to {setting}."
      }
      analyzer meter "Meter" {
        jack high "HIGH" floating holds 2
        jack low  "LOW" holds 2
        jack ref  "REF" holds 2
        jack in   "IN" floating
        jack out  "OUT"
        key  key  "KEY"
        key  two  "KEY 2"
        settle 3 s
        load from high to low {
          values 10 ohm to 1 kohm step 10 ohm
          error  0.1 %
          power  400 W continuous
        }
        measure current {
          range 1 mA to 2 A
          resolution 0.1 mA
          error 0.1 %
        }
        measure voltage {
          range 100 mV to 500 V
          resolution 0.1 V
          error 0.1 %
        }
        measure peak-voltage {
          range 100 mV to 500 V
          resolution 0.1 V
          error 0.1 %
        }
        measure hf-leakage from in to out {
          range 1 uA to 1 A
          resolution 1 uA
          error 0.1 %
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
        link bar   "bar",   rated 5 kV
        link bar-2 "bar 2", rated 5 kV
        lead four  "four",  rated 5 kV
        lead five  "five",  rated 5 kV
        lead six   "six",   rated 5 kV
      }
      procedure p "P" {
        revision "A" on 2026-01-31
        device gen
        analyzer meter
        leads set
        caution burn "Burns."
        setup s "S" {
          connect one   from outlet.left to analyzer.high
          connect two   from outlet.right to analyzer.low
          connect three from outlet.switch to analyzer.key
          link bar from analyzer.low to analyzer.ref
          link bar-2 from analyzer.in to analyzer.out
          connect four from outlet.second to analyzer.two
          connect five from device.case.stud to analyzer.in
        }
        test t "T" {
          outlet bip
          setup s
          accept power from output, read as current
          table {
            mode | setting/W | load/ohm
            thin | 5, 20, 40 | 100
          }
        }
      }
      """;

  private static Snippet changed(String from, String to) {
    assertTrue(SOUND.contains(from), from);
    return Snippet.compile(SOUND.replace(from, to.replace("; ", "\n")));
  }

  private static List<String> codes(Snippet snippet) {
    List<String> codes = new ArrayList<>(snippet.codes());
    codes.removeIf(
        c ->
            c.equals(Code.UNUSED_NAME.id())
                || c.equals(Code.SETTING_UNTESTED.id())
                || c.equals(Code.OUTLET_UNTESTED.id()));
    return codes;
  }

  @Test
  void itIsSoundButForALeadThatNoSetupTakes() {
    Snippet snippet = Snippet.compile(SOUND);
    assertEquals(List.of("unused-name"), snippet.codes(), snippet.report());
    assertTrue(snippet.report().contains("no setup uses the lead 'six'"), snippet.report());
  }

  private static final String RATING = "power  400 W continuous";

  /** Greatest powers are 6, 24 and 48 W for 3 s, with rests of 10 s. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "power  48 W continuous              | -",
        "power  47.9 W continuous            | not rated for 48 W for 3 s",
        "power  48 W for 2.9 s, 5 W continuous | not rated for 6 W for 3 s",
        "power  48 W for 3 s, 5 W continuous | overheats the load at 48 W",
        "power  48 W for 3 s, 10 W continuous | -",
        "power  100 W for 2 s, 48 W for 3 s, 10 W continuous | -",
        "power  unknown because \"x\"        | -"
      })
  void theLoadsPower(String rating, String said) {
    Snippet snippet = changed(RATING, rating);
    if (said == null) {
      assertEquals(List.of(), codes(snippet), snippet.report());
    } else {
      assertEquals(List.of("load-overpowered"), codes(snippet), snippet.report());
      assertTrue(snippet.report().contains(said), snippet.report());
    }
  }

  /**
   * The greatest powers, 6, 24 and 48 W for 3 s, into a load that takes 48 W for 3 s and 5 W
   * continuously, so holds (48 - 5) W x 3 s = 129 J. After 24 W it has 57 J, of which a rest of 10
   * s takes 50 J: 7 J too much for the next point, and 2 J after another second.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "each { wait 1 s }                                | overheats the load at 48 W",
        "each { wait 2 s }                                | -",
        "each { do \"Wait for 2 s.\" }                    | overheats the load at 48 W",
        "before { wait 60 s }                             | overheats the load at 48 W",
        "on-time 6 s                                      | not rated for 6 W for 6 s",
        "each { wait 2 s }; each replacing read { wait 3 s; confirm \"Read.\" } | -"
      })
  void theLoadCoolsWhileTheSheetWaits(String line, String said) {
    String source =
        SOUND
            .replace(RATING, "power 48 W for 3 s, 5 W continuous")
            .replace("accept power from", line.replace("; ", "\n") + "\naccept power from");
    Snippet snippet = Snippet.compile(source);
    if (said == null) {
      assertEquals(List.of(), codes(snippet), snippet.report());
    } else {
      assertTrue(snippet.report().contains(said), snippet.report());
    }
  }

  /**
   * A generator that delivers nothing stays below every upper limit: such a line covers nothing.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "peak-voltage at most 200 V        | true",
        "voltage from 56 V to 70 V         | false"
      })
  void whatADeadGeneratorPassesCoversNothing(String accepted, boolean untested) {
    String source =
        SOUND
            .replace("| 5, 20, 40 |", "| 5, 20 |")
            .replace(
                "  test t ",
                """
                  test high "High" {
                    outlet bip
                    setup s
                    accept %s
                    table {
                      mode | setting/W | load/ohm
                      thin | 40        | 100
                    }
                  }
                  test t\s"""
                    .formatted(accepted));
    Snippet snippet = Snippet.compile(source);
    assertEquals(untested, snippet.codes().contains("setting-untested"), snippet.report());
  }

  /** A wait while output is on is part of the on-time, from which rest and heat are worked out. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "each replacing activate { wait 9 s; do \"Close it.\" } | -",
        "each replacing activate { do \"Close it.\"; wait 3 s } | -",
        "each replacing activate { do \"Close it.\"; wait 3.1 s } | on-time-short",
        "on-time 4 s; each replacing activate { do \"Close it.\"; wait 3.1 s } | -",
        "each replacing read { wait 3.1 s; confirm \"Read.\" } | on-time-short",
        "each replacing read { wait 2 s; wait 2 s } | on-time-short",
        "each { wait 60 s } | -"
      })
  void theOnTimeCoversTheWaits(String lines, String code) {
    Snippet snippet = changed("accept power from", lines + "; accept power from");
    assertEquals(code == null ? List.of() : List.of(code), codes(snippet), snippet.report());
  }

  /** 45.6 W, then 48 W: (45.6 − 10) · 3 − 100 + (48 − 10) · 3 = 120.8 J of 114 J. */
  @Test
  void heatIsCarriedFromPointToPoint() {
    String two = SOUND.replace("5, 20, 40 |", "38, 40 |");
    Snippet hot = Snippet.compile(two.replace(RATING, "power 48 W for 3 s, 10 W continuous"));
    assertEquals(List.of("load-overpowered"), codes(hot), hot.report());
    Snippet cool = Snippet.compile(two.replace(RATING, "power 48 W for 3 s, 11 W continuous"));
    assertEquals(List.of(), codes(cool), cool.report());
    Snippet held =
        Snippet.compile(two.replace(RATING, "power 90 W for 3 s, 48 W for 4 s, 10 W continuous"));
    assertEquals(List.of(), codes(held), held.report());
  }

  @Test
  void withoutAnOnTimeTheDutysCounts() {
    String unsettled = SOUND.replace("settle 3 s\n", "settle unknown because \"not stated\"\n");
    Snippet fits = Snippet.compile(unsettled.replace(RATING, "power 48 W for 6 s, 5 W continuous"));
    assertEquals(List.of("missing-item"), codes(fits), fits.report());
    Snippet not = Snippet.compile(unsettled.replace(RATING, "power 48 W for 5 s, 5 W continuous"));
    assertEquals(List.of("missing-item", "load-overpowered"), codes(not), not.report());
    Snippet none =
        Snippet.compile(
            unsettled
                .replace(RATING, "power 48 W for 5 s, 5 W continuous")
                .replace("duty    6 s on, 20 s off\n", "duty unknown because \"not stated\"\n"));
    assertTrue(none.report().contains("6 W continuously, and no on-time is given"), none.report());
  }

  private static final String ACCEPT = "accept power from output, read as current";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "accept peak-voltage within 10 % of sqrt(setting * load)       | peak-against-rms",
        "accept peak-voltage within 10 % of 1.5 * sqrt(setting * load) | -",
        "accept peak-voltage at most 150 V                             | -",
        "accept voltage at most 200 V                                  | peak-against-rms",
        "accept voltage at most 199 V                                  | -",
        "accept voltage at most 2 * 100 V                              | -",
        "accept voltage within 5 % of sqrt(setting * load)             | -"
      })
  void peakAndRms(String accept, String code) {
    Snippet snippet = changed(ACCEPT, accept);
    List<String> found =
        codes(snippet).stream().filter(c -> c.startsWith("peak")).distinct().toList();
    assertEquals(code == null ? List.of() : List.of(code), found, snippet.report());
  }

  @Test
  void aSettingThatIsNoPowerSaysNothingOfRms() {
    Snippet snippet =
        Snippet.compile(
            SOUND
                .replace("setting power 0 W to 40 W step 1 W", "setting level 0 to 40 step 1")
                .replace("    output  power within 20 % of setting\n", "")
                .replace("setting/W", "setting")
                .replace(ACCEPT, "accept peak-voltage within 10 % of sqrt(20 W * load)"));
    assertEquals(
        List.of(),
        codes(snippet).stream().filter(c -> c.startsWith("peak")).toList(),
        snippet.report());
  }

  private static final String FOURTH = "connect four from outlet.second to analyzer.two";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "connect four from outlet.second to analyzer.high | contact-on-output",
        "connect four from outlet.second to analyzer.in   | contact-on-output terminal-crowded",
        "connect four from outlet.second to analyzer.ref  | contact-on-output",
        "connect four from device.case.stud to analyzer.two | contact-on-output terminal-crowded",
        "connect four from outlet.second to analyzer.two; connect six from device.pedal.down to analyzer.two | terminal-crowded",
        "connect four from outlet.second to analyzer.two; connect six from device.pedal.down to analyzer.ref | contact-on-output",
        "connect three from outlet.second to analyzer.two | lead-used-twice"
      })
  void leadsAndTerminals(String wire, String said) {
    Snippet snippet = changed(FOURTH, wire);
    List<String> found =
        codes(snippet).stream().filter(c -> !c.startsWith("circuit")).sorted().distinct().toList();
    assertEquals(said == null ? List.of() : List.of(said.split(" ")), found, snippet.report());
  }

  @Test
  void aContactMayGoToAJackWhereNoOutputComes() {
    Snippet snippet =
        Snippet.compile(
            SOUND
                .replace("link bar from analyzer.low to analyzer.ref", "")
                .replace(FOURTH, "connect four from outlet.second to analyzer.ref"));
    assertEquals(List.of(), codes(snippet), snippet.report());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "link bar from analyzer.low to analyzer.ref; link bar-2 from analyzer.ref to analyzer.out | terminal-crowded",
        "link bar from analyzer.low to analyzer.ref; link bar-2 from analyzer.in to analyzer.out | -"
      })
  void aTerminalTakesOneLink(String links, String code) {
    Snippet snippet =
        changed(
            "link bar from analyzer.low to analyzer.ref\n    link bar-2 from analyzer.in to analyzer.out",
            links);
    assertEquals(code == null ? List.of() : List.of(code), codes(snippet), snippet.report());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "1.5 | setting-off-step | the nearest settings are 1 W and 2 W",
        "41  | setting-off-span | outside its range",
        "-1  | setting-off-span | no reading would pass",
        "40  | -                | -",
        "0.5 | setting-off-step | the nearest settings are 0 W and 1 W"
      })
  void settingsOnTheSpan(String setting, String code, String said) {
    Snippet snippet = changed("thin | 5, 20, 40 |", "thin | " + setting + " |");
    List<String> found =
        codes(snippet).stream().filter(c -> c.startsWith("setting-")).distinct().toList();
    assertEquals(code == null ? List.of() : List.of(code), found, snippet.report());
    assertTrue(said == null || snippet.report().contains(said), snippet.report());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "15 | the nearest settings are 10 W and 20 W",
        "22 | the nearest settings are 20 W and 25 W",
        "39 | the nearest settings are 35 W and 40 W",
        "9.5 | the nearest settings are 9 W and 10 W"
      })
  void settingsBetweenSegments(String setting, String said) {
    String segments = "setting power 1 W to 10 W step 1 W, 20 W to 35 W step 5 W, 40 W";
    Snippet snippet =
        Snippet.compile(
            SOUND
                .replace("setting power 0 W to 40 W step 1 W", segments)
                .replace("thin | 5, 20, 40 |", "thin | " + setting + " |"));
    assertEquals(List.of("setting-off-step"), codes(snippet), snippet.report());
    assertTrue(snippet.report().contains(said), snippet.report());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      nullValues = "-",
      value = {
        "switch, second | activation-ambiguous | bip.switch, bip.second",
        "pedal.down     | activation-open | no key or accessory is connected to pedal.down",
        "left           | unknown-name    | contact",
        "swich          | unknown-name    | switch",
        "pedel.down     | unknown-name    | pedal",
        "nowhere.down   | unknown-name    | outlet"
      })
  void activation(String by, String code, String said) {
    Snippet snippet = changed("activate by switch", "activate by " + by);
    assertEquals(
        code == null ? List.of() : List.of(code),
        codes(snippet).stream().distinct().toList(),
        snippet.report());
    assertTrue(said == null || snippet.report().contains(said), snippet.report());
  }

  private static List<Coverage.Cell> coverage(String span, String settings) {
    Plan plan =
        Snippet.compile(
                SOUND
                    .replace("setting power 0 W to 40 W step 1 W", "setting power " + span)
                    .replace("thin | 5, 20, 40 |", "thin | " + settings + " |"))
            .plan();
    return Coverage.cells(plan);
  }

  /** Low is the lowest quarter of the span, high the highest tenth, their ends included. */
  @Test
  void lowMiddleAndHigh() {
    Coverage.Cell cell = coverage("0 W to 40 W step 1 W", "10, 11, 35, 36").get(0);
    assertEquals(List.of("10 W"), cell.low());
    assertEquals(List.of("11 W", "35 W"), cell.middle());
    assertEquals(List.of("36 W"), cell.high());
    assertEquals(List.of(), cell.missing());
    Coverage.Cell ends = coverage("0 W to 40 W step 1 W", "10, 36").get(0);
    assertEquals(List.of("middle"), ends.missing());
    Coverage.Cell middle = coverage("0 W to 40 W step 1 W", "20").get(0);
    assertEquals(List.of("low", "high"), middle.missing());
    assertTrue(middle.tested());
  }

  @Test
  void aSpanWithoutAMiddleNeedsNone() {
    Coverage.Cell two = coverage("5 W, 40 W", "5, 40").get(0);
    assertEquals(null, two.middle());
    assertEquals(List.of(), two.missing());
    Coverage.Cell three = coverage("5 W, 20 W, 40 W", "5, 40").get(0);
    assertEquals(List.of("middle"), three.missing());
    Coverage.Cell one = coverage("20 W", "20").get(0);
    assertEquals(List.of(), one.missing());
    assertEquals(null, one.low());
  }

  @Test
  void anOutletIsTouchedByATestOrALead() {
    assertEquals(
        List.of(),
        Snippet.compile(SOUND).codes().stream().filter(c -> c.equals("outlet-untested")).toList());
    Snippet alone = changed("connect five from device.case.stud to analyzer.in", "");
    assertTrue(alone.codes().contains("outlet-untested"), alone.report());
    assertTrue(alone.report().contains("no test uses the outlet case"), alone.report());
  }

  @Test
  void whatNothingUsesIsSaid() {
    Snippet idle =
        changed(
            "test t \"T\" {",
            "setup idle \"Idle\" {; connect six from outlet.left to analyzer.high; }; test t \"T\" {");
    assertTrue(idle.report().contains("no test uses the setup 'idle'"), idle.report());
    Snippet other =
        changed(
            "test t \"T\" {",
            "setup s \"S\" for sum {; connect six from outlet.left to analyzer.high; }; test t \"T\" {");
    assertTrue(!other.report().contains("no test uses the setup"), other.report());
    Snippet derived =
        changed(
            ACCEPT,
            ACCEPT + "; derive crest-factor \"Crest\" = peak-voltage / voltage, resolution 0.1");
    assertTrue(
        derived.report().contains("the test does not accept 'crest-factor'"), derived.report());
    Snippet used =
        changed(
            ACCEPT,
            "derive crest-factor \"Crest\" = peak-voltage / voltage, resolution 0.1; accept crest-factor at most 3");
    assertTrue(!used.report().contains("does not accept"), used.report());
  }

  @Test
  void aLimitThatComesToNothingIsSaid() {
    Snippet open = changed(ACCEPT, "accept power at least 0 W");
    assertTrue(open.codes().contains("empty-limits"), open.report());
    assertTrue(open.report().contains("no limit applies at"), open.report());
    Snippet below = changed(ACCEPT, "accept power within 1 W of setting - 30 W, read as current");
    assertTrue(below.report().contains("no reading would pass"), below.report());
  }

  /**
   * 5 W to within 10 W: the lower side is open, in the mode's profile too, and no root is taken.
   */
  @Test
  void aToleranceWiderThanTheSettingOpensTheLowerSide() {
    Snippet mode =
        changed("output  power within 20 % of setting", "output  power within 5 W of setting");
    assertEquals(List.of("limit-below-zero"), codes(mode), mode.report());
    Plan plan = mode.plans().get(0);
    assertEquals(null, plan.limits().get(0).ofMode().lower());
    assertEquals(null, plan.limits().get(0).exact().lower());
    Snippet nominal = changed(ACCEPT, "accept power within 12 W of setting - 8 W, read as current");
    assertEquals(null, nominal.plans().get(0).limits().get(0).exact().nominal());
    assertTrue(nominal.plans().get(0).limits().get(1).exact().nominal() != null);
  }

  @Test
  void aTestWithOutputNeedsASetup() {
    Snippet none = changed("    setup s\n    accept", "    accept");
    assertTrue(none.codes().contains("circuit-open"), none.report());
    assertTrue(none.report().contains("delivers output but has no setup"), none.report());
  }

  @Test
  void aQuantityThatTheAnalyzerDoesNotMeasureIsSaid() {
    Snippet none = changed(ACCEPT, "accept frequency at least 1 kHz");
    assertTrue(none.codes().contains("not-measured"), none.report());
    Snippet out = changed(ACCEPT, "accept current at least 3 A");
    assertTrue(out.codes().contains("out-of-range"), out.report());
    Snippet edge = changed(ACCEPT, "accept current from 1 mA to 2 A");
    assertTrue(!edge.codes().contains("out-of-range"), edge.report());
  }
}
