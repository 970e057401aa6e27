package passband.transcribe;

/**
 * What a tolerance is of, which nominal value it is taken from and how its limits were rounded.
 * Bits say how unlikely a choice is before the table is looked at (the method: minimum description
 * length).
 */
record Basis(Of of, Nominal nominal, Rounding rounding) {

  /** What a tolerance is of. */
  enum Of {
    /** What is set; limits are converted through the load where something else is read. */
    SETTING(0),
    /** The nominal value of what is read. */
    READ(1);

    private final double bits;

    Of(double bits) {
      this.bits = bits;
    }
  }

  /** How the nominal value was made. */
  enum Nominal {
    EXACT(0),
    /** A column of the table. */
    PRINTED(0),
    /** To the nearest unit of the last printed digit. */
    ROUNDED(2),
    CUT(3);

    private final double bits;

    Nominal(double bits) {
      this.bits = bits;
    }
  }

  /** How a limit was rounded to its last printed digit. */
  enum Rounding {
    NEAREST(1, "rounded to the nearest"),
    INWARD(1.5, "rounded inward"),
    CUT(2.5, "cut off"),
    OUTWARD(3, "rounded outward");

    private final double bits;
    private final String words;

    Rounding(double bits, String words) {
      this.bits = bits;
      this.words = words;
    }

    String words() {
      return words;
    }
  }

  /** How much it costs to say. */
  double bits() {
    return of.bits + nominal.bits + rounding.bits;
  }
}
