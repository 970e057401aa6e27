package passband.command;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Spelling;
import passband.library.UsageException;

/**
 * The arguments of one command, read by its entry in the table. Written here and not taken from a
 * library: the command's whole start costs a few hundredths of a second, and a library for
 * arguments several times that.
 */
final class Arguments {
  private static final int MOST_DAY_DIGITS = 5;

  private final CommandSpec command;
  private final List<String> operands = new ArrayList<>();
  private final Map<String, String> values = new HashMap<>();

  private Arguments(CommandSpec command) {
    this.command = command;
  }

  /** Reads what follows the command's name. */
  static Arguments of(CommandSpec command, List<String> words) throws UsageException {
    Arguments arguments = new Arguments(command);
    if (asksForHelp(command, words)) {
      arguments.values.put(CommandSpec.HELP.name(), "");
      return arguments;
    }
    boolean onlyOperands = !command.listed(); // git's own arguments have no options
    for (int i = 0; i < words.size(); i++) {
      String word = words.get(i);
      if (onlyOperands || !word.startsWith("-") || word.equals("-")) {
        arguments.addOperand(word);
      } else if (word.equals("--")) {
        onlyOperands = true;
      } else {
        i += arguments.addOption(word, i + 1 < words.size() ? words.get(i + 1) : null);
      }
    }
    arguments.requireOperands();
    return arguments;
  }

  /** Whether help is asked for; whatever else is written then does not count. */
  private static boolean asksForHelp(CommandSpec command, List<String> words) {
    int end = words.indexOf("--");
    List<String> before = end < 0 ? words : words.subList(0, end);
    return command.listed()
        && (before.contains(CommandSpec.HELP.name()) || before.contains(CommandSpec.HELP.letter()));
  }

  /** Takes an option; how many of the following words are its value. */
  private int addOption(String word, @Nullable String next) throws UsageException {
    int equals = word.indexOf('=');
    String name = equals < 0 ? word : word.substring(0, equals);
    Option option = command.option(name);
    if (option == null) {
      throw unknownOption(name);
    }
    if (!option.takesValue()) {
      if (equals >= 0) {
        throw new UsageException("the option " + name + " takes no value");
      }
      values.put(option.name(), "");
      return 0;
    }
    String value = equals < 0 ? next : word.substring(equals + 1);
    if (value == null || value.isEmpty()) {
      throw new UsageException("the option " + name + " needs a value: " + option.value());
    }
    requireValue(option, value);
    if (values.put(option.name(), value) != null) {
      throw new UsageException("the option " + name + " is given twice");
    }
    return equals < 0 ? 1 : 0;
  }

  private UsageException unknownOption(String name) {
    List<String> known = new ArrayList<>();
    command.allOptions().forEach(option -> known.add(option.name()));
    String near = Spelling.nearest(name, known);
    return new UsageException(
        "'"
            + command.name()
            + "' has no option "
            + name
            + (near == null
                ? see() + "; a path that begins with a dash is written after '--'"
                : "; did you mean " + near + "?"));
  }

  private static void requireValue(Option option, String value) throws UsageException {
    boolean right =
        switch (option.kind()) {
          case ONE_OF -> option.values().contains(value);
          case LIST_OF -> option.values().containsAll(List.of(value.split(",", -1)));
          case DATE -> isDate(value);
          case DAYS -> isDays(value);
          default -> true;
        };
    if (!right) {
      throw new UsageException(
          option.name() + " must be " + expected(option) + ", not '" + value + "'");
    }
  }

  /** What an option's value must be, in words. */
  private static String expected(Option option) {
    return switch (option.kind()) {
      case ONE_OF -> Help.listed(option.values(), "or");
      case LIST_OF -> "a list of " + Help.listed(option.values(), "and");
      case DATE -> "a date such as 2026-01-31";
      default -> "a number of days from 1 to 99999";
    };
  }

  private static boolean isDate(String value) {
    try {
      LocalDate.parse(value);
      return true;
    } catch (DateTimeParseException e) {
      return false;
    }
  }

  private static boolean isDays(String value) {
    return value.length() <= MOST_DAY_DIGITS
        && value.charAt(0) != '0'
        && value.chars().allMatch(c -> c >= '0' && c <= '9');
  }

  private void addOperand(String word) throws UsageException {
    Operand operand = command.operand(operands.size());
    if (operand == null) {
      String takes = command.operands().isEmpty() ? "no arguments" : "no more arguments";
      throw new UsageException(
          "'" + command.name() + "' takes " + takes + ": '" + word + "'" + see());
    }
    List<String> known = operand.values().get();
    if (!known.isEmpty() && !known.contains(word)) {
      throw unknown(operand, word, known);
    }
    operands.add(word);
  }

  /** Says that an operand is none of its words. */
  private UsageException unknown(Operand operand, String word, List<String> known) {
    String near = Spelling.nearest(word, known);
    return new UsageException(
        "unknown "
            + operand.noun()
            + " '"
            + word
            + "'"
            + (near == null ? see() : "; did you mean '" + near + "'?"));
  }

  private void requireOperands() throws UsageException {
    Operand next =
        operands.size() < command.operands().size()
            ? command.operands().get(operands.size())
            : null;
    if (next != null && next.required()) {
      List<String> known = next.values().get();
      String which = known.isEmpty() ? "" : ": " + Help.listed(known, "or");
      throw new UsageException("'" + command.name() + "' needs " + next.name() + which + see());
    }
  }

  private String see() {
    return " (see 'passband help " + command.name() + "')";
  }

  /** The words that are no options, in order. */
  List<String> operands() {
    return operands;
  }

  /** Whether an option is given. */
  boolean has(String name) {
    return values.containsKey(known(name).name());
  }

  /** The value of an option that has one where it is not given. */
  String value(String name) {
    return Objects.requireNonNull(valueOrNull(name), name);
  }

  /** The value of an option; null where it has none. */
  @Nullable String valueOrNull(String name) {
    return values.getOrDefault(name, known(name).otherwise());
  }

  /** The words of an option that takes a list. */
  Set<String> list(String name) {
    String value = valueOrNull(name);
    return value == null ? Set.of() : new TreeSet<>(List.of(value.split(",")));
  }

  private Option known(String name) {
    return Objects.requireNonNull(command.option(name), name);
  }
}
