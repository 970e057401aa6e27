package passband.draw;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * From values to places on an axis, linear, between round numbers.
 *
 * @param low the value at {@code from}
 * @param high the value at {@code to}
 * @param step between ticks: 1, 2 or 5 times a power of ten
 */
record Scale(double low, double high, double step, double from, double to) {
  private static final int TICKS = 6;

  /** Numbers of more characters are long. */
  private static final int LONG = 7;

  /** A scale that takes in every value. */
  static Scale over(List<Double> values, double from, double to) {
    double least = values.isEmpty() ? 0 : Collections.min(values);
    double most = values.isEmpty() ? 1 : Collections.max(values);
    double span = most > least ? most - least : Math.max(1, Math.abs(most));
    double step = round(span / TICKS);
    double low = Math.floor(least / step + 1e-9) * step;
    double high = Math.ceil(most / step - 1e-9) * step;
    return new Scale(low, high > low ? high : low + step, step, from, to);
  }

  private static double round(double rough) {
    double power = StrictMath.pow(10, StrictMath.floor(StrictMath.log10(rough)));
    double digit = rough / power;
    return power * (digit <= 1 ? 1 : digit <= 2 ? 2 : digit <= 5 ? 5 : 10);
  }

  double at(double value) {
    return from + (value - low) / (high - low) * (to - from);
  }

  List<Double> ticks() {
    List<Double> ticks = new ArrayList<>();
    for (int i = 0; low + i * step <= high + step * 1e-9; i++) {
      ticks.add(low + i * step);
    }
    return ticks;
  }

  /** A tick's number, free of binary dust; a long one with a power of ten where that is shorter. */
  static String text(double tick) {
    BigDecimal rounded = new BigDecimal(tick).round(new MathContext(9)).stripTrailingZeros();
    String plain = rounded.signum() == 0 ? "0" : rounded.toPlainString();
    String power = rounded.unscaledValue() + "e" + -rounded.scale();
    return plain.length() > LONG && power.length() < plain.length() ? power : plain;
  }
}
