package passband.command;

import java.util.List;
import java.util.function.Supplier;

/**
 * A word after a command that is no option.
 *
 * @param name what help calls it
 * @param noun what messages call it
 * @param repeated whether more of the same may follow
 * @param values the words that it may be, asked for only when needed; none where it may be any
 */
record Operand(
    String name,
    String noun,
    ArgumentKind kind,
    boolean required,
    boolean repeated,
    Supplier<List<String>> values) {

  static Operand of(String name, ArgumentKind kind) {
    return new Operand(name, name, kind, true, false, List::of);
  }

  static Operand oneOf(String name, String noun, Supplier<List<String>> values) {
    return new Operand(name, noun, ArgumentKind.ONE_OF, true, false, values);
  }

  /** The same once or more often. */
  Operand orMore() {
    return new Operand(name, noun, kind, required, true, values);
  }

  /** The same, where it may be left out. */
  Operand orNone() {
    return new Operand(name, noun, kind, false, repeated, values);
  }

  /** As a synopsis writes it. */
  String synopsis() {
    String written = name + (repeated ? "..." : "");
    return required ? written : "[" + written + "]";
  }
}
