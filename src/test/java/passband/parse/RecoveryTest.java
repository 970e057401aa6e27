package passband.parse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.antlr.v4.runtime.Token;
import org.junit.jupiter.api.Test;
import passband.diagnostic.Diagnostics;
import passband.source.SourceFile;
import passband.testing.Repository;
import passband.testing.Snippet;

/** One bad line is one error, and the lines after it are read as if it were not there. */
class RecoveryTest {

  @Test
  void theFirstStageOfTheParserIsEnoughForTheLibrary() {
    for (Path file : Repository.files(Repository.PROCEDURES, ".pband")) {
      SourceFile source = new SourceFile(file.toString(), Repository.text(file));
      Diagnostics diagnostics = new Diagnostics();
      BitSet bad = new BitSet();
      List<Token> lines = Layout.of(source, Lexer.of(source, diagnostics, bad), diagnostics, bad);
      assertNotNull(Syntax.quick(lines), file + " needs the second stage");
      assertFalse(diagnostics.hasErrors());
    }
  }

  /** One bad line is one error, whichever way the lines of a file end. */
  @Test
  void linesEndInThreeWays() {
    for (String end : List.of("\n", "\r\n", "\r")) {
      String text = String.join(end, "device d \"D\" {", "outlte a", "oulet b b b", "}", "");
      Diagnostics diagnostics = new Diagnostics();
      Syntax.parse(new SourceFile("x.pband", text), diagnostics);
      List<Integer> lines = new ArrayList<>();
      diagnostics.list().forEach(d -> lines.add(d.span().line()));
      assertEquals(List.of(2, 3), lines, diagnostics.list().toString());
    }
  }

  @Test
  void severalFaultsInOneRun() {
    Snippet snippet =
        Snippet.compile(
            """
            device d "D" {
              outlet a, b "Monopolar" {
                pole active "centre"
                poel other "x"
              }
              mode hew "Hew" on a thru b {
                setting power 1 W to 140 MW step 1 W
                load 400 Ohms
                output power within 20 % of setting or 3 W, whichever is bigger
                peak-voltage at most 1,100 V
                duty 10 s on 30 s off
              }
              action select "Press {mode}.
            }
            analyzer z "Z" {
              jack h "H"
              jack l "L"
              load from h to l {
                values 10 ohm to 1 kohm step 10 ohm
              measure current {
                range 1 mA to 3 A
                resolution 1 ma
                error 1 % of reading + 1 mA
              }
            }
            }
            """);
    assertEquals(
        """
        4:5 unknown-word
        6:23 syntax
        7:30 unknown-unit
        8:14 unknown-unit
        9:62 syntax
        10:26 comma-in-number
        11:18 syntax
        13:17 unterminated-text
        18:3 unclosed-block
        22:18 unknown-unit
        26:1 stray-brace
        """,
        places(snippet));
  }

  static String places(Snippet snippet) {
    StringBuilder places = new StringBuilder();
    snippet
        .diagnostics()
        .forEach(
            d ->
                places
                    .append(d.span().line())
                    .append(':')
                    .append(d.span().column())
                    .append(' ')
                    .append(d.code().id())
                    .append('\n'));
    return places.toString();
  }

  @Test
  void missingAndExtraBraces() {
    assertEquals(
        "2:12 missing-brace\n",
        places(
            Snippet.compile(
                "device d \"D\" {\n  outlet a \"Outlet\"\n    pole p \"P\"\n  }\n}\n")));
    assertEquals(
        "1:10 missing-brace\n",
        places(Snippet.compile("device d \"Device\"\n  outlet a \"A\"\n}\n")));
    assertEquals(
        "4:3 stray-brace\n",
        places(
            Snippet.compile(
                "device d \"D\" {\n  outlet a \"A\" {\n    pole p \"P\"\n  } \n    pole q \"Q\"\n  }\n}\n")));
    assertEquals(
        "2:3 unclosed-block\n",
        places(
            Snippet.compile(
                "device d \"D\" {\n  outlet a \"A\" {\n    pole p \"P\"\n  mode m \"M\" on a {\n  }\n}\n")));
  }

  @Test
  void placesCountCodePoints() {
    Snippet snippet =
        Snippet.compile("device d \"\uD83D\uDD25 Ω°µ\" {\n  outlet \uD83D\uDD25 \"A\"\n}\n");
    assertEquals("1:11 glyph-missing\n2:10 unexpected-character\n", places(snippet));
    assertEquals(
        "1:11 glyph-missing\n1:14 unexpected-character\n",
        places(Snippet.compile("device d \"\uD83D\uDD25\" §{\n}\n")));
  }

  @Test
  void deepNestingIsOneError() {
    String deep =
        "rule r {\n  accept power at most "
            + "(".repeat(5000)
            + "1 W"
            + ")".repeat(5000)
            + "\n  accept power at most 5 Wat\n}\n";
    assertEquals("2:124 nested-too-deeply\n3:26 unknown-unit\n", places(Snippet.compile(deep)));
    String long_ = "rule r {\n  accept power at most 1 W" + " + 1 W".repeat(5000) + "\n}\n";
    assertEquals("2:628 nested-too-deeply\n", places(Snippet.compile(long_)));
  }
}
