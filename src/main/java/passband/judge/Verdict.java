package passband.judge;

/** What is to be said of an item, or of all of them. */
public enum Verdict {
  PASS("pass"),
  FAIL("fail"),
  UNCLEAR("unclear"),
  NOT_DONE("not done"),
  NOT_APPLICABLE("does not apply"),
  INCOMPLETE("incomplete");

  private final String word;

  Verdict(String word) {
    this.word = word;
  }

  /** As printed. */
  public String word() {
    return word;
  }
}
