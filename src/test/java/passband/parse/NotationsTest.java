package passband.parse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.antlr.v4.runtime.Token;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.source.SourceFile;
import passband.testing.Repository;

/**
 * Lines of the libraries, each written in the notation of a manual, a spreadsheet, a word processor
 * or another language: the fix that is offered gives the line back.
 */
class NotationsTest {

  private static final String ROW_ENDS = "(?m)(?<=[|] )([0-9.]+) to ([0-9.]+)$";

  /** What is matched in the libraries, and what is written in its place. */
  static List<String[]> habits() {
    return List.of(
        new String[] {"at most (?=[0-9])", "max "},
        new String[] {"at most (?=[0-9])", "max. "},
        new String[] {"at most (?=[0-9])", "Maximum "},
        new String[] {"at most (?=[0-9])", "<= "},
        new String[] {"at most (?=[0-9])", "≤ "},
        new String[] {"at most (?=[0-9])", "≤"},
        new String[] {"at most (?=[0-9])", "< "},
        new String[] {"at least (?=[0-9])", "min "},
        new String[] {"at least (?=[0-9])", ">= "},
        new String[] {"at least (?=[0-9])", "≥"},
        new String[] {"within (?=[0-9])", "± "},
        new String[] {"within (?=[0-9])", "±"},
        new String[] {"within (?=[0-9])", "+/- "},
        new String[] {"within (?=[0-9])", "within ± "},
        new String[] {"of setting", "of the setting"},
        new String[] {"(?<=accept power )within (?=[0-9.]+ % of)", ""},
        new String[] {ROW_ENDS, "$1–$2"},
        new String[] {ROW_ENDS, "$1-$2"},
        new String[] {ROW_ENDS, "$1 — $2"},
        new String[] {ROW_ENDS, "$1 … $2"},
        new String[] {ROW_ENDS, "$1..$2"},
        new String[] {
          "(accept [a-z-]+) from ([0-9.]+) ([a-zA-Z]+) to ([0-9.]+) \\3", "$1 $2–$4 $3"
        },
        new String[] {"\"([^\"]+)\" [{]", "“$1” {"},
        new String[] {"\"([^\"]+)\" [{]", "„$1“ {"},
        new String[] {"\"([^\"']+)\" [{]", "'$1' {"},
        new String[] {"(?m)^(      )([a-z][^|\n]*[^|\n ]) *[|] *([^|\n]+)$", "$1$2\t$3"},
        new String[] {"(?<=table [{]\n)(      )([a-z][^\n]*[|][^\n]*[^|\n ])(?=\n)", "$1| $2 |"},
        new String[] {"(?m)^(    connect [^\\n]*) to ", "$1 -> "},
        new String[] {"(?m)^(  decision) ", "$1: "},
        new String[] {"(?m)^(  device) ", "$1 = "},
        new String[] {"(?m)^(    outlet +[a-z0-9-]+)$", "$1;"},
        new String[] {"(?m)^(  test [a-z]+)-([a-z]+ \")", "$1_$2"},
        new String[] {"(?m)^(  test [a-z]+)-([a-z]+ \")", "$1 $2"},
        new String[] {"(?m)^(    on)-(time )", "$1 $2"},
        new String[] {"(accept peak)-(voltage)", "$1 $2"},
        new String[] {"revision \"([A-Z])\"", "revision $1"},
        new String[] {"on (20[0-9]{2})-([0-9]{2})-([0-9]{2})", "on $3.$2.$1"},
        new String[] {"(?m)^(      [a-z]+ +[|] [0-9]+), ([0-9]+)", "$1; $2"},
        new String[] {"(?m)^(      [a-z]+ +[|] [0-9]+), ([0-9]+)", "$1 $2"});
  }

  @ParameterizedTest
  @MethodSource("habits")
  void aHabitIsMended(String proper, String habit) {
    int tried = 0;
    Map<String, String> own =
        Map.of("own.pband", "rule a \"A\" {\n  accept power at least 3 W\n}\n");
    for (Map<String, String> texts :
        List.of(
            Repository.texts(Repository.PROCEDURES), Repository.texts(Repository.LIBRARY), own)) {
      for (Map.Entry<String, String> file : texts.entrySet()) {
        Matcher matcher = Pattern.compile(proper).matcher(file.getValue());
        while (file.getKey().endsWith(".pband") && matcher.find()) {
          String text = file.getValue();
          StringBuilder changed = new StringBuilder();
          Matcher one = Pattern.compile(proper).matcher(text);
          assertTrue(one.find(matcher.start()));
          one.appendReplacement(changed, habit);
          changed.append(text.substring(matcher.end()));
          mended(file.getKey(), text, changed.toString());
          tried++;
        }
      }
    }
    assertTrue(tried > 0, "nowhere: " + proper);
  }

  /** Comments of other languages, and the rule under a heading. */
  @ParameterizedTest
  @CsvSource({"// It's here", "/* It's here", "-- It's here", "|---|:--:|"})
  void aLineThatIsNone(String line) {
    String text = Repository.texts(Repository.LIBRARY).get("rules.pband");
    mended("rules.pband", text, line + "\n" + text);
  }

  @Test
  void aMiddleWithItsWidth() {
    assertEquals("200 to 258", cell("229 ± 29"));
    assertEquals("4.5 to 5.5", cell("5 +/- 0.5"));
  }

  private static String cell(String cell) {
    String start = "procedure p \"P\" {\n  test t \"T\" {\n    table {\n      stated/mA\n      ";
    List<Diagnostic> faults = faults(start + cell + "\n    }\n  }\n}\n");
    assertEquals(1, faults.size(), faults.toString());
    String hint = faults.get(0).hint();
    assertTrue(hint != null && hint.startsWith("write "), hint);
    return hint.substring("write ".length());
  }

  /** Where nothing that is tried can be read, nothing is offered. */
  @Test
  void noHintThatDoesNotHelp() {
    List<Diagnostic> faults = faults("rule a \"A\" {\n  accept power max max 3 W\n}\n");
    assertEquals(1, faults.size());
    assertEquals(null, faults.get(0).hint());
  }

  /** What is twice as good, or bad, is the author's to say. */
  @Test
  void theChoiceOfAnAlternativeIsTheAuthors() {
    List<Diagnostic> faults =
        faults("rule a \"A\" {\n  accept power within 20 % of setting or 3 W\n}\n");
    assertEquals(1, faults.size());
    assertTrue(faults.get(0).fixes().isEmpty());
  }

  private static List<Diagnostic> faults(String text) {
    Diagnostics faults = new Diagnostics();
    Syntax.parse(new SourceFile("a.pband", text), faults);
    return faults.list();
  }

  /** The preferred fixes of a changed text make its words those of the text again. */
  private static void mended(String name, String text, String changed) {
    List<Diagnostic> faults = faults(changed);
    assertTrue(!faults.isEmpty(), () -> name + ": nothing is wrong with\n" + changed);
    StringBuilder mended = new StringBuilder(changed);
    List<Fix.Edit> edits = new ArrayList<>();
    for (Diagnostic fault : faults) {
      assertEquals(1, fault.fixes().size(), () -> fault.toString());
      assertTrue(fault.fixes().get(0).preferred());
      edits.addAll(fault.fixes().get(0).edits());
    }
    edits.sort((a, b) -> b.span().compareTo(a.span()));
    for (Fix.Edit edit : edits) {
      mended.replace(edit.span().start(), edit.span().end(), edit.text());
    }
    assertEquals(words(text), words(mended.toString()));
  }

  private static List<String> words(String text) {
    return Syntax.laidOut(new SourceFile("a.pband", text)).stream().map(Token::getText).toList();
  }
}
