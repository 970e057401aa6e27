package passband.plan;

import java.util.List;
import java.util.Map;
import passband.limit.Limit;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.quantity.Rational;
import passband.source.Span;

/**
 * One test point.
 *
 * @param id its identity without the quantity: {@code
 *     TEST/OUTLET/MODE/SETTING/LOAD[/COLUMN=VALUE…][/PHASE]}
 * @param outlet null for a test without outlets
 * @param mode null for a point without output
 * @param setting null when there is none
 * @param load null when there is none
 * @param target the row's target; null when there is none
 * @param extras other settings by name, as printed, in the order of the columns
 * @param steps in order
 * @param onTime how long output is on, in seconds; null when there is none, or nothing says
 * @param rest how long output then rests, in seconds; null when nothing says
 * @param limits what its readings have to be
 * @param readings quantities that are read for a calculation and have no limits of their own
 * @param places where its parts are written
 * @param span where it is written
 */
public record Point(
    String id,
    Outlet outlet,
    Mode mode,
    Figure setting,
    Figure load,
    Figure target,
    Map<String, String> extras,
    List<PlanStep> steps,
    Rational onTime,
    Rational rest,
    List<Limit> limits,
    List<Reading> readings,
    Places places,
    Span span) {

  /** Where a point's parts are written; the whole row for one that has no cell. */
  public record Places(Span mode, Span setting, Span load) {}

  /**
   * A quantity that is read and not judged by itself.
   *
   * @param uncertainty of its widest range
   */
  public record Reading(
      String id,
      String quantity,
      String title,
      passband.quantity.Unit unit,
      Rational resolution,
      passband.limit.Uncertainty uncertainty) {}
}
