package passband.pdf;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import passband.diagnostic.Code;
import passband.diagnostic.Explanations;
import passband.render.SheetMaker;
import passband.testing.Examples;
import passband.testing.Snippet;

/** As many things as anybody may write: steps, outcomes, lines, boxes, settings, leads. */
class ManyThingsOnPaperTest {
  /** A procedure on the manual's bench with this in it. */
  private static Snippet framed(String text) {
    return Examples.compile("test", text);
  }

  private static void printed(Snippet snippet, String where) throws Exception {
    for (Paper paper : Paper.values()) {
      assertTrue(PaperLaw.holds(snippet, paper, false, where));
    }
    PdfUa.assertTagged(ChecklistPdf.of(snippet.plans().get(0), Paper.A4));
  }

  private static String many(int count, String text) {
    return IntStream.range(0, count)
        .mapToObj(i -> text.replace("#", "q%05xz".formatted(i)))
        .collect(Collectors.joining());
  }

  @Test
  void stepsWithNumbersOfFourDigits() throws Exception {
    String steps = many(1_200, "do \"#\"\nconfirm \"#\"\n");
    printed(framed("section s \"S\" {\n" + steps + "}\n" + test("", "20", "")), "steps");
  }

  @Test
  void outcomesOfAChoiceOverPages() throws Exception {
    String outcomes = many(150, ", \"#\"");
    String choose = "choose which \"Which?\" from \"none\"" + outcomes + " pass \"none\"\n";
    printed(framed("section s \"S\" {\n" + choose + "}\n" + test("", "20", "")), "a choice");
  }

  private static String test(String lines, String settings, String each) {
    return """
        test t "T" {
          outlet bip
          setup bipolar
          accept power from output, read as current
          accept peak-voltage at most 250 V
        """
        + lines
        + "table {\nmode | setting/W | load/ohm\nthin | "
        + settings
        + " | 100\n}\n"
        + each
        + "}\n";
  }

  @Test
  void aTableOfFourDigits() throws Exception {
    String settings = "1 to 40 step 1";
    String tests = "";
    for (int i = 0; i < 26; i++) {
      tests += test("", settings, "").replace("test t \"T\"", "test t" + i + " \"T" + i + "\"");
    }
    assertTrue(PaperLaw.holds(framed(tests), Paper.A4, false, "1,040 lines"));
  }

  @Test
  void aPointOfManyBoxes() throws Exception {
    String derives =
        IntStream.range(0, 90)
            .mapToObj(
                i ->
                    "derive x%d \"%s\" = peak-voltage / voltage, resolution 0.1\n"
                            .formatted(i, many(i % 4 == 0 ? 20 : 1, "#" + i + " "))
                        + "accept x%d at most 2.1\n".formatted(i))
            .collect(Collectors.joining());
    printed(framed(test(derives, "20, 30", "each {\nconfirm \"q00000z\"\n}\n")), "boxes");
  }

  @Test
  void manyFurtherSettings() throws Exception {
    for (int count : List.of(2, 3, 4, 7, 30)) {
      String settings =
          IntStream.range(0, count)
              .mapToObj(
                  i ->
                      "setting q%05xz \"S%d\" one of slow, a-very-slow-one leave slow\n"
                          .formatted(i, i))
              .collect(Collectors.joining());
      String bench = Explanations.bench().replace("  action select", settings + "  action select");
      String heads = many(count, " | #");
      String main =
          Examples.framed("test", test("", "20", ""))
              .replace("load/ohm", "load/ohm" + heads)
              .replace(
                  "| 100",
                  "| 100 | slow, a-very-slow-one" + " | a-very-slow-one".repeat(count - 1));
      Snippet snippet =
          Snippet.compile(Map.of("bench.pband", bench, "main.pband", main), "main.pband", null);
      printed(snippet, count + " settings");
    }
  }

  @Test
  void setupsOfManyLeadsAreRefused() {
    String leads = many(200, "  lead # \"#\", rated 2 kV\n");
    String contacts = many(200, "    contact # \"#\"\n");
    String wires = many(200, "    connect # from outlet.# to analyzer.key\n");
    String bench =
        Explanations.bench()
            .replace("lead old", leads.strip() + "\n  lead old")
            .replace("    contact switch", contacts + "    contact switch")
            .replace("\"KEY\"", "\"KEY\" holds 300");
    String main =
        Examples.framed("test", test("", "20", ""))
            .replace("    connect grey", wires + "    connect grey");
    Snippet snippet =
        Snippet.compile(Map.of("bench.pband", bench, "main.pband", main), "main.pband", null);
    assertTrue(snippet.codes().contains(Code.DRAWING_OFF_PAPER.id()), snippet.report());
  }

  @Test
  void namesWithoutEnd() throws Exception {
    String setting = many(300, "#");
    String bench =
        Explanations.bench()
            .replace("setting ramp", "setting " + setting)
            .replace("{ramp}", "{" + setting + "}");
    String main =
        Examples.framed("test", test("", "20", ""))
            .replace("procedure example", "procedure " + many(400, "#").replace("z", "x0z"))
            .replace("leads set", "leads set\nphases " + many(900, "#") + ", b")
            .replace("load/ohm", "load/ohm | " + setting)
            .replace("| 100", "| 100 | slow");
    Snippet snippet =
        Snippet.compile(Map.of("bench.pband", bench, "main.pband", main), "main.pband", null);
    printed(snippet, "names");
  }

  @Test
  void boxesOfManyDigits() throws Exception {
    String bench = Explanations.bench().replace("10 V to 3 kV", "10 V to 3e15 V");
    String main = Examples.framed("test", test("", "20", ""));
    Snippet snippet =
        Snippet.compile(Map.of("bench.pband", bench, "main.pband", main), "main.pband", null);
    boolean manyDigits =
        SheetMaker.sheet(snippet.plans().get(0)).blocks().stream()
            .flatMap(b -> b.run() == null ? Stream.empty() : b.run().groups().stream())
            .flatMap(g -> g.lines().stream())
            .flatMap(l -> l.boxes().stream())
            .anyMatch(b -> b.cells().length() >= 16);
    assertTrue(manyDigits);
    printed(snippet, "digits");
  }

  /** Wide and lost letters, without spaces or with other ones. */
  @Test
  void lettersOfEveryKind() throws Exception {
    for (String letters :
        List.of("\u27f6", "\u6d4b", "e\u0301", "W\u00a0", "\ud83d\udd25", "\u2030")) {
      String bench =
          Explanations.bench()
              .replace("\"red lead\"", "\"" + letters.repeat(60) + "\"")
              .replace("\"left pin\"", "\"" + letters.repeat(30) + "\"");
      String main =
          Examples.framed("test", test("", "20", ""))
              .replace("Output burns.", letters.repeat(3_000))
              .replace("\"T\"", "\"" + letters.repeat(300) + "\"");
      Snippet snippet =
          Snippet.compile(Map.of("bench.pband", bench, "main.pband", main), "main.pband", null);
      printed(snippet, letters);
    }
  }
}
