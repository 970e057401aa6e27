package passband.syntax;

/** What a set of leads holds. */
public enum LeadKind {
  /** A wire with two ends. */
  LEAD("lead"),
  /** A jumper. */
  LINK("link"),
  /** A pencil, a pedal, a split plate: it joins the poles and closes the contacts it touches. */
  ACCESSORY("accessory");

  private final String word;

  LeadKind(String word) {
    this.word = word;
  }

  /** The word of the language. */
  public String word() {
    return word;
  }
}
