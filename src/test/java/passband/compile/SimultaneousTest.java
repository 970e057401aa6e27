package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.plan.Meaning;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.testing.Snippet;

/** Two outlets deliver at the same time; each into a load of its own, or one into none. */
class SimultaneousTest {
  private static final String SOURCE =
      """
      device twin "Twin" {
        outlet left "Left", right "Right" {
          pole    tip "tip"
          contact switch "switch"
        }
        outlet plate "Plate" {
          pole sheet "sheet" holds 3
        }
        outlet foot "Foot socket" {
          contact coag "coag pedal"
          contact cut  "cut pedal"
        }
        mode slit "Slit" on left, right through plate {
          setting power 10 W to 100 W step 10 W
          load    300 ohm
          output  power within 20 % of setting
          peak-voltage at most 900 V
          duty    10 s on, 20 s off
          activate by switch, foot.cut
        }
        mode mist "Mist" on left, right through plate {
          setting power 10 W to 80 W step 10 W
          load    300 ohm
          output  power within 20 % of setting
          peak-voltage at most 2500 V
          duty    5 s on, 25 s off
          activate by foot.coag
        }
        action select "Press {mode} under {outlet}."
        action adjust "Turn the knob of {outlet} to {setting}."
        action knob   "Turn any knob."
      }
      analyzer rush-2 "Rush 2" {
        jack high "HIGH" floating
        jack low  "LOW" floating holds 2
        key  go   "GO"
        settle 3 s
        load from high to low {
          values 100 ohm to 500 ohm step 100 ohm
          error  1 %
          power  150 W for 30 s, 20 W continuous
        }
        measure current {
          range      10 mA to 2 A
          resolution 1 mA
          error      1 % of reading + 1 mA
        }
      }
      analyzer fern-1 "Fern 1" {
        jack a "A" floating
        jack b "B" floating
        load from a to b {
          values 300 ohm
          error  1 %
          power  60 W continuous
        }
        action set-load "Set the box to {load}."
      }
      leads twin-leads {
        lead red   "red lead",   rated 3 kV
        lead blue  "blue lead",  rated 3 kV
        lead black "black lead", rated 3 kV
        lead white "white lead", rated 3 kV
        lead grey  "grey lead",  rated 3 kV
        accessory pedals "pedals"
      }
      procedure twin-both "Twin" {
        revision "A" on 2026-11-02
        device   twin
        analyzer meter rush-2
        analyzer box fern-1
        leads    twin-leads
        caution burn      "High-frequency output burns."
        caution authority "The maker's service manual comes first."
        setup two "Both into loads" {
          connect red   from device.left.tip    to meter.high
          connect black from device.plate.sheet to meter.low
          connect blue  from device.right.tip   to box.a
          connect white from device.plate.sheet to box.b
          connect grey  from device.left.switch to meter.go
          connect pedals at device.foot.coag, device.foot.cut
        }
        test both "Both at once" {
          outlet left
          setup  two
          accept power from output, read as current by meter
          allow  mode-untested because "A part of the test of both."
          allow  outlet-untested because "A part of the test of both."
          allow  setting-untested because "A part of the test of both."
          table {
            mode | setting/W | load/ohm | activation | HEADING
            slit | 50        | 300      | switch     | CELLS
          }
        }
      }
      """;

  private static final String HEADING =
      "right.mode | right.setting/W | right.load/ohm | right.activation";
  private static final String CELLS = "mist | 40 | 300 | foot.coag";

  private static Snippet with(String heading, String cells) {
    return Snippet.compile(SOURCE.replace("HEADING", heading).replace("CELLS", cells));
  }

  private static Snippet changed(String from, String to) {
    String source = SOURCE.replace("HEADING", HEADING).replace("CELLS", CELLS);
    assertTrue(source.contains(from), from);
    return Snippet.compile(source.replace(from, to));
  }

  private static Point point(Plan plan) {
    assertEquals(1, plan.points().size());
    return plan.points().get(0);
  }

  private static List<String> steps(Point point) {
    return point.stepsWithRest().stream().map(PlanStep::text).toList();
  }

  /** Both are set, the first is looked at again, both contacts close, and the longer rest holds. */
  @Test
  void bothAreSetAndActivated() {
    Point point = point(with(HEADING, CELLS).plan());
    assertEquals(
        List.of(
            "Press Mist under Right.",
            "Turn the knob of Right to 40 W.",
            "Press Slit under Left.",
            "Turn the knob of Left to 50 W.",
            "Rush 2: Set the load to 300 Ω.",
            "Fern 1: Set the box to 300 Ω.",
            "Check that Right still shows Mist, 40 W.",
            "Rush 2: Start the measurement.",
            "Activate the output with the key “GO” of the Rush 2.",
            "At the same time, without letting go: Activate the output with the “coag pedal” of"
                + " the pedals.",
            "Rush 2: Read and write down the current.",
            "Let go of the “coag pedal” of the pedals.",
            "Rush 2: Stop the output and the measurement.",
            "15 s: leave the output off."),
        steps(point));
    assertEquals("Right, Mist, 40 W", point.extras().get("simultaneous"));
    assertEquals(
        "both/left/slit/50W/300ohm/activation=switch/right.mode=mist/right.setting=40W"
            + "/right.load=300ohm/right.activation=foot.coag",
        point.id());
  }

  /** What the other outlet does is part of what the procedure means. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "mist | 40 | 300 | foot.coag; mist | 50 | 300 | foot.coag",
        "mist | 40 | 300 | foot.coag; slit | 40 | 300 | foot.cut",
        "mist | 40 | 300 | foot.coag; | | |"
      })
  void anotherPartnerIsAnotherMeaning(String one, String other) {
    assertNotEquals(
        Meaning.of(with(HEADING, one).plan()).digest(),
        Meaning.of(with(HEADING, other).plan()).digest());
  }

  /** A row whose cells are blank delivers by itself. */
  @Test
  void aBlankRowDeliversByItself() {
    Point point = point(with(HEADING, " | | | ").plan());
    assertEquals(List.of(), point.also());
    assertEquals("both/left/slit/50W/300ohm/activation=switch", point.id());
  }

  /** The same outlet may be asked for a second mode; what it is delivered into is the same. */
  @Test
  void theSameOutletMayBeAskedTwice() {
    Point point =
        point(
            with(
                    "left.mode | left.setting/W | left.activation | target/W",
                    "mist | 40 | foot.coag | 50")
                .plan());
    assertEquals("left", point.also().get(0).outlet().name().text());
    assertTrue(steps(point).contains("Check that Left still shows Mist, 40 W."));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "right.mode | right.setting/W | right.load/ohm | right.activation;"
            + " mist | 40 | 300 | foot.cut; unknown-name",
        "right.mode | right.setting/W | right.load/ohm | right.activation;"
            + " mist | 45 | 300 | foot.coag; setting-off-step",
        "right.mode | right.setting/W | right.load/ohm | right.activation;"
            + " mist | 40 | 350 | foot.coag; load-not-available",
        "right.mode | right.setting/W | right.load | right.activation;"
            + " mist | 40 | open | foot.coag; load-not-available",
        "right.mode | right.setting/W | right.activation; mist | 40 | foot.coag; missing-column",
        "right.mode | right.load/ohm | right.activation; mist | 300 | foot.coag;"
            + " not-set-at-reading",
        "right.setting/W | right.load/ohm | right.activation; 40 | 300 | foot.coag;"
            + " missing-column",
        "right.mode | right.setting/W | right.load/ohm | right.activation;"
            + " | 40 | 300 | foot.coag; blank-cell",
        "right.mode | right.setting/W | right.load/ohm | right.activation;"
            + " slit | 80 | 300 | foot.cut; load-overpowered",
        "left.mode | left.setting/W | left.load/ohm | left.activation;"
            + " mist | 40 | 200 | foot.coag; wrong-kind",
        "left.mode | left.setting/W | left.activation; slit | 40 | switch; activation-ambiguous"
      })
  void aFaultOfTheOtherIsSaid(String heading, String cells, String code) {
    Snippet snippet = with(heading, cells);
    assertTrue(snippet.codes().contains(code), snippet.report());
  }

  /** The bench is right for both: wiring, ratings, duty. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "lead blue  \"blue lead\",  rated 3 kV; lead blue  \"blue lead\",  rated 1 kV; lead-underrated",
        "connect blue  from device.right.tip   to box.a; connect blue from device.right.tip to"
            + " meter.high; terminal-crowded",
        "connect pedals at device.foot.coag, device.foot.cut; connect pedals at device.foot.cut;"
            + " activation-open",
        "setup  two; setup  two\\n    on-time 6 s; over-duty",
        "power  60 W continuous; power  30 W continuous; load-overpowered"
      })
  void theBenchFitsBoth(String from, String to, String code) {
    Snippet snippet = changed(from, to.replace("\\n", "\n"));
    assertTrue(snippet.codes().contains(code), snippet.report());
  }

  /** An action that comes after the look may have changed what the other outlet shows. */
  @Test
  void whatIsLookedAtIsStillThereAtTheReading() {
    Snippet snippet =
        changed(
            "    }\n  }\n}\n",
            "    }\n    each replacing start {\n      perform knob\n    }\n  }\n}\n");
    assertTrue(snippet.codes().contains("not-set-at-reading"), snippet.report());
  }
}
