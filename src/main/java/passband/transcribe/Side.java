package passband.transcribe;

/** An end of the accepted range. */
enum Side {
  LOWER("lower"),
  UPPER("upper");

  private final String word;

  Side(String word) {
    this.word = word;
  }

  String word() {
    return word;
  }

  Side other() {
    return this == LOWER ? UPPER : LOWER;
  }
}
