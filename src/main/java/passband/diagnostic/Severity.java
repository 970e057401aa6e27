package passband.diagnostic;

/** How much a diagnostic weighs: errors stop output, warnings do not. */
public enum Severity {
  ERROR("error"),
  WARNING("warning");

  private final String word;

  Severity(String word) {
    this.word = word;
  }

  /** The word printed before the message. */
  public String word() {
    return word;
  }
}
