package passband.detect;

import org.jspecify.annotations.Nullable;
import passband.detect.GeneratorModel.Delivered;
import passband.model.Analyzer;
import passband.model.Device.Outlet;
import passband.model.Terminal;
import passband.plan.Act;
import passband.plan.Move;
import passband.plan.Point;
import passband.plan.Stage;

/** What can go wrong while a sheet is worked; of this one nothing does. */
class Trouble {
  // ---- the generator ----

  double power(Delivered one, double ohms, Ratings ratings) {
    return ratings.power(one.outlet(), one.mode(), one.setting(), ohms);
  }

  /** Where the output of an outlet comes out; null for nowhere. */
  @Nullable Outlet comesOut(@Nullable Outlet outlet) {
    return outlet;
  }

  /** Which share of the power comes out at every other outlet too. */
  double elsewhere() {
    return 0;
  }

  /** Whether a contact does anything. */
  boolean works(Terminal contact) {
    return true;
  }

  /** Whether it delivers all the time. */
  boolean runsAlone() {
    return false;
  }

  /** The chance that output does not come when it is activated. */
  double failing() {
    return 0;
  }

  boolean ignoresAlarm() {
    return false;
  }

  boolean neverAlarms() {
    return false;
  }

  /** By how many times later the alarm of a plate sounds. */
  double later(Outlet plate, double at, double limit) {
    return 1;
  }

  /** The peak of a waveform. */
  double peak(Delivered one, String quantity, double good, Ratings ratings) {
    return good;
  }

  /** By what its own display is off. */
  double displayed(Delivered one) {
    return 1;
  }

  /**
   * What else is read of it, such as its leakage.
   *
   * @param place where: a mode and an outlet, or what is touched
   */
  double other(String place, String quantity, double good, double limit) {
    return good;
  }

  /** How it stops: NaN for not at all. */
  double stops(String place, double good, double limit) {
    return good;
  }

  // ---- the bench ----

  /** A lead is moved as it is to be, or not quite. */
  void move(BenchModel bench, Stage.Run run, Move move) {
    bench.move(move);
  }

  /** What somebody does at a step; null for nothing. */
  @Nullable Act act(Point point, Act act) {
    return act;
  }

  /** By how many half-widths an instrument is off beside its own error. */
  double off() {
    return 0;
  }

  /** Where in its error an instrument is; NaN for anywhere. */
  double edge() {
    return Double.NaN;
  }

  /** Whether somebody has chosen the range of an instrument in a test by hand. */
  boolean turnsRange(Stage.Run run) {
    return false;
  }

  Analyzer.Range range(Stage.Run run, Analyzer.Range own, Analyzer.@Nullable Measure measure) {
    return own;
  }

  // ---- the person who writes ----

  /** What is written of a reading; NaN for nothing. */
  double written(Working.Item item, double shown, Working.Visit visit) {
    return shown;
  }
}
