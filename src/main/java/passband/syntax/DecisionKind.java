package passband.syntax;

/** How readings are compared with limits. */
public enum DecisionKind {
  SIMPLE("simple"),
  GUARDED("guarded"),
  MANAGED("managed"),
  RISK("risk");

  private final String word;

  DecisionKind(String word) {
    this.word = word;
  }

  /** The word of the language. */
  public String word() {
    return word;
  }
}
