package passband.detect;

/**
 * An error that readings share.
 *
 * @param key which error it is: readings with the same key have the same error in a visit
 * @param half by how much a reading moves at the error's half-width, in SI; below zero where it
 *     moves the other way
 */
record ErrorTerm(String key, double half, Spread spread) {
  /** The greatest change either way. */
  double reach() {
    return Math.abs(half) * spread.reach();
  }
}
