package passband.plan;

/** Whether a test delivers output. */
public enum Delivery {
  /** Output is on at every reading. */
  ON("on"),
  /**
   * Output is activated and the generator must not deliver: everything holds that holds for output
   * that is on.
   */
  INHIBITED("inhibited"),
  /** Output is never on. */
  OFF("off");

  private final String word;

  Delivery(String word) {
    this.word = word;
  }

  /** The word of the language. */
  public String word() {
    return word;
  }

  /** Whether output is activated. */
  public boolean activates() {
    return this != OFF;
  }
}
