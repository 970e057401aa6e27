package passband.transcribe;

/**
 * How a printed limit differs from what a rule prints, with the bits that say how unlikely such a
 * slip is (an estimate, no source).
 */
enum Slip {
  NONE(0, ""),
  SWAPPED(2, "the two limits are swapped"),
  COPIED(3, "the limits are those of the row above"),
  ANOTHER_ROW(3, "the limits are those of another row"),
  PREFIX(3, "a factor of 1000: another prefix of the unit"),
  TRANSPOSED(3, "two digits are transposed"),
  TENFOLD(4, "a factor of 10: the decimal point"),
  DROPPED(4, "a digit is missing"),
  ADDED(5, "a digit too many"),
  ONE_STEP(5, "rounded otherwise: one unit of the last digit"),
  WRONG_DIGIT(6, "a digit is wrong"),
  SETTING(6, "the setting is probably another"),
  LOAD(6, "the load is probably another"),
  UNEXPLAINED(8, "no single slip explains it");

  private final double bits;
  private final String words;

  Slip(double bits, String words) {
    this.bits = bits;
    this.words = words;
  }

  double bits() {
    return bits;
  }

  String words() {
    return words;
  }

  /** What turns one number of whole steps into the other. */
  static Slip between(long printed, long meant) {
    if (printed == meant) {
      return NONE;
    }
    if (times(printed, meant, 1000)) {
      return PREFIX;
    }
    if (Math.abs(printed - meant) == 1) {
      return ONE_STEP;
    }
    String is = Long.toString(printed);
    String was = Long.toString(meant);
    if (transposed(is, was)) {
      return TRANSPOSED;
    }
    if (times(printed, meant, 10)) {
      return TENFOLD;
    }
    if (lacks(is, was)) {
      return DROPPED;
    }
    if (lacks(was, is)) {
      return ADDED;
    }
    return differing(is, was) == 1 ? WRONG_DIGIT : UNEXPLAINED;
  }

  private static boolean times(long a, long b, long factor) {
    return a == b * factor || b == a * factor;
  }

  private static boolean transposed(String a, String b) {
    if (a.length() != b.length()) {
      return false;
    }
    for (int i = 0; i + 1 < a.length(); i++) {
      String swapped = a.substring(0, i) + a.charAt(i + 1) + a.charAt(i) + a.substring(i + 2);
      if (swapped.equals(b)) {
        return true;
      }
    }
    return false;
  }

  /** Whether the shorter is the longer without one digit. */
  private static boolean lacks(String shorter, String longer) {
    if (shorter.length() + 1 != longer.length()) {
      return false;
    }
    for (int i = 0; i < longer.length(); i++) {
      if (shorter.equals(longer.substring(0, i) + longer.substring(i + 1))) {
        return true;
      }
    }
    return false;
  }

  /** At how many places two numbers differ; −1 where they are not of one length. */
  private static int differing(String a, String b) {
    if (a.length() != b.length()) {
      return -1;
    }
    int differing = 0;
    for (int i = 0; i < a.length(); i++) {
      differing += a.charAt(i) == b.charAt(i) ? 0 : 1;
    }
    return differing;
  }
}
