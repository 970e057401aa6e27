package passband.library;

/** A command line that cannot be carried out: exit status 2. */
public final class UsageException extends Exception {
  private static final long serialVersionUID = 1L;

  public UsageException(String message) {
    super(message);
  }
}
