package passband.transcribe;

import java.math.BigInteger;
import java.util.LinkedHashSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.quantity.Rational;

/**
 * How round numbers are, in bits: a rule with 15 % is likelier than one with 14.85 %. The bits are
 * an estimate, no source.
 */
final class RoundNumbers {
  /** Steps of a share in hundredths of a per cent, and their bits. */
  private static final int[] SHARE_STEPS = {500, 100, 50, 25, 10, 5, 1};

  private static final double[] SHARE_BITS = {3, 6, 7, 9, 9, 11, 13};
  private static final double ODD_SHARE = 20;

  /** Significant digits of an amount, and their bits. */
  private static final int[][] AMOUNT_DIGITS = {
    {1, 2, 5}, {3, 4, 6, 7, 8, 9}, {15, 25}, range(11, 99), range(101, 999)
  };

  private static final double[] AMOUNT_BITS = {5, 6, 7, 9, 13};
  private static final double ODD_AMOUNT = 18;
  private static final int LEAST_POWER = -7;
  private static final int GREATEST_POWER = 5;
  private static final int HUNDREDTHS = 10_000;
  private static final double[] POWERS = powers();

  private RoundNumbers() {}

  private static int[] range(int from, int to) {
    int[] range = new int[to - from + 1];
    for (int i = 0; i < range.length; i++) {
      range[i] = from + i;
    }
    return range;
  }

  private static double[] powers() {
    double[] powers = new double[GREATEST_POWER - LEAST_POWER + 1];
    for (int i = 0; i < powers.length; i++) {
      powers[i] = Rational.TEN.pow(LEAST_POWER + i).doubleValue();
    }
    return powers;
  }

  static double bitsOfShare(Rational share) {
    Rational hundredths = share.times(Rational.of(HUNDREDTHS));
    if (hundredths.isInteger()) {
      BigInteger whole = hundredths.floor();
      for (int i = 0; i < SHARE_STEPS.length; i++) {
        if (whole.mod(BigInteger.valueOf(SHARE_STEPS[i])).signum() == 0) {
          return SHARE_BITS[i];
        }
      }
    }
    return ODD_SHARE;
  }

  static double bitsOfAmount(Rational amount) {
    if (amount.isZero()) {
      return ODD_AMOUNT;
    }
    Rational scaled = amount.abs();
    while (scaled.compareTo(Rational.of(100)) < 0) {
      scaled = scaled.times(Rational.TEN);
    }
    while (scaled.compareTo(Rational.of(1000)) >= 0) {
      scaled = scaled.over(Rational.TEN);
    }
    if (!scaled.isInteger()) {
      return ODD_AMOUNT;
    }
    int value = scaled.floor().intValueExact();
    while (value % 10 == 0) {
      value /= 10;
    }
    for (int i = 0; i < AMOUNT_DIGITS.length; i++) {
      for (int known : AMOUNT_DIGITS[i]) {
        if (known == value) {
          return AMOUNT_BITS[i];
        }
      }
    }
    return ODD_AMOUNT;
  }

  /**
   * The roundest shares of a range whose ends are only nearly known: of the range a little wider
   * and of it a little narrower.
   */
  static Set<Rational> shares(double low, double high) {
    Set<Rational> shares = new LinkedHashSet<>();
    double slack = slack(low, high);
    add(shares, share(low - slack, high + slack));
    add(shares, share(low + slack, high - slack));
    return shares;
  }

  /** The roundest amounts of such a range. */
  static Set<Rational> amounts(double low, double high) {
    Set<Rational> amounts = new LinkedHashSet<>();
    double slack = slack(low, high);
    add(amounts, amount(low - slack, high + slack));
    add(amounts, amount(low + slack, high - slack));
    return amounts;
  }

  private static double slack(double low, double high) {
    return 1e-9 * Math.max(Math.abs(low), Math.abs(high));
  }

  private static void add(Set<Rational> all, @Nullable Rational one) {
    if (one != null) {
      all.add(one);
    }
  }

  private static @Nullable Rational share(double low, double high) {
    double least = Math.max(low, 1.0 / HUNDREDTHS);
    double most = Math.min(high, 1 - 1.0 / HUNDREDTHS);
    double middle = (least + most) / 2;
    for (int step : SHARE_STEPS) {
      double unit = (double) step / HUNDREDTHS;
      long nearest = Math.round(middle / unit);
      long first = (long) Math.ceil(least / unit);
      long last = (long) Math.floor(most / unit);
      if (first <= last && last > 0) {
        long taken = Math.max(Math.max(first, 1), Math.min(last, nearest));
        return Rational.of(taken * step, HUNDREDTHS);
      }
    }
    return null;
  }

  private static @Nullable Rational amount(double low, double high) {
    double least = Math.max(low, 1e-9);
    if (high < least) {
      return null;
    }
    double middle = (least + Math.min(high, least * 1000)) / 2;
    for (int[] digits : AMOUNT_DIGITS) {
      Rational best = null;
      double away = Double.MAX_VALUE;
      for (int power = LEAST_POWER; power <= GREATEST_POWER; power++) {
        double unit = POWERS[power - LEAST_POWER];
        if (digits[0] * unit > high || digits[digits.length - 1] * unit < least) {
          continue;
        }
        for (int digit : digits) {
          double value = digit * unit;
          if (value >= least && value <= high && Math.abs(value - middle) < away) {
            away = Math.abs(value - middle);
            best = Rational.TEN.pow(power).times(Rational.of(digit));
          }
        }
      }
      if (best != null) {
        return best;
      }
    }
    return null;
  }
}
