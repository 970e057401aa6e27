package passband.diagnostic;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import passband.testing.Examples;
import passband.testing.Snippet;

/** Many rows of one table with one cause give one message. */
class GroupedTest {
  private static Snippet rows(String... rows) {
    return Examples.compile(
        "test",
        """
        test t "T" {
          outlet bip
          setup  bipolar
          accept power from output, read as current
          table {
            mode | setting/W | load/ohm | stated/mA
        %s
          }
        }
        """
            .formatted(String.join("\n", rows)));
  }

  private static String times(int count, String row) {
    return (row + "\n").repeat(count).strip();
  }

  private static List<Diagnostic> of(Snippet snippet, Code code) {
    return snippet.diagnostics().stream().filter(d -> d.code() == code).toList();
  }

  @Test
  void twentyThousandDuplicatesAreOneMessage() {
    List<Diagnostic> said =
        of(rows(times(20_000, "thin | 20 | 100 | 413 to 479")), Code.DUPLICATE_POINT);
    assertEquals(1, said.size());
    assertEquals(
        "the point t/bip/thin/20W/100ohm is listed twice (and 19,998 more rows)",
        said.get(0).message());
    assertEquals(1, said.get(0).notes().size());
    assertEquals(said.get(0).notes().get(0).span().line() + 1, said.get(0).span().line());
  }

  @Test
  void aFewRowsAreSaidOneByOne() {
    String row = "thin | 20 | 100 | 413 to 479";
    assertEquals(Grouped.MOST, of(rows(times(Grouped.MOST + 1, row)), Code.DUPLICATE_POINT).size());
    assertEquals(1, of(rows(times(Grouped.MOST + 2, row)), Code.DUPLICATE_POINT).size());
  }

  /** Both ends of a row are one row, and every one of the rows is counted. */
  @Test
  void rowsAreCountedNotFindings() {
    StringBuilder rows = new StringBuilder();
    for (int setting = 1; setting <= 40; setting++) {
      rows.append("thin | ").append(setting).append(" | 100 | 1 to 999\n");
    }
    List<Diagnostic> said = of(rows(rows.toString().strip()), Code.STATED_LOOSER);
    assertEquals(1, said.size());
    assertTrue(said.get(0).message().endsWith(" (and 39 more rows)"), said.get(0).message());
  }

  /** Another cause is another message: here another line of the profile. */
  @Test
  void causesStayApart() {
    String both = times(10, "thin | 20 | 100 | 413 to 479") + "\n" + times(10, "gone | 1 | 100 |");
    Snippet snippet = rows(both);
    assertEquals(1, of(snippet, Code.DUPLICATE_POINT).size());
    assertEquals(1, of(snippet, Code.UNKNOWN_NAME).size());
    assertTrue(
        of(snippet, Code.UNKNOWN_NAME).get(0).message().endsWith("(and 9 more rows)"),
        snippet.report());
  }

  @Test
  void tablesStayApart() {
    StringBuilder tests = new StringBuilder();
    for (String name : List.of("a", "b")) {
      tests
          .append("test ")
          .append(name)
          .append(" {\n outlet bip\n setup bipolar\n accept power from output, read as current\n")
          .append(" table {\n mode | setting/W | load/ohm\n")
          .append("thin | 20 | 100\n".repeat(10))
          .append(" }\n}\n");
    }
    Snippet snippet = Examples.compile("test", tests.toString());
    assertEquals(2, of(snippet, Code.DUPLICATE_POINT).size());
  }

  /** Rows of a table file stand in that file. */
  @Test
  void aTableFileIsATable() {
    String csv = "mode,setting/W,load/ohm\n" + "thin,20,100\n".repeat(30);
    String test =
        "test t {\n outlet bip\n setup bipolar\n accept power from output, read as current\n"
            + " table from \"rows.csv\"\n}\n";
    Snippet snippet =
        Examples.compile(
            Examples.framed("test", test).getBytes(java.nio.charset.StandardCharsets.UTF_8),
            csv.getBytes(java.nio.charset.StandardCharsets.UTF_8));
    List<Diagnostic> said = of(snippet, Code.DUPLICATE_POINT);
    assertEquals(1, said.size());
    assertEquals("rows.csv:3:1", said.get(0).span().toString());
    assertTrue(said.get(0).message().endsWith(" (and 28 more rows)"));
  }

  /** What an allow covers is gone before anything is counted. */
  @Test
  void anAllowCoversEveryRow() {
    String rows = "";
    for (int setting = 10; setting <= 30; setting++) {
      rows += "thin | " + setting + " | 50\n";
    }
    String test =
        "test t {\n outlet bip\n setup bipolar\n accept power at most 1 W, read as current\n"
            + "%s table {\n mode | setting/W | load/ohm\n"
            + rows
            + " }\n}\n";
    String allow = "allow load-off-rated because \"The manual asks for it.\"\n";
    assertEquals(1, of(Examples.compile("test", test.formatted("")), Code.LOAD_OFF_RATED).size());
    assertEquals(
        0, of(Examples.compile("test", test.formatted(allow)), Code.LOAD_OFF_RATED).size());
  }
}
