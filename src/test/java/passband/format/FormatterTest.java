package passband.format;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.antlr.v4.runtime.Token;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Explanations;
import passband.parse.Syntax;
import passband.source.SourceFile;
import passband.testing.Repository;
import passband.testing.Snippet;

/** The one layout: nothing is lost, nothing moves, a second pass changes nothing. */
class FormatterTest {

  private static String format(String text) {
    return Formatter.format(new SourceFile("x.pband", text), new Diagnostics());
  }

  /** Every sound source of the project. */
  static List<String> sources() {
    List<String> sources = new ArrayList<>();
    sources.add(Explanations.bench());
    for (Path file : Repository.files(Repository.PROCEDURES, ".pband")) {
      sources.add(Repository.text(file));
    }
    for (Path file : Repository.files(Repository.LIBRARY, ".pband")) {
      sources.add(Repository.text(file));
    }
    for (Path file :
        Repository.files(Repository.ROOT.resolve("src/test/resources/golden"), ".pband")) {
      sources.add(Repository.text(file));
    }
    return sources;
  }

  @Test
  void laysOutInOneWay() {
    assertEquals(
        """
        # head
        use "a.pband"

        device gen "Gen" {
          outlet bip "B", two "Two" {  # trailing
            pole    left  "l"
            pole    right "r"
            contact c     "c"
          }

          # about the mode
          mode thin on bip {
            setting power 1 W to 40 W step 1 W
            load    100 ohm
            output  power within +20 % -10 % of setting - 1 W, whichever
          }
        }
        """
            .replace(" - 1 W, whichever", " - 1 W"),
        format(
            """
            \ufeff# head\r
            use   "a.pband"
            device gen "Gen"{

            outlet bip "B",two "Two"{# trailing
            pole left "l"
              pole right   "r"
               contact c "c"
            }


            # about the mode
            mode thin on bip{
            setting power 1W to 40W step 1 W
            load 100ohm
            output power within +20% -10% of setting -
              1 W

            }
            }"""
                .replace("\ufeff", "")));
  }

  @Test
  void tablesAreInColumns() {
    String table =
        """
        procedure p {
          test t {
            table {
              mode | setting/W | stated current/mA | load
              thin | 5, 20     | 179 to 219        | 125 ohm  # the manual's
              # a remark
              broad-one | 60 | | at most 3 kohm
              "a | b" |  -1 |
            }
          }
        }
        """;
    assertEquals(
        """
        procedure p {
          test t {
            table {
              mode      | setting/W | stated current/mA | load
              thin      | 5, 20     | 179 to 219        | 125 ohm  # the manual's
              # a remark
              broad-one | 60        |                   | at most 3 kohm
              "a | b"   | -1        |
            }
          }
        }
        """,
        format(table));
  }

  @ParameterizedTest
  @MethodSource("sources")
  void aSecondPassChangesNothing(String source) {
    String once = format(source);
    assertNotNull(once);
    assertEquals(once, format(once));
  }

  @ParameterizedTest
  @MethodSource("sources")
  void anyLayoutComesToTheSame(String source) {
    String once = format(source);
    assertEquals(once, format(source.replace("\n", "\r\n")));
    assertEquals(once, format(source.replace("\n", "\r")));
    assertEquals(once, format(source.replaceAll("(?m)^ +", "")));
    assertEquals(once, format(source.replaceAll("(?m)^", "\t  ").replaceAll("(?m)[ \t]+$", "")));
    assertEquals(once, format(source.replace("\n\n", "\n\n\n\n")));
    assertTrue(once.endsWith("\n") && !once.endsWith("\n\n"));
  }

  /** A comment at every gap between two words where a line may end: kept, after the same word. */
  @Test
  void aCommentAtEveryGapSurvives() {
    int tried = 0;
    for (String source : sources()) {
      SourceFile file = new SourceFile("x.pband", source);
      for (Token word : Syntax.laidOut(file)) {
        if (word.getStopIndex() < word.getStartIndex() || word.getType() == Token.EOF) {
          continue;
        }
        int at = word.getStopIndex() + 1;
        String with = source.substring(0, at) + " # mark\n" + source.substring(at);
        String laid = format(with);
        if (laid != null) {
          tried++;
          assertEquals(before(with), before(laid), laid);
          assertEquals(laid, format(laid));
        }
      }
    }
    assertTrue(tried > 1000, tried + " gaps");
  }

  /** The words before the mark, and all comments in order. */
  private static String before(String text) {
    SourceFile file = new SourceFile("x.pband", text);
    int mark = text.indexOf("# mark");
    StringBuilder words = new StringBuilder();
    for (Token word : Syntax.laidOut(file)) {
      if (word.getStopIndex() >= word.getStartIndex() && word.getStartIndex() < mark) {
        words.append(word.getText().strip()).append(' ');
      }
    }
    Syntax.comments(file).forEach(c -> words.append(c.getText().strip()).append('\n'));
    return words.toString();
  }

  /** Words thrown on lines at random, where the language lets a line go on. */
  @Test
  void brokenLinesComeTogether() {
    Random random = new Random(3);
    for (String source : sources()) {
      String once = format(source);
      StringBuilder broken = new StringBuilder();
      boolean table = false;
      for (String line : source.split("\n")) {
        table = line.strip().equals("table {") || (table && !line.strip().equals("}"));
        boolean text = line.contains("\"") || line.contains("#");
        broken
            .append(
                table || text || random.nextBoolean() ? line : line.replace(", ", ",\n        "))
            .append('\n');
      }
      assertEquals(once, format(broken.toString()));
    }
  }

  @Test
  void aFileWithASyntaxFaultIsLeftAlone() {
    Diagnostics diagnostics = new Diagnostics();
    assertNull(
        Formatter.format(
            new SourceFile("x.pband", "device gen {\n  pole pole pole\n"), diagnostics));
    assertTrue(diagnostics.hasErrors());
  }

  @Test
  void theDemoIsLaidOut() {
    for (Path file : Repository.files(Repository.PROCEDURES, ".pband")) {
      assertEquals(format(Repository.text(file)), Repository.text(file), file.toString());
    }
  }

  @Test
  void theMeaningStays() {
    Map<String, String> files = Repository.texts(Repository.LIBRARY);
    Map<String, String> laid = new TreeMap<>();
    files.forEach(
        (name, text) ->
            laid.put(
                name, name.endsWith(".pband") ? format(text.replaceAll("(?m)^ +", " ")) : text));
    for (String main : List.of("teasel/teasel-output.pband", "yarrow/yarrow-service.pband")) {
      assertEquals(
          Snippet.compile(files, main, null).plan().digest(),
          Snippet.compile(laid, main, null).plan().digest());
    }
  }
}
