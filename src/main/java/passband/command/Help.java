package passband.command;

import java.util.ArrayList;
import java.util.List;

/** What {@code help} prints, made from the table of commands. */
final class Help {
  private static final int WIDTH = 118;

  private static final String TITLE =
      "passband: output-verification procedures of medical generators, from text to checked limits"
          + " and a checklist\n";

  static final String EXIT_STATUS =
      "Exit status: 0 no errors (there may be warnings), 1 errors found, revisions differ or a"
          + " reading does not pass, 2 could not run.\n";

  private Help() {}

  /** All commands, a line each. */
  static String overview() {
    return TITLE
        + "\n"
        + commands("  passband ", "")
        + "\nA PATH is a .pband file or a folder of them.\n"
        + EXIT_STATUS;
  }

  /** The list of the README. */
  static String readme() {
    return commands("    ./passband ", "# ") + "\n" + EXIT_STATUS;
  }

  /**
   * A line for each command.
   *
   * @param before what begins a line
   * @param between what stands before the summary
   */
  private static String commands(String before, String between) {
    List<List<String>> rows = new ArrayList<>();
    for (CommandSpec command : CommandTable.listed()) {
      rows.add(List.of(command.synopsis(), between + command.summary()));
    }
    return table(before, rows);
  }

  /** A command's own page. */
  static String of(CommandSpec command) {
    StringBuilder page = new StringBuilder();
    List<String> parts = new ArrayList<>(List.of(command.synopsis()));
    command.options().forEach(option -> parts.add(synopsis(option)));
    page.append(wrapped("passband ", parts)).append('\n').append(command.details());
    List<List<String>> rows = new ArrayList<>();
    for (Option option : command.allOptions()) {
      rows.add(List.of(written(option), effect(option)));
    }
    return page.append('\n').append(table("  ", rows)).toString();
  }

  private static String synopsis(Option option) {
    String name = option.letter() == null ? option.name() : option.letter();
    return "[" + name + (option.takesValue() ? " " + option.value() : "") + "]";
  }

  private static String written(Option option) {
    String letter = option.letter() == null ? "" : option.letter() + ", ";
    return letter + option.name() + (option.takesValue() ? " " + option.value() : "");
  }

  /** What an option does, with its values and its default. */
  private static String effect(Option option) {
    String values =
        switch (option.kind()) {
          case ONE_OF -> ": " + listed(option.values(), "or");
          case LIST_OF -> ": " + listed(option.values(), "and");
          default -> "";
        };
    String otherwise = option.otherwise() == null ? "" : " (default: " + option.otherwise() + ")";
    return option.help() + values + otherwise;
  }

  /** Words with commas and before the last a conjunction. */
  static String listed(List<String> words, String conjunction) {
    int last = words.size() - 1;
    return last < 1
        ? String.join("", words)
        : String.join(", ", words.subList(0, last)) + " " + conjunction + " " + words.get(last);
  }

  /** Rows of two columns; the second is wrapped. */
  private static String table(String before, List<List<String>> rows) {
    int width = 0;
    for (List<String> row : rows) {
      width = Math.max(width, row.get(0).length());
    }
    StringBuilder table = new StringBuilder();
    for (List<String> row : rows) {
      String first = before + row.get(0) + " ".repeat(width + 2 - row.get(0).length());
      table.append(wrapped(first, List.of(row.get(1).split(" "))));
    }
    return table.toString();
  }

  /** Words on lines, the first after what begins it, the others below its end. */
  private static String wrapped(String first, List<String> words) {
    StringBuilder lines = new StringBuilder(first);
    int length = first.length();
    boolean begun = false;
    for (String word : words) {
      if (begun && length + 1 + word.length() > WIDTH) {
        lines.append('\n').append(" ".repeat(first.length()));
        length = first.length();
        begun = false;
      }
      lines.append(begun ? " " : "").append(word);
      length += word.length() + (begun ? 1 : 0);
      begun = true;
    }
    return lines.append('\n').toString();
  }
}
