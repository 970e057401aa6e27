package passband.compile;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Spelling;
import passband.plan.PlanStep;
import passband.plan.Slot;
import passband.plan.Words;
import passband.resolve.Names;
import passband.resolve.Placeholder;
import passband.source.Span;
import passband.syntax.Word;

/** Puts a point's own values into a text: {@code {mode}}, {@code {setting}} and so on; {@code {{} is a brace. */
final class Placeholders {
  /** What is let go of to stop the output. */
  static final String HELD = "held";

  private final Names names;
  private final Diagnostics diagnostics;

  /**
   * What a placeholder stands for.
   *
   * @param slot its kind
   * @param text what is printed in its place
   * @param declaration the name where it is declared; null when the language gives it
   * @param often how many values it may mean; more than one is an error
   */
  record Value(Slot slot, String text, @Nullable Word declaration, int often) {
    /** Of a name that the language gives. */
    static Value given(Slot slot, String text) {
      return new Value(slot, text, null, 1);
    }
  }

  Placeholders(Names names, Diagnostics diagnostics) {
    this.names = names;
    this.diagnostics = diagnostics;
  }

  /** Whether some step's words have a placeholder of this kind. */
  static boolean named(List<PlanStep> steps, Slot slot) {
    for (PlanStep step : steps) {
      if (step.words() != null && step.words().has(slot)) {
        return true;
      }
    }
    return false;
  }

  /** The text with its placeholders filled; one that stands for nothing is an error and stays. */
  Words filled(Word text, Map<String, Value> values) {
    List<Words.Part> parts = new ArrayList<>();
    int at = 0;
    for (Placeholder one : Placeholder.in(text)) {
      said(text, at, one.start(), parts);
      parts.add(filled(one, values));
      at = one.end();
    }
    said(text, at, text.text().length(), parts);
    return new Words(parts);
  }

  private static void said(Word text, int from, int to, List<Words.Part> parts) {
    if (from < to) {
      parts.add(new Words.Said(text.text().substring(from, to).replace("{{", "{")));
    }
  }

  private Words.Part filled(Placeholder one, Map<String, Value> values) {
    String name = one.name().text();
    Value value = values.get(name);
    if (value == null) {
      say(one, values);
      return new Words.Said("{" + name + "}");
    }
    names.use(one.name(), value.declaration);
    if (value.often > 1 && value.declaration != null) {
      sayAmbiguous(one, value.often, value.declaration);
    }
    return new Words.Filled(value.slot, name, value.text);
  }

  private void sayAmbiguous(Placeholder one, int often, Word declaration) {
    String name = one.name().text();
    diagnostics
        .say(
            Code.AMBIGUOUS_PLACEHOLDER,
            one.span(),
            "'{%s}' can mean any of %d values: the step is answered in each run or at each point",
            name,
            often)
        .note(declaration.span(), "recorded here, %d times", often)
        .hint("record '%s' in a section, or say in words which value is meant", name);
  }

  private void say(Placeholder one, Map<String, Value> values) {
    Set<String> known = new TreeSet<>(values.keySet());
    String near = Spelling.nearest(one.name().text(), known);
    if (one.name().text().equals(HELD)) {
      diagnostics
          .say(Code.UNKNOWN_PLACEHOLDER, one.span(), "nothing is held that '{%s}' could name", HELD)
          .hint(
              "where output is never on, as in a test with 'output off', nothing is let go of:"
                  + " write it in words, such as 'the key', or add an action 'as stop' without it");
      return;
    }
    Span span = one.span();
    DiagnosticBuilder said =
        diagnostics
            .say(Code.UNKNOWN_PLACEHOLDER, span, "unknown placeholder '{%s}'", one.name().text())
            .meant(
                near == null ? null : "{" + near + "}",
                "known here: %s; write {{ for a brace",
                known.isEmpty() ? "no placeholder" : "{" + String.join("}, {", known) + "}");
    for (Value value : values.values()) {
      if (value.slot == Slot.RECORD && value.declaration != null) {
        said.note(value.declaration.span(), "what is recorded first is '%s'", value.declaration);
        return;
      }
    }
  }
}
