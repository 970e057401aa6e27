package passband.detect;

/**
 * A probability, and how it is known.
 *
 * @param passing the probability of the opposite, kept beside it so that neither is a difference
 */
public record Chance(double value, double passing, Proof proof) {
  /** How a probability is known. */
  public enum Proof {
    /** No error within its half-width makes it otherwise. */
    CERTAIN("certain"),
    /** In closed form, or by quadrature with an error below 3e-5. */
    QUADRATURE("quadrature"),
    /** By draws: of readings that share too many errors. */
    SIMULATION("simulation");

    private final String word;

    Proof(String word) {
      this.word = word;
    }

    /** As written in files. */
    public String word() {
      return word;
    }
  }

  /** It happens. */
  public static final Chance SURE = new Chance(1, 0, Proof.CERTAIN);

  /** It does not happen. */
  public static final Chance NEVER = new Chance(0, 1, Proof.CERTAIN);

  static Chance ofPassing(double passing, Proof proof) {
    double inside = Math.max(0, Math.min(1, passing));
    return new Chance(1 - inside, inside, proof);
  }

  /** Whether it is proved that it happens. */
  public boolean sure() {
    return proof == Proof.CERTAIN && value == 1;
  }

  /** Whether it is proved that it does not. */
  public boolean never() {
    return proof == Proof.CERTAIN && value == 0;
  }

  /** Two decimals; near the ends as many as tell them from what is sure, and no more than four. */
  public String text() {
    if (proof == Proof.CERTAIN) {
      return value == 1 ? "1" : "0";
    }
    if (value > 0.9999) {
      return "> 0.9999";
    }
    if (value < 0.0001) {
      return "< 0.0001";
    }
    boolean atAnEnd = value < 0.005 || value >= 0.995;
    double shown = atAnEnd ? Math.floor(value * 1e4) / 1e4 : Math.floor(value * 100) / 100;
    double rounded = atAnEnd ? shown : Math.round(value * 100) / 100.0;
    return new java.math.BigDecimal(rounded)
        .setScale(atAnEnd ? 4 : 2, java.math.RoundingMode.HALF_EVEN)
        .toPlainString();
  }
}
