package passband.judge;

/** What is said of a point, and of all. */
public enum Verdict {
  PASS("pass"),
  FAIL("fail"),
  UNCLEAR("unclear"),
  NOT_DONE("not done"),
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
