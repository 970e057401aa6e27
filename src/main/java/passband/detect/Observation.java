package passband.detect;

import java.util.List;

/**
 * What stands on a display at one point, and which of it passes: the true value with the errors of
 * the instrument's range and of the load, rounded to the display's step.
 *
 * @param truth the true value in SI; NaN where there is no number, which never passes
 * @param own the error of the instrument's range
 * @param load the error of the load
 */
record Observation(double truth, Window window, ErrorTerm own, ErrorTerm load) {
  private static final String SURE = "";

  /** An error that is none. */
  static final ErrorTerm NO_ERROR = new ErrorTerm(SURE, 0, Spread.RECTANGULAR);

  /** The same of another true value, with errors of the same size. */
  Observation at(double other) {
    return new Observation(other, window, own, load);
  }

  /** The same with another window. */
  Observation with(Window other) {
    return new Observation(truth, other, own, load);
  }

  /** The same with the error of its range in common with every other range. */
  Observation sharingItsRange() {
    return own.half() == 0
        ? this
        : new Observation(
            truth, window, new ErrorTerm("all ranges", own.half(), own.spread()), load);
  }

  /** Whether there is a number. */
  boolean hasValue() {
    return !Double.isNaN(truth);
  }

  /** The errors that move it. */
  List<ErrorTerm> errors() {
    if (own.half() == 0) {
      return load.half() == 0 ? List.of() : List.of(load);
    }
    return load.half() == 0 ? List.of(own) : List.of(own, load);
  }

  private double reach() {
    return own.reach() + load.reach();
  }

  /** Whether it passes whatever the errors are. */
  boolean alwaysPasses() {
    return hasValue() && truth - reach() >= window.low() && truth + reach() < window.high();
  }

  /** Whether it fails whatever the errors are. */
  boolean neverPasses() {
    return !hasValue() || truth + reach() < window.low() || truth - reach() >= window.high();
  }

  /** Between which values what is displayed lies. */
  Arithmetic.Between displayed() {
    return hasValue()
        ? new Arithmetic.Between(window.rounded(truth - reach()), window.rounded(truth + reach()))
        : Arithmetic.Between.NOWHERE;
  }

  /** What is displayed at some errors, as shares of their half-widths. */
  double displayed(double ownError, double loadError) {
    return window.rounded(truth + own.half() * ownError + load.half() * loadError);
  }

  /** The probability that one value is displayed. */
  double shows(long steps) {
    Window only = window.only(steps);
    boolean rectangular = own.spread().isRectangular() && load.spread().isRectangular();
    return rectangular && own.half() != 0 && load.half() != 0
        ? below(only.high()) - below(only.low())
        : new Kernel().failing(List.of(with(only))).passing();
  }

  /** The sum of two rectangular errors is a trapezoid: JCGM 101, 6.4.4. */
  private double below(double value) {
    double a = Math.abs(own.half());
    double b = Math.abs(load.half());
    double x = value - truth;
    double rest = Math.max(0, a + b - Math.abs(x));
    double tail = rest * rest / (8 * a * b);
    return Math.abs(x) <= Math.abs(a - b)
        ? 0.5 + x / (2 * Math.max(a, b))
        : x < 0 ? tail : 1 - tail;
  }

  /** Whether no error is without an end, so that what is sure is proved. */
  boolean ends() {
    return own.spread().ends() && load.spread().ends();
  }
}
