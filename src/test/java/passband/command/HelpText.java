package passband.command;

/** What {@code help} prints, for tests of other packages. */
public final class HelpText {
  private HelpText() {}

  /** A command's help. */
  public static String of(String command) {
    return Help.of(command);
  }
}
