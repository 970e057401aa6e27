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
import passband.diff.PlanDiff;
import passband.format.Formatter;
import passband.source.SourceFile;
import passband.testing.Repository;
import passband.testing.SameSheet;
import passband.testing.Snippet;

/** What {@code tests} says once means what each test would say by itself. */
class TestsTogetherTest {
  private static final String MAIN = "teasel/teasel-output.pband";
  private static final String APART =
      """
        test one "One" {
          outlet mono-1, mono-2
          setup  monopolar-load
          accept power from output, read as current
          table {
            mode | setting/W | load/ohm
            slit | 20, 70    | 400
            slit | 140       | 400
          }
        }
        test two "Two" {
          outlet mono-1
          setup  monopolar-load
          accept peak-voltage at most 1100 V
          on-time 4 s
          table {
            mode | setting/W | load/ohm
            slit | 50        | 400
          }
        }
        test three "Three" {
          outlet bipolar
          setup  bipolar-load
          accept power from output, read as current
          table {
            mode | setting/W | load/ohm | stated current/mA
            thin | 25        | 125      |
          }
        }
      """;
  private static final String TOGETHER =
      """
        tests {
          outlet mono-1, mono-2
          setup  monopolar-load
          accept power from output, read as current
          table {
            test      | mode | setting/W | load/ohm
            one "One" | slit | 20, 70    | 400
                      | slit | 140       | 400
          }
          test two "Two" {
            outlet  mono-1
            accept  peak-voltage at most 1100 V
            on-time 4 s
            table {
              mode | setting/W | load/ohm
              slit | 50        | 400
            }
          }
          table {
            test          | outlet  | setup        | mode | setting/W | load/ohm | stated current/mA
            three "Three" | bipolar | bipolar-load | thin | 25        | 125      |
          }
        }
      """;

  private static Snippet with(String tests) {
    Map<String, String> files = new TreeMap<>(Repository.texts(Repository.LIBRARY));
    String main = files.get(MAIN);
    files.put(MAIN, main.substring(0, main.lastIndexOf('}')) + tests + "}\n");
    return Snippet.compile(files, MAIN, null);
  }

  @Test
  void theMeaningIsTheSame() {
    Snippet apart = with(APART);
    Snippet together = with(TOGETHER);
    assertEquals("", apart.report());
    assertEquals("", together.report());
    SameSheet.assertSame(apart.plan(), together.plan());
    assertTrue(
        PlanDiff.between(apart.plans(), together.plans()).stream()
            .allMatch(diff -> diff.groups().isEmpty()));
  }

  /** In what state, with what output and for how long a test is done has columns too. */
  @Test
  void conditionsHaveColumns() {
    String lamp =
        "  section lamps \"Lamps\" {\n    choose lamp \"The lamp is\" from \"lit\", \"dark\"\n  }\n";
    String apart =
        """
          test four "Four" {
            outlet  bipolar
            setup   bipolar-load
            inside  device.service-page
            output  inhibited
            on-time 4 s
            accept  current at most 20 mA
            table {
              mode | setting/W | load/ohm
              thin | 25        | 125
            }
          }
          test five "Five" {
            outlet bipolar
            when   lamp is "lit"
            setup  bipolar-load
            output off
            accept voltage at most 50 V
          }
        """;
    String together =
        """
          tests {
            outlet bipolar
            setup  bipolar-load
            table {
              test        | inside              | when          | output    | on-time | accept                | mode | setting/W | load/ohm
              four "Four" | device.service-page |               | inhibited | 4 s     | current at most 20 mA | thin | 25        | 125
              five "Five" |                     | lamp is "lit" | off       |         | voltage at most 50 V  |      |           |
            }
          }
        """;
    Snippet one = with(lamp + apart);
    Snippet other = with(lamp + together);
    assertEquals("", one.report());
    assertEquals("", other.report());
    assertEquals(one.plan().digest(), other.plan().digest());
  }

  /** And where one of them says otherwise the meaning is another. */
  @Test
  void aTestGoesBeforeTheLinesAroundIt() {
    String other = TOGETHER.replace("outlet  mono-1\n      ", "");
    Snippet more = with(other);
    assertEquals("", more.report());
    assertEquals(
        2, more.plan().runs().stream().filter(run -> run.test().text().equals("two")).count());
  }

  @Test
  void theLayoutIsTheOne() {
    String text = "procedure p \"P\" {\n" + TOGETHER + "}\n";
    assertEquals(text, Formatter.format(new SourceFile("p.pband", text), new Diagnostics()));
  }

  /** What a test makes impossible is said at the line that it shares, together with the test. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      quoteCharacter = '`',
      value = {
        "outlet mono-1, mono-2~    setup!outlet mono-3~    setup!unknown-name!one",
        "setup  monopolar-load~    accept!setup  nowhere~    accept!unknown-name!one",
        "accept power from output, read!output off~    accept power from output, read!wrong-kind!one",
        "accept power from output, read!inside device.nowhere~    accept power from output, read!unknown-name!one",
        "accept power from output, read!on-time 3 V~    accept power from output, read!unit-mismatch!one",
      })
  void bothPlacesAreTold(String from, String to, String code, String test) {
    String source = TOGETHER.replace(from.replace("~", "\n"), to.replace("~", "\n"));
    assertNotEquals(TOGETHER, source, from);
    String report = with(source).report();
    assertTrue(report.contains("[" + code + "]"), report);
    assertTrue(report.contains("the test '" + test + "'"), report);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '!',
      quoteCharacter = '`',
      value = {
        "test      | mode!tset      | mode!missing-column",
        "one \"One\" | slit!          | slit!blank-cell",
        "          | slit | 140!          | slit | 140 | 3!cell-count",
        "one \"One\" | slit!5 | slit!bad-cell",
        "| setup        | mode | setting/W | load/ohm | stated!| inside        | mode | setting/W | load/ohm | stated!unknown-name",
        "| setup        | mode | setting/W | load/ohm | stated!| when        | mode | setting/W | load/ohm | stated!bad-cell",
        "| setup        | mode | setting/W | load/ohm | stated!| output        | mode | setting/W | load/ohm | stated!bad-cell",
        "| setup        | mode | setting/W | load/ohm | stated!| on-time        | mode | setting/W | load/ohm | stated!bad-cell",
        "mode | setting/W | load/ohm~        slit | 50!mode | setting/W | load/ohm~        two \"Two\" | 50!bad-cell",
      })
  void faultsOfTheTableAreSaid(String from, String to, String code) {
    String source = TOGETHER.replace(from.replace("~", "\n"), to.replace("~", "\n"));
    assertNotEquals(TOGETHER, source, from);
    Snippet snippet = with(source);
    assertTrue(snippet.codes().contains(code), snippet.report());
  }

  @Test
  void testsWithoutATestAreSaid() {
    assertTrue(with("  tests {\n    outlet bipolar\n  }\n").codes().contains("missing-item"));
  }
}
