package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.diagnostic.Diagnostics;
import passband.format.Formatter;
import passband.source.SourceFile;
import passband.testing.Repository;
import passband.testing.SameSheet;
import passband.testing.Snippet;

/** What {@code setups} says once means what each setup would say by itself. */
class SetupsTogetherTest {
  private static final String MAIN = "sedge-170/sedge-170-full.pband";
  private static final String TOGETHER =
      """
        setups {
          connect green from device.case.stud to rf.leak-out
          connect footswitch at device.foot.cut, device.foot.coag, device.foot.pincers
          table {
            setup                             | connect red                  | connect white                        | link bar
            active-leak "Active to earth"     | outlet.active to rf.leak-in  |                                      | device.plate.half-a to device.plate.half-b
            plate-leak "Plate to earth"       |                              | device.plate.half-a to rf.leak-in    | device.plate.half-a to device.plate.half-b
            left-leak "Left pin to earth"     | outlet.left to rf.leak-in    |                                      |
          }
          setup right-leak "Right pin to earth" {
            connect red   from outlet.right     to rf.leak-in
            connect green from device.case.stud to rf.leak-out
          }
        }
      """;
  private static final String APART =
      """
        setup active-leak "Active to earth" {
          connect red   from outlet.active       to rf.leak-in
          link    bar   from device.plate.half-a to device.plate.half-b
          connect green from device.case.stud    to rf.leak-out
          connect footswitch at device.foot.cut, device.foot.coag, device.foot.pincers
        }
        setup plate-leak "Plate to earth" {
          connect white from device.plate.half-a to rf.leak-in
          link    bar   from device.plate.half-a to device.plate.half-b
          connect green from device.case.stud    to rf.leak-out
          connect footswitch at device.foot.cut, device.foot.coag, device.foot.pincers
        }
        setup left-leak "Left pin to earth" {
          connect red   from outlet.left      to rf.leak-in
          connect green from device.case.stud to rf.leak-out
          connect footswitch at device.foot.cut, device.foot.coag, device.foot.pincers
        }
        setup right-leak "Right pin to earth" {
          connect red   from outlet.right     to rf.leak-in
          connect green from device.case.stud to rf.leak-out
          connect footswitch at device.foot.cut, device.foot.coag, device.foot.pincers
        }
      """;

  /** The demo library's full visit with other lines for the setups of its leakage. */
  private static Snippet with(String setups) {
    Map<String, String> files = new TreeMap<>(Repository.texts(Repository.PROCEDURES));
    String main = files.get(MAIN);
    int from = main.indexOf("  setups {\n    connect green");
    int to = main.indexOf("  tests {", from);
    files.put(MAIN, main.substring(0, from) + setups + "\n" + main.substring(to));
    return Snippet.compile(files, MAIN, null);
  }

  @Test
  void theMeaningIsTheSame() {
    Snippet apart = with(APART);
    Snippet together = with(TOGETHER);
    assertEquals("", apart.report());
    assertEquals("", together.report());
    SameSheet.assertSame(apart.plan(), together.plan());
  }

  @Test
  void theLayoutIsTheOne() {
    String text = "procedure p \"P\" {\n" + TOGETHER.replaceAll(" +\\|", " |") + "}\n";
    String once = Formatter.format(new SourceFile("p.pband", text), new Diagnostics());
    assertEquals(once, Formatter.format(new SourceFile("p.pband", once), new Diagnostics()));
    assertTrue(
        once.contains("      setup                         | connect red                 |"), once);
  }

  /** Each fault is said once, whatever else hangs on it. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      quoteCharacter = '`',
      value = {
        "setup                             | connect red!connect black                     | connect red!missing-column",
        "left-leak \"Left pin to earth\"     | outlet.left!left-leak \"Left pin to earth\"     | outlet.right | outlet.left!cell-count",
        "outlet.left to rf.leak-in    |!outlet.left                   |!wrong-kind",
        "device.plate.half-b~      plate!\"half b\"~      plate!syntax",
        "device.case.stud to rf.leak-out~    connect foot!device.case.stud to rf.leak~    connect foot!unknown-name",
        "active-leak \"Active to earth\"     |!                                  |!bad-cell",
        "link bar!connect bar!wrong-kind",
        "setup right-leak!setup left-leak!duplicate-name",
      })
  void faultsAreSaid(String from, String to, String code) {
    String source = TOGETHER.replace(from.replace("~", "\n"), to.replace("~", "\n"));
    assertNotEquals(TOGETHER, source, from);
    Snippet snippet = with(source);
    assertTrue(snippet.codes().contains(code), snippet.report());
  }

  @Test
  void setupsWithoutASetupAreSaid() {
    String none = "  setups {\n    connect green from device.case.stud to rf.leak-out\n  }\n";
    assertTrue(with(none).codes().contains("missing-item"));
  }
}
