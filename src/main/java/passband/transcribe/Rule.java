package passband.transcribe;

import passband.quantity.Rational;

/**
 * A rule by which a table's limits may have been made.
 *
 * @param share of the nominal value; of {@code APART} the one below it; zero where there is none
 * @param amount in SI; of {@code APART} the share above the nominal value; zero where there is none
 */
record Rule(Basis basis, Form form, Rational share, Rational amount) {
  /** Numbers that take more bits than this are no numbers of a tolerance. */
  private static final double MOST_BITS = 9;

  /** How share and amount make the tolerance. */
  enum Form {
    SHARE(1),
    AMOUNT(2),
    GREATER(3),
    APART(3),
    SUM(4),
    SMALLER(6);

    private final double bits;

    Form(double bits) {
      this.bits = bits;
    }
  }

  /** How much the form and its numbers cost to say. */
  double bits() {
    return form.bits + shareBits() + amountBits();
  }

  /** How much the form alone costs to say. */
  double bitsOfForm() {
    return form.bits;
  }

  private double shareBits() {
    return form == Form.AMOUNT ? 0 : RoundNumbers.bitsOfShare(share);
  }

  private double amountBits() {
    return switch (form) {
      case SHARE -> 0;
      case APART -> RoundNumbers.bitsOfShare(amount);
      default -> RoundNumbers.bitsOfAmount(amount);
    };
  }

  /** Whether its numbers are such as people choose. */
  boolean roundNumbers() {
    return shareBits() <= MOST_BITS && amountBits() <= MOST_BITS;
  }

  /** Whether both allow the same, whatever nominal value and rounding they assume. */
  boolean allowsAs(Rule other) {
    return basis.of() == other.basis.of()
        && form == other.form
        && share.equals(other.share)
        && amount.equals(other.amount);
  }

  /** The share at an end, for the forms that have one. */
  Rational share(Side side) {
    return form == Form.APART && side == Side.UPPER ? amount : share;
  }

  /** The tolerance of a nominal value at an end. */
  Rational tolerance(Rational nominal, Side side) {
    Rational part = nominal.times(share(side));
    return switch (form) {
      case SHARE, APART -> part;
      case AMOUNT -> amount;
      case GREATER -> part.max(amount);
      case SMALLER -> part.min(amount);
      case SUM -> part.plus(amount);
    };
  }
}
