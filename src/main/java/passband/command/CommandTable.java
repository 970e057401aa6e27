package passband.command;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Every command with its arguments. From this one table come what is parsed, what help prints, what
 * shells complete and the list of the README.
 */
final class CommandTable {
  private static final List<CommandSpec> ALL = all();

  private CommandTable() {}

  /** The commands that a person calls. */
  static List<CommandSpec> listed() {
    List<CommandSpec> listed = new ArrayList<>(ALL);
    listed.removeIf(command -> !command.listed());
    return listed;
  }

  /** Their names. */
  static List<String> names() {
    List<String> names = new ArrayList<>();
    listed().forEach(command -> names.add(command.name()));
    return names;
  }

  /** The command of this name; null for none. */
  static @Nullable CommandSpec find(String written) {
    String name =
        switch (written) {
          case "--help", "-h" -> "help";
          case "--version" -> "version";
          default -> written;
        };
    for (CommandSpec command : ALL) {
      if (command.name().equals(name)) {
        return command;
      }
    }
    return null;
  }

  private static List<CommandSpec> all() {
    List<CommandSpec> all = new ArrayList<>(StartCommands.ALL);
    all.addAll(SourceCommands.ALL);
    all.addAll(RecordCommands.ALL);
    all.addAll(SupportCommands.ALL);
    return List.copyOf(all);
  }
}
