package passband.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import passband.diagnostic.Code;
import passband.limit.Limit;
import passband.testing.Examples;
import passband.testing.Snippet;

/** Of two loads with one value, the one between the wired jacks counts. */
class WiredLoadsTest {
  /** Both loads have 100 ohm: the one to {@code b} is the worse and the weaker. */
  private static String source(String jack) {
    return """
        use "bench.pband"
        analyzer two-loads "Two loads" {
          jack a    "A"
          jack b    "B"
          jack c    "C"
          key  key  "KEY"
          settle 5 s
          load small from a to b {
            values 100 ohm
            error  3 %
            power  5 W continuous
          }
          load large from a to c {
            values 100 ohm, 400 ohm
            error  0.5 %
            power  200 W continuous
          }
          measure current {
            range      1 mA to 3 A
            resolution 1 mA
            error      0.2 % of reading + 0.1 mA
          }
        }
        procedure example "Example" {
          revision "A" on 2026-01-31
          device gen
          analyzer two-loads
          leads set
          caution burn "Output burns."
          setup into-load "Into the load" {
            connect red   from outlet.left   to analyzer.a
            connect black from outlet.right  to analyzer.JACK
            connect grey  from outlet.switch to analyzer.key
          }
          test t "T" {
            outlet bip
            setup  into-load
            accept power from output, read as current
            table {
              mode | setting/W | load/ohm
              thin | 20        | 100
            }
          }
        }
        """
        .replace("JACK", jack);
  }

  private static Snippet wiredTo(String jack) {
    return compiled(source(jack));
  }

  private static Snippet compiled(String source) {
    return Examples.compile(source.getBytes(StandardCharsets.UTF_8));
  }

  private static Limit limit(Snippet snippet) {
    return snippet.plans().get(0).points().get(0).limits().get(0);
  }

  private static List<Code> errors(Snippet snippet) {
    return snippet.diagnostics().stream()
        .filter(d -> !d.code().allowable())
        .map(d -> d.code())
        .toList();
  }

  @Test
  void itsPowerRatingCounts() {
    assertEquals(List.of(Code.LOAD_OVERPOWERED), errors(wiredTo("b")));
    assertEquals(List.of(), errors(wiredTo("c")));
  }

  /** An error of 3 % against 0.5 % of the load is most of the uncertainty of a current. */
  @Test
  void itsErrorCounts() {
    Limit worse = limit(wiredTo("b"));
    Limit better = limit(wiredTo("c"));
    assertNotEquals(null, worse.ratio());
    assertTrue(worse.ratio().compareTo(better.ratio()) < 0, worse + " " + better);
  }

  /** 100 ohm beside 400 ohm is 80 ohm, of which the analyzer shows the current of one. */
  @Test
  void twoLoadsAtOnceAreRefusedUnlessTheyHaveTheSameJacks() {
    String link = "    link jumper from analyzer.b to analyzer.c\n";
    String strong = source("c").replace("power  5 W", "power  100 W");
    String both = strong.replace("    connect grey", link + "    connect grey");
    Snippet snippet = compiled(both);
    assertEquals(List.of(Code.LOAD_NOT_WIRED), errors(snippet), snippet.report());
    assertTrue(snippet.report().contains("it divides between them"), snippet.report());
    for (String jacks : List.of("load small from a to c", "load small from c to a")) {
      String selector = strong.replace("load small from a to b", jacks);
      assertEquals(List.of(), errors(compiled(selector)));
    }
  }

  /** Without a load column, only a wired load that has several values is missed. */
  @Test
  void itHasToBeSet() {
    assertEquals(List.of(), notSet("b"));
    assertEquals(List.of(Code.NOT_SET_AT_READING), notSet("c"));
  }

  private static List<Code> notSet(String jack) {
    String source =
        source(jack)
            .replace("accept power from output, read as current", "accept current at most 1 A")
            .replace(" | load/ohm", "")
            .replace("| 100", "");
    return compiled(source).diagnostics().stream()
        .map(d -> d.code())
        .filter(code -> code == Code.NOT_SET_AT_READING)
        .toList();
  }
}
