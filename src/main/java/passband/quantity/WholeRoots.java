package passband.quantity;

/** Square roots of whole numbers that are squares. */
final class WholeRoots {
  /** The greatest whole number whose square is a long. */
  static final long GREATEST = 3_037_000_499L;

  /** Which ends, in the last six binary digits, a whole square can have. */
  private static final boolean[] SQUARE = new boolean[64];

  static {
    for (int i = 0; i < SQUARE.length; i++) {
      SQUARE[i * i & SQUARE.length - 1] = true;
    }
  }

  private WholeRoots() {}

  /** The root of a whole square; −1 of any other number. A double's root is one off at most. */
  static long exact(long square) {
    if (!SQUARE[(int) square & SQUARE.length - 1]) {
      return -1;
    }
    long near = (long) Math.sqrt((double) square);
    for (long root = Math.max(0, near - 1); root <= Math.min(near + 1, GREATEST); root++) {
      if (root * root == square) {
        return root;
      }
    }
    return -1;
  }
}
