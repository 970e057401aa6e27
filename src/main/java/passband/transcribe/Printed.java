package passband.transcribe;

import passband.quantity.Rational;

/**
 * A number as a table prints it.
 *
 * @param value in SI
 * @param step one unit of its last printed digit, in SI
 * @param text as it is written
 */
record Printed(Rational value, Rational step, String text) {

  /** How many steps it is. */
  long digits() {
    return value.over(step).floor().longValueExact();
  }

  /** The same number of a table whose last digit is another one; itself where that is coarser. */
  Printed with(Rational finer) {
    return finer.compareTo(step) < 0 && value.over(finer).isInteger()
        ? new Printed(value, finer, text)
        : this;
  }
}
