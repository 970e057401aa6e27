package passband.command;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import passband.diagnostic.Spelling;
import passband.library.UsageException;

/**
 * Options and paths of one command. Written here and not taken from a library: the command's whole
 * start costs a few hundredths of a second, and a library for arguments several times that.
 */
final class Arguments {
  private final List<String> paths = new ArrayList<>();
  private final Map<String, String> values = new HashMap<>();

  private Arguments() {}

  /**
   * Reads what follows a command's name.
   *
   * @param taking the options that take a value, such as {@code --as}
   * @param flags the options that do not
   */
  static Arguments of(List<String> words, Set<String> taking, Set<String> flags)
      throws UsageException {
    Arguments arguments = new Arguments();
    boolean onlyPaths = false;
    for (int i = 0; i < words.size(); i++) {
      String word = words.get(i);
      if (onlyPaths || !word.startsWith("-") || word.equals("-")) {
        arguments.paths.add(word);
      } else if (word.equals("--")) {
        onlyPaths = true;
      } else {
        i += arguments.option(word, i + 1 < words.size() ? words.get(i + 1) : null, taking, flags);
      }
    }
    return arguments;
  }

  /** How many more words the option takes. */
  private int option(String word, String next, Set<String> taking, Set<String> flags)
      throws UsageException {
    int equals = word.indexOf('=');
    String name = equals < 0 ? word : word.substring(0, equals);
    if (name.equals("-o")) {
      name = "--out";
    }
    if (flags.contains(name) && equals < 0) {
      values.put(name, "");
      return 0;
    }
    if (!taking.contains(name)) {
      List<String> known = new ArrayList<>(taking);
      known.addAll(flags);
      String near = Spelling.nearest(name, known);
      throw new UsageException(
          "there is no option " + name + (near == null ? "" : "; did you mean " + near + "?"));
    }
    String value = equals < 0 ? next : word.substring(equals + 1);
    if (value == null || value.isEmpty()) {
      throw new UsageException("the option " + name + " needs a value");
    }
    if (values.put(name, value) != null) {
      throw new UsageException("the option " + name + " is given twice");
    }
    return equals < 0 ? 1 : 0;
  }

  List<String> paths() {
    return paths;
  }

  boolean has(String flag) {
    return values.containsKey(flag);
  }

  String value(String name, String otherwise) {
    return values.getOrDefault(name, otherwise);
  }

  /** One of several values of an option. */
  String oneOf(String name, String otherwise, List<String> allowed) throws UsageException {
    String value = value(name, otherwise);
    if (!allowed.contains(value)) {
      throw new UsageException(
          name + " is one of " + String.join(", ", allowed) + ", not '" + value + "'");
    }
    return value;
  }
}
