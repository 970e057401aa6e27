package passband.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Explanations;
import passband.diagnostic.Severity;
import passband.testing.Examples;
import passband.testing.Snippet;

/** Every code has a page; its example has the fault, and what stands there instead has none. */
class ManualTest {
  private record Example(String kind, String text) {}

  private static List<Example> examples(Code code) {
    List<Example> examples = new ArrayList<>();
    Matcher fence =
        Pattern.compile("(?m)^```pband ([a-z0-9-]+)\\n(.*?)\\n```$", Pattern.DOTALL)
            .matcher(Explanations.page(code));
    while (fence.find()) {
      examples.add(new Example(fence.group(1), fence.group(2)));
    }
    return examples;
  }

  @ParameterizedTest
  @EnumSource(Code.class)
  void thePageHasItsHeadings(Code code) {
    String page = Explanations.page(code);
    List<String> headings = page.lines().filter(l -> l.startsWith("#")).toList();
    assertEquals(
        List.of(
            "# " + code.id(), "## What", "## Why", "## Example", "## Instead", "## Allowing it"),
        headings);
    String article = code.weight().startsWith("error") ? "An " : "A ";
    assertTrue(page.contains("\n" + article + code.weight() + ": " + code.title() + ".\n"), page);
  }

  /** What an error unless allowed asks its reason to say stands on its page. */
  @ParameterizedTest
  @EnumSource(Code.class)
  void thePageTellsWhetherItCanBeAllowed(Code code) {
    String page = Explanations.page(code);
    String last = page.substring(page.indexOf("## Allowing it\n"));
    assertEquals(!code.allowable(), last.contains("It cannot be allowed."), last);
    assertEquals(code.allowable(), last.contains("`allow " + code.id() + " because "), last);
    String question = code.question();
    if (question != null) {
      assertEquals(Severity.ERROR, code.severity());
      assertTrue(last.contains("The reason must say " + question + ";"), last);
    }
  }

  @ParameterizedTest
  @EnumSource(Code.class)
  void theExampleHasTheFaultAndTheMendHasNone(Code code) {
    List<Example> examples = examples(code);
    assertEquals(2, examples.size());
    Snippet bad = Examples.compile(examples.get(0).kind, examples.get(0).text);
    List<Diagnostic> found = Examples.relevant(bad, code);
    assertFalse(found.isEmpty(), "nothing found\n" + bad.report());
    assertTrue(found.stream().anyMatch(d -> d.code() == code), bad.report());
    Snippet good = Examples.compile(examples.get(1).kind, examples.get(1).text);
    assertEquals(
        List.of(),
        Examples.relevant(good, code).stream().map(d -> d.code().id()).toList(),
        good.report());
  }

  /** An example shows one fault and not its consequences: no cascade. */
  @ParameterizedTest
  @EnumSource(Code.class)
  void theExampleHasNoOtherFault(Code code) {
    Example example = examples(code).get(0);
    Snippet bad = Examples.compile(example.kind, example.text);
    List<String> others =
        Examples.relevant(bad, code).stream()
            .filter(d -> d.code() != code)
            .map(d -> d.code().id())
            .distinct()
            .toList();
    assertEquals(Examples.companions(code), others, bad.report());
  }
}
