package passband.evidence;

/** A file that cannot be judged by; the message is for a person. */
public final class BadInput extends Exception {
  private static final long serialVersionUID = 1L;

  /** With what is wrong. */
  public BadInput(String message) {
    super(message);
  }
}
