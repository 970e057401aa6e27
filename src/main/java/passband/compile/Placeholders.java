package passband.compile;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Spelling;
import passband.resolve.Names;
import passband.resolve.Placeholder;
import passband.source.Span;
import passband.syntax.Word;

/** Puts a point's own values into a text: {@code {mode}}, {@code {setting}} and so on; {@code {{} is a brace. */
final class Placeholders {
  private final Names names;
  private final Diagnostics diagnostics;

  /**
   * What a placeholder stands for.
   *
   * @param text what is printed in its place
   * @param declaration the name where it is declared; null when the language gives it
   * @param often how many values it may mean; more than one is an error
   */
  record Value(String text, @Nullable Word declaration, int often) {
    /** Of a name that the language gives. */
    static Value given(String text) {
      return new Value(text, null, 1);
    }
  }

  Placeholders(Names names, Diagnostics diagnostics) {
    this.names = names;
    this.diagnostics = diagnostics;
  }

  /** The text with its placeholders filled; one that stands for nothing is an error and stays. */
  String filled(Word text, Map<String, Value> values) {
    StringBuilder out = new StringBuilder();
    int at = 0;
    for (Placeholder one : Placeholder.in(text)) {
      out.append(plain(text, at, one.start())).append(filled(one, values));
      at = one.end();
    }
    return out.append(plain(text, at, text.text().length())).toString();
  }

  private static String plain(Word text, int from, int to) {
    return text.text().substring(from, to).replace("{{", "{");
  }

  private String filled(Placeholder one, Map<String, Value> values) {
    Value value = values.get(one.name().text());
    if (value == null) {
      say(one, values);
      return "{" + one.name().text() + "}";
    }
    names.use(one.name(), value.declaration);
    if (value.often > 1 && value.declaration != null) {
      sayAmbiguous(one, value.often, value.declaration);
    }
    return value.text;
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
    Span span = one.span();
    diagnostics
        .say(Code.UNKNOWN_PLACEHOLDER, span, "unknown placeholder '{%s}'", one.name().text())
        .meant(
            near == null ? null : "{" + near + "}",
            "known here: %s; write {{ for a brace",
            known.isEmpty() ? "no placeholder" : "{" + String.join("}, {", known) + "}");
  }
}
