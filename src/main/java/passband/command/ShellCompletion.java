package passband.command;

import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.diagnostic.Code;

/** {@code passband completion}: scripts that complete commands and options in shells. */
final class ShellCompletion {
  static final List<String> SHELLS = List.of("bash", "zsh", "fish");
  private static final Pattern OPTION = Pattern.compile("--[a-z][a-z-]*");

  private ShellCompletion() {}

  /** The options of a command, as its help names them. */
  static List<String> options(String command) {
    TreeSet<String> options = new TreeSet<>(List.of("--help"));
    Matcher option = OPTION.matcher(Help.of(command));
    while (option.find()) {
      options.add(option.group());
    }
    return List.copyOf(options);
  }

  static String of(String shell, List<String> commands) {
    return switch (shell) {
      case "fish" -> fish(commands);
      case "zsh" -> "autoload -U +X bashcompinit && bashcompinit\n" + bash(commands);
      default -> bash(commands);
    };
  }

  private static String words(String command) {
    return switch (command) {
      case "explain" -> "bench " + String.join(" ", Code.ids());
      case "editor" -> String.join(" ", passband.edit.EditorFiles.NAMES);
      case "completion" -> String.join(" ", SHELLS);
      default -> "";
    };
  }

  private static String bash(List<String> commands) {
    StringBuilder cases = new StringBuilder();
    for (String command : commands) {
      cases.append(
          "    %s) options=\"%s\"; words=\"%s\" ;;\n"
              .formatted(command, String.join(" ", options(command)), words(command)));
    }
    return """
        _passband() {
          local typed="${COMP_WORDS[COMP_CWORD]}" options="" words=""
          if [ "$COMP_CWORD" -eq 1 ]; then
            COMPREPLY=($(compgen -W "%s" -- "$typed"))
            return
          fi
          case "${COMP_WORDS[1]}" in
        %s  esac
          if [ "${typed#-}" != "$typed" ]; then
            COMPREPLY=($(compgen -W "$options" -- "$typed"))
          elif [ -n "$words" ]; then
            COMPREPLY=($(compgen -W "$words" -- "$typed"))
          else
            COMPREPLY=($(compgen -f -- "$typed"))
          fi
        }
        complete -o filenames -F _passband passband
        """
        .formatted(String.join(" ", commands), cases);
  }

  private static String fish(List<String> commands) {
    StringBuilder lines =
        new StringBuilder(
            "complete -c passband -n __fish_use_subcommand -f -a '%s'\n"
                .formatted(String.join(" ", commands)));
    for (String command : commands) {
      String when = "-n '__fish_seen_subcommand_from " + command + "'";
      for (String option : options(command)) {
        lines.append("complete -c passband " + when + " -l " + option.substring(2) + "\n");
      }
      if (!words(command).isEmpty()) {
        lines.append("complete -c passband " + when + " -f -a '" + words(command) + "'\n");
      }
    }
    return lines.toString();
  }
}
