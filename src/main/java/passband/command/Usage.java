package passband.command;

/** A command line that cannot be carried out: exit status 2. */
final class Usage extends Exception {
  private static final long serialVersionUID = 1L;

  Usage(String message) {
    super(message);
  }
}
