package passband.compile;

import java.util.Map;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Spelling;
import passband.source.Span;
import passband.syntax.Word;

/** Puts a point's own values into a text: {@code {mode}}, {@code {setting}} and so on; {@code {{} is a brace. */
final class Placeholders {
  private final Diagnostics diagnostics;

  Placeholders(Diagnostics diagnostics) {
    this.diagnostics = diagnostics;
  }

  /** The text with its placeholders filled; one that stands for nothing is an error and stays. */
  String filled(Word text, Map<String, String> values) {
    String raw = text.text();
    StringBuilder out = new StringBuilder();
    int at = 0;
    while (at < raw.length()) {
      int open = raw.indexOf('{', at);
      if (open < 0) {
        break;
      }
      out.append(raw, at, open);
      if (raw.startsWith("{{", open)) {
        out.append('{');
        at = open + 2;
        continue;
      }
      int close = raw.indexOf('}', open);
      String name = close < 0 ? raw.substring(open + 1) : raw.substring(open + 1, close);
      String value = values.get(name);
      if (value == null) {
        say(text, close < 0 ? raw.substring(open) : raw.substring(open, close + 1), name, values);
      }
      out.append(value == null ? "{" + name + "}" : value);
      at = close < 0 ? raw.length() : close + 1;
    }
    return out.append(raw, at, raw.length()).toString();
  }

  private void say(Word text, String written, String name, Map<String, String> values) {
    int at = text.span().text().indexOf(written);
    Span span =
        at < 0
            ? text.span()
            : new Span(
                text.span().file(),
                text.span().start() + at,
                text.span().start() + at + written.length());
    String near = Spelling.nearest(name, values.keySet());
    String known =
        values.isEmpty()
            ? "no placeholder"
            : "{" + String.join("}, {", values.keySet().stream().sorted().toList()) + "}";
    diagnostics
        .say(Code.UNKNOWN_PLACEHOLDER, span, "unknown placeholder '{%s}'", name)
        .meant(
            near == null ? null : "{" + near + "}", "known here: %s; write {{ for a brace", known);
  }
}
