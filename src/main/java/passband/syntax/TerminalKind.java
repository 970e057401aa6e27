package passband.syntax;

/** What a terminal is for. */
public enum TerminalKind {
  POLE("pole"),
  CONTACT("contact"),
  EARTH("earth"),
  JACK("jack"),
  KEY("key");

  private final String word;

  TerminalKind(String word) {
    this.word = word;
  }

  /** The word of the language. */
  public String word() {
    return word;
  }

  /** Whether the output's current may pass it, be it as leakage. */
  public boolean carriesOutput() {
    return this == POLE || this == JACK || this == EARTH;
  }
}
