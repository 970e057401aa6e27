package passband.command;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An option of a command.
 *
 * @param name with its two hyphens
 * @param letter its short form with one hyphen; null for none
 * @param value what help calls its value; empty for a flag
 * @param values the words that it takes; empty where it takes any
 * @param otherwise its value where it is not given; null for none
 * @param help what it does, without its values and its default
 */
record Option(
    String name,
    @Nullable String letter,
    ArgumentKind kind,
    String value,
    List<String> values,
    @Nullable String otherwise,
    String help) {

  static Option flag(String name, String help) {
    return new Option(name, null, ArgumentKind.FLAG, "", List.of(), null, help);
  }

  static Option of(String name, ArgumentKind kind, String value, String help) {
    return new Option(name, null, kind, value, List.of(), null, help);
  }

  static Option oneOf(String name, String value, List<String> values, String help) {
    return new Option(name, null, ArgumentKind.ONE_OF, value, values, values.get(0), help);
  }

  static Option listOf(String name, String value, List<String> values, String help) {
    return new Option(name, null, ArgumentKind.LIST_OF, value, values, null, help);
  }

  /** The same with a short form. */
  Option or(String shortForm) {
    return new Option(name, shortForm, kind, value, values, otherwise, help);
  }

  /** The same with a value for where it is not given. */
  Option orElse(String given) {
    return new Option(name, letter, kind, value, values, given, help);
  }

  boolean takesValue() {
    return kind != ArgumentKind.FLAG;
  }
}
