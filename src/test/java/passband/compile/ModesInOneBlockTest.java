package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import passband.diagnostic.Explanations;
import passband.testing.Examples;
import passband.testing.Snippet;

/** Several modes in one block mean what a block for each means. */
class ModesInOneBlockTest {
  private static final String BODY =
      """
       on one, two through back {
          setting power 1 W to 100 W step 1 W
          load    400 ohm
          output  power within +20 % -10 % of setting
          peak-voltage at most 1 kV
          duty    20 s on, 40 s off
          activate by cut
        }
      """;

  private static final String PROCEDURE =
      """
        revision "A" on 2026-01-31
        device gen
        analyzer meter
        leads set
        caution burn "Output burns."
        setup mono "Mono" {
          connect red   from outlet.active     to analyzer.high
          connect plate from device.back.plate to analyzer.low
          connect grey  from outlet.cut        to analyzer.key
        }
        test t "T" {
          outlet one, two
          setup  mono
          accept power from output, read as current
          table {
            mode   | setting/W | load/ohm
            hew    | 20, 60    | 400
            carve  | 20, 60    | 400
            cleave | 60        | 400
          }
        }
      """;

  private static Snippet with(String modes) {
    String bench = Explanations.bench();
    int start = bench.indexOf("  mode hew ");
    int end = bench.indexOf("  mode tack ");
    String changed = bench.substring(0, start) + modes + bench.substring(end);
    return Snippet.compile(
        Map.of("main.pband", Examples.framed("procedure", PROCEDURE), "bench.pband", changed),
        "main.pband",
        null);
  }

  private static List<String> codes(String modes) {
    return with(modes).codes().stream().filter(code -> code.equals("syntax")).toList();
  }

  @Test
  void theMeaningIsThatOfABlockForEach() {
    String each =
        "  mode hew \"Hew\""
            + BODY
            + "  mode carve \"Carve\""
            + BODY
            + "  mode cleave \"Cleave\""
            + BODY;
    String together = "  mode hew \"Hew\", carve \"Carve\", cleave \"Cleave\"" + BODY;
    assertEquals(10, with(each).plan().points().size());
    assertEquals(with(each).plan().digest(), with(together).plan().digest());
    assertEquals(with(each).codes(), with(together).codes());
  }

  @Test
  void eachMayHaveBeenRenamed() {
    String each =
        "  mode hew \"Hew\""
            + BODY.replace(" through back", " through back renamed from chop")
            + "  mode carve \"Carve\""
            + BODY
            + "  mode cleave \"Cleave\""
            + BODY;
    String together =
        "  mode hew \"Hew\" renamed from chop, carve \"Carve\", cleave \"Cleave\"" + BODY;
    assertEquals(with(each).plan().digest(), with(together).plan().digest());
    assertEquals(List.of(), codes(together));
    String unclear =
        "  mode hew \"Hew\", carve \"Carve\", cleave \"Cleave\""
            + BODY.replace(" through back", " through back renamed from chop");
    assertEquals(List.of("syntax"), codes(unclear));
  }

  /** What is wrong in the block is said once. */
  @Test
  void oneFaultIsOneMessage() {
    String together =
        "  mode hew \"Hew\", carve \"Carve\", cleave \"Cleave\""
            + BODY.replace("activate by cut", "activate by gone");
    List<String> codes = with(together).codes();
    assertTrue(codes.contains("unknown-name"), codes.toString());
    assertEquals(1, codes.stream().filter("unknown-name"::equals).count(), codes.toString());
  }
}
