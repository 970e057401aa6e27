package passband.detect;

/** What becomes of a fault. */
public enum Outcome {
  /** No reading would show it. */
  NOT_READ("not read"),
  /** It is outside of the tolerance, and the sheet passes almost always. */
  MISSED("missed"),
  PARTLY("partly"),
  CAUGHT("caught"),
  /** The generator keeps its tolerance wherever it can be set to: no reading could fail it. */
  INSIDE("inside tolerance"),
  /** The generator, the bench or the sheet has nothing that could go wrong so. */
  NOT_APPLICABLE("does not apply");

  /** A fault is caught from this probability. */
  public static final double SURE_ENOUGH = 0.95;

  /** A fault is missed below this one. */
  static final double HARDLY = 0.05;

  private final String word;

  Outcome(String word) {
    this.word = word;
  }

  /** Of a fault that is one, by the probability that the sheet fails. */
  static Outcome of(Chance power) {
    return power.value() >= SURE_ENOUGH ? CAUGHT : power.value() >= HARDLY ? PARTLY : MISSED;
  }

  /** As printed. */
  public String word() {
    return word;
  }

  /** Whether a bad generator, or a slip, is not noticed. */
  public boolean isUnnoticed() {
    return this == MISSED || this == NOT_READ;
  }
}
