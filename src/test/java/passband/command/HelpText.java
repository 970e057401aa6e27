package passband.command;

import java.util.List;

/** What {@code help} prints, for tests of other packages. */
public final class HelpText {
  private HelpText() {}

  /** The names of the commands. */
  public static List<String> commands() {
    return CommandTable.names();
  }

  /** A command's help. */
  public static String of(String command) {
    return Help.of(CommandTable.find(command));
  }
}
