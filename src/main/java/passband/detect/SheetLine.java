package passband.detect;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.limit.Bounds;
import passband.limit.Limit;
import passband.limit.Uncertainty;
import passband.model.Accuracy;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.plan.Act;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;

/**
 * A reading that the sheet asks for, with what a good generator shows there.
 *
 * @param nominal the true value of a good generator in SI: the rule's target, else the middle of
 *     the limits; NaN where one side is open and nothing says
 * @param uses the values with limits that are worked out from it
 */
record SheetLine(
    Stage.Run run,
    Point point,
    Limit limit,
    Kind kind,
    double nominal,
    Errors errors,
    List<WorkedOut> uses) {

  /** Which faults a reading is about. */
  enum Kind {
    OUTPUT,
    PEAK,
    HF_LEAKAGE,
    MAINS_LEAKAGE,
    TRIP,
    TIME,
    INHIBITED,
    /** A choice with a right answer, or a tick. */
    ASKED,
    OTHER
  }

  /** Of what is no reading. */
  static final Errors NO_ERRORS = new Errors(null, "", 0, "", Spread.RECTANGULAR);

  /** A line is the same as no other: what is worked out from it hangs on it. */
  @Override
  public boolean equals(@Nullable Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return System.identityHashCode(this);
  }

  /** Whether it has limits of its own. */
  boolean isJudged() {
    return limit.accept().lower() != null || limit.accept().upper() != null;
  }

  /**
   * The errors of a reading.
   *
   * @param own of the instrument's range; null where it is unknown, which counts as none
   * @param ownKey which range that is
   * @param load by how much of itself the reading moves at the load's error, with its sign
   * @param loadKey which load that is
   */
  record Errors(
      @Nullable Accuracy own, String ownKey, double load, String loadKey, Spread loadSpread) {
    ErrorTerm ownAt(double truth) {
      if (own == null) {
        return Observation.NO_ERROR;
      }
      double half = own.relative().doubleValue() * Math.abs(truth) + own.absolute().doubleValue();
      return new ErrorTerm(ownKey, half, Spread.of(own.distribution()));
    }

    ErrorTerm loadAt(double truth) {
      return load == 0 || truth == 0
          ? Observation.NO_ERROR
          : new ErrorTerm(loadKey, load * Math.abs(truth), loadSpread);
    }
  }

  /** What is read of a true value in SI; NaN for no number. */
  Observation at(double truth) {
    return at(truth, limit.resolution());
  }

  /** The same in other steps. */
  Observation at(double truth, Rational step) {
    Limit.Rounded accept = limit.accept();
    Window window = Window.of(accept.lower(), accept.upper(), step);
    return new Observation(truth, window, errors.ownAt(truth), errors.loadAt(truth));
  }

  /** Whether the true value of a good generator is known. */
  boolean hasNominal() {
    return !Double.isNaN(nominal);
  }

  /** What is read of a good generator. */
  Observation good() {
    return at(nominal);
  }

  /** Whether the reading goes as the output's power; else it goes as the root of it. */
  boolean asPower() {
    return switch (limit.quantity()) {
      case "power", "energy" -> true;
      default -> false;
    };
  }

  /** The true value when the power of the output is another one, by this factor. */
  double scaled(double factor) {
    double power = Math.max(0, factor);
    return nominal * (asPower() ? power : Math.sqrt(power));
  }

  /** By which factor of the power a value in SI lies off the nominal. */
  double factor(double value) {
    double ratio = value / nominal;
    return asPower() ? ratio : ratio * ratio;
  }

  /**
   * The power of a good generator, up to a factor that is the same for a load; in W where known.
   */
  double power() {
    Rational load = ohms();
    double ohms = load == null ? 1 : load.doubleValue();
    return switch (limit.quantity()) {
      case "current" -> nominal * nominal * ohms;
      case "voltage" -> nominal * nominal / ohms;
      default -> nominal;
    };
  }

  /** Its mode and outlet and, where there is one, its load, as printed. */
  String placeAndLoad() {
    return loadText().isEmpty() ? Place.of(this).text() : Place.of(this).text() + " " + loadText();
  }

  /** The load as printed; empty for none. */
  String loadText() {
    return point.loadText() == null ? "" : point.loadText();
  }

  /** The load in ohm; null where there is none. */
  @Nullable Rational ohms() {
    return point.load() == null ? null : point.load().si();
  }

  /** The setting in SI; NaN where there is none. */
  double setting() {
    return point.setting() == null ? Double.NaN : point.setting().si().doubleValue();
  }

  /** Its mode; of a reading that has one. */
  Mode mode() {
    return Objects.requireNonNull(point.mode(), "a reading of output without a mode");
  }

  /** In which of the point's activations it is read, counted from one; 0 where it is in none. */
  int activation() {
    int activations = 0;
    for (PlanStep step : point.steps()) {
      if (step.act() instanceof Act.Activate activate && !activate.beside()) {
        activations++;
      }
      if (step.act() instanceof Act.Read read && read.what().contains(limit.title())) {
        return activations;
      }
    }
    return activations;
  }

  /** The outlet that delivers; null where there is none. */
  @Nullable Outlet outlet() {
    return point.outlet();
  }

  /** The outlet's name; a hyphen where there is none. */
  String outletName() {
    return outlet() == null ? "-" : outlet().name().text();
  }

  /** Whether a true value lies outside of the tolerance. */
  boolean isOutside(double truth) {
    if (Double.isNaN(truth)) {
      return true;
    }
    Bounds exact = limit.exact();
    double slack = 1e-9 * Math.abs(truth);
    return (exact.lower() != null && truth < exact.lower().doubleValue() - slack)
        || (exact.upper() != null && truth > exact.upper().doubleValue() + slack);
  }

  /** The expanded uncertainty, as a share of the power at the nominal value; 0 where unknown. */
  double expandedShare() {
    Uncertainty uncertainty = limit.uncertainty();
    return uncertainty == null || !hasNominal() || nominal == 0
        ? 0
        : uncertainty.expanded(nominal) / nominal * (asPower() ? 1 : 2);
  }

  /**
   * By how much a reading of a value in SI may be off, by its expanded uncertainty and half a step
   * of the display, as a share of the power at the nominal value; 0 where unknown.
   */
  double doubtShare(double value) {
    Uncertainty uncertainty = limit.uncertainty();
    if (uncertainty == null || !hasNominal() || nominal == 0) {
      return 0;
    }
    double off = uncertainty.expanded(value) + limit.resolution().doubleValue() / 2;
    return Math.abs(factor(value + off) - factor(value));
  }
}
