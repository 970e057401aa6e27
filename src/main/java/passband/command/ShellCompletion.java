package passband.command;

import java.util.ArrayList;
import java.util.List;

/**
 * {@code passband completion}: scripts that complete commands, options, their values and the other
 * arguments in shells, made from the table of commands.
 */
final class ShellCompletion {
  static final List<String> SHELLS = List.of("bash", "zsh", "fish");

  private ShellCompletion() {}

  static String of(String shell) {
    return switch (shell) {
      case "fish" -> fish();
      case "zsh" -> "autoload -U +X bashcompinit && bashcompinit\n" + bash();
      default -> bash();
    };
  }

  /** The words that an option's value may be; empty where it may be any. */
  static List<String> values(Option option) {
    List<String> values = new ArrayList<>(option.values());
    if (option.kind() == ArgumentKind.LIST_OF) {
      values.add(String.join(",", option.values()));
    }
    return values;
  }

  // ---- bash ----

  /** What completes an argument: its words, or what the script does for its kind. */
  private static String completes(ArgumentKind kind, List<String> values) {
    return values.isEmpty() ? kind.completion() : String.join(" ", values);
  }

  private static String bash() {
    StringBuilder cases = new StringBuilder();
    for (CommandSpec command : CommandTable.listed()) {
      cases.append(bash(command));
    }
    return """
        _passband() {
          local typed="${COMP_WORDS[COMP_CWORD]}" before="${COMP_WORDS[COMP_CWORD-1]}"
          local options="" values="none"
          # --as=json comes as three words
          if [ "$typed" = "=" ]; then
            typed=""
          elif [ "$before" = "=" ]; then
            before="${COMP_WORDS[COMP_CWORD-2]}"
          fi
          if [ "$COMP_CWORD" -eq 1 ]; then
            COMPREPLY=($(compgen -W "%s" -- "$typed"))
            return
          fi
          case "${COMP_WORDS[1]}" in
        %s  esac
          if [ "${typed#-}" != "$typed" ]; then
            values="$options"
          fi
          case "$values" in
            none) COMPREPLY=() ;;
            files) local IFS=$'\\n'; COMPREPLY=($(compgen -f -- "$typed")) ;;
            folders) local IFS=$'\\n'; COMPREPLY=($(compgen -d -- "$typed")) ;;
            *) COMPREPLY=($(compgen -W "$values" -- "$typed")) ;;
          esac
        }
        complete -o filenames -F _passband passband
        """
        .formatted(String.join(" ", CommandTable.names()), cases);
  }

  private static String bash(CommandSpec command) {
    StringBuilder lines = new StringBuilder("    " + command.name() + ")\n");
    List<String> names = new ArrayList<>();
    StringBuilder cases = new StringBuilder();
    for (Option option : command.allOptions()) {
      names.add(option.name());
      if (option.takesValue()) {
        String written = option.letter() == null ? "" : option.letter() + "|";
        cases.append(
            "        %s%s) values=\"%s\" ;;\n"
                .formatted(written, option.name(), completes(option.kind(), values(option))));
      }
    }
    Operand operand = command.operand(0);
    String operands = operand == null ? "none" : completes(operand.kind(), operand.values().get());
    lines.append("      options=\"" + String.join(" ", names) + "\"\n");
    lines.append("      case \"$before\" in\n").append(cases);
    lines.append("        *) values=\"" + operands + "\" ;;\n      esac ;;\n");
    return lines.toString();
  }

  // ---- fish ----

  private static String fish() {
    StringBuilder lines = new StringBuilder("complete -c passband -f\n");
    for (CommandSpec command : CommandTable.listed()) {
      lines.append(
          "complete -c passband -n __fish_use_subcommand -a %s -d %s\n"
              .formatted(command.name(), quoted(command.summary())));
    }
    for (CommandSpec command : CommandTable.listed()) {
      String when = "complete -c passband -n '__fish_seen_subcommand_from " + command.name() + "'";
      for (Option option : command.allOptions()) {
        lines.append(when + fish(option) + " -d " + quoted(option.help()) + "\n");
      }
      Operand operand = command.operand(0);
      if (operand != null) {
        lines.append(when + fish(operand.kind(), operand.values().get()) + "\n");
      }
    }
    return lines.toString();
  }

  private static String fish(Option option) {
    String letter = option.letter() == null ? "" : " -s " + option.letter().substring(1);
    String name = letter + " -l " + option.name().substring(2);
    return option.takesValue() ? name + " -r" + fish(option.kind(), values(option)) : name;
  }

  private static String fish(ArgumentKind kind, List<String> values) {
    if (!values.isEmpty()) {
      return " -f -a " + quoted(String.join(" ", values));
    }
    return switch (kind.completion()) {
      case "files" -> " -F";
      case "folders" -> " -f -a '(__fish_complete_directories)'";
      default -> " -f";
    };
  }

  private static String quoted(String text) {
    return "'" + text.replace("\\", "\\\\").replace("'", "\\'") + "'";
  }
}
