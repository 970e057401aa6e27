package passband.parse;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.antlr.v4.runtime.Token;
import org.junit.jupiter.api.Test;
import passband.diagnostic.Diagnostic;
import passband.parse.antlr.PassbandLexer;
import passband.source.SourceFile;
import passband.source.Span;
import passband.testing.Repository;
import passband.testing.Snippet;

/**
 * Every word of every source of the library of the tests is deleted, doubled and swapped with its
 * neighbour, one slip at a time: never an exception, and few errors for one slip. What was measured
 * is printed.
 */
class SlipTest {
  private static final int MOST = 3;

  /** The procedure that uses a file of the library; null when none does. */
  private static String main(String name) {
    return switch (name) {
      case "analyzers/gravel.pband" -> null;
      case "analyzers/chalk.pband", "sundew/sundew.pband", "sundew/sundew-energy.pband" ->
          "sundew/sundew-energy.pband";
      case "rules.pband", "yarrow/yarrow.pband", "yarrow/yarrow-service.pband" ->
          "yarrow/yarrow-service.pband";
      default -> "teasel/teasel-output.pband";
    };
  }

  private static List<Span> words(String name, String text) {
    SourceFile source = new SourceFile(name, text);
    List<Span> words = new ArrayList<>();
    for (Token token : Lexer.lex(source.text())) {
      if (token.getType() != PassbandLexer.NEWLINE && token.getType() != PassbandLexer.COMMENT) {
        words.add(Lexer.span(source, token));
      }
    }
    return words;
  }

  /** A source with one slip in it. */
  private record Slip(String name, String text, String what) {}

  /** How many errors a slip made, and which. */
  private record Outcome(int errors, String what, String report) {}

  private static List<Slip> slips(Map<String, String> library) {
    List<Slip> slips = new ArrayList<>();
    for (Map.Entry<String, String> file : library.entrySet()) {
      if (file.getKey().endsWith(".pband") && main(file.getKey()) != null) {
        slips(file.getKey(), file.getValue(), slips);
      }
    }
    return slips;
  }

  private static void slips(String name, String text, List<Slip> slips) {
    List<Span> words = words(name, text);
    for (int i = 0; i < words.size(); i++) {
      Span w = words.get(i);
      String at = name + ", line " + w.line() + ": '" + w.text() + "' ";
      String before = text.substring(0, w.start());
      slips.add(new Slip(name, before + text.substring(w.end()), at + "deleted"));
      slips.add(
          new Slip(
              name, text.substring(0, w.end()) + " " + text.substring(w.start()), at + "doubled"));
      if (i + 1 < words.size()) {
        Span next = words.get(i + 1);
        String between = text.substring(w.end(), next.start());
        String swapped = before + next.text() + between + w.text() + text.substring(next.end());
        slips.add(new Slip(name, swapped, at + "swapped"));
      }
    }
  }

  private static Outcome outcome(Map<String, String> library, Slip slip) {
    Map<String, String> files = new TreeMap<>(library);
    files.put(slip.name, slip.text);
    Snippet snippet = Snippet.compile(files, main(slip.name), null);
    int errors = (int) snippet.diagnostics().stream().filter(Diagnostic::isError).count();
    return new Outcome(errors, slip.what, errors > MOST ? snippet.report() : "");
  }

  @Test
  void oneSlipIsFewErrors() {
    Map<String, String> library = Repository.texts(Repository.LIBRARY);
    List<Outcome> outcomes =
        slips(library).parallelStream().map(slip -> outcome(library, slip)).toList();
    int[] sorted = outcomes.stream().mapToInt(Outcome::errors).sorted().toArray();
    int median = sorted[sorted.length / 2];
    List<Outcome> over = outcomes.stream().filter(o -> o.errors > MOST).toList();
    System.out.printf(
        "slips: %d; errors for one slip: median %d, 90 %% at most %d, most %d; over three: %d%n",
        sorted.length,
        median,
        sorted[sorted.length * 9 / 10],
        sorted[sorted.length - 1],
        over.size());
    over.forEach(o -> System.out.println("over three: " + o.errors + ": " + o.what));
    assertEquals(1, median);
    assertEquals(List.of(), over);
  }
}
