package passband.diagnostic;

/** Why something failed, in words for a person. */
public final class Reason {
  private Reason() {}

  /** The failure's message; the name of its kind where it has none. */
  public static String of(Exception failure) {
    String message = failure.getMessage();
    return message == null ? failure.getClass().getSimpleName() : message;
  }
}
