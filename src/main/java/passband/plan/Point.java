package passband.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.model.Device.Mode;
import passband.model.Device.Outlet;
import passband.model.Terminal;
import passband.model.Termination;
import passband.quantity.Rational;
import passband.source.Span;
import passband.syntax.Tree;

/**
 * One test point.
 *
 * @param id its identity without the quantity: {@code
 *     TEST/OUTLET/MODE/SETTING/LOAD[/COLUMN=VALUE…][/PHASE]}
 * @param outlet null for a test without outlets
 * @param mode null for a point without output
 * @param steps in order
 * @param limits what its readings have to be
 * @param readings quantities that are read for a calculation and have no limits of their own
 * @param places where its parts are written
 * @param span where it is written
 */
public record Point(
    String id,
    @Nullable Outlet outlet,
    @Nullable Mode mode,
    Settings settings,
    List<PlanStep> steps,
    Times times,
    List<Limit> limits,
    List<Reading> readings,
    Places places,
    Span span) {

  /**
   * What is set; null for what is not.
   *
   * @param termination open or short, for a point that has no load
   * @param activation the contact that the row names; null when it names none
   * @param target what a reading is to be adjusted to
   * @param loadAt the role of the instrument that is set to the load
   * @param otherLoads what other instruments' loads are set to, by role
   * @param extras other settings by name, as printed, in the order of the columns
   * @param values what limits use of the row, by column, as printed
   * @param also what further outlets deliver at the same time, as points at which nothing is done
   *     or read
   */
  public record Settings(
      @Nullable Figure setting,
      @Nullable Figure load,
      @Nullable String loadAt,
      @Nullable Termination termination,
      @Nullable Activation activation,
      @Nullable Figure target,
      Map<String, Figure> otherLoads,
      Map<String, String> extras,
      Map<String, String> values,
      List<Point> also) {
    /** A load or what stands in its place, as printed; empty for neither. */
    static String text(@Nullable Figure load, @Nullable Termination termination) {
      return load != null ? load.text() : termination == null ? "" : termination.word();
    }
  }

  /**
   * The contact that a row names.
   *
   * @param contact null when there is no such contact
   */
  public record Activation(Tree.Ref written, @Nullable Terminal contact) {}

  /**
   * How long output is on and then rests, in seconds; null where there is none, or nothing says.
   *
   * @param from what the on-time follows from
   */
  public record Times(@Nullable Rational onTime, @Nullable Rational rest, OnTime from) {
    /** With an on-time that follows from something. */
    public Times(OnTime from, @Nullable Rational rest) {
      this(from.said(), rest, from);
    }
  }

  /** The same with other steps. */
  public Point withSteps(List<PlanStep> other) {
    return new Point(id, outlet, mode, settings, other, times, limits, readings, places, span);
  }

  /** The same with other limits. */
  public Point withLimits(List<Limit> other) {
    return new Point(id, outlet, mode, settings, steps, times, other, readings, places, span);
  }

  /** The setting; null when there is none. */
  public @Nullable Figure setting() {
    return settings.setting;
  }

  /** The load; null when there is none. */
  public @Nullable Figure load() {
    return settings.load;
  }

  /** Open or short; null when there is a load, or nothing is said of one. */
  public @Nullable Termination termination() {
    return settings.termination;
  }

  /** The load, open or short as printed; null when nothing is said of it. */
  public @Nullable String loadText() {
    String text = Settings.text(settings.load, settings.termination);
    return text.isEmpty() ? null : text;
  }

  /** The contact that the row names; null when it names none. */
  public @Nullable Activation activation() {
    return settings.activation;
  }

  /** The row's target; null when there is none. */
  public @Nullable Figure target() {
    return settings.target;
  }

  /** Other settings by name, as printed, in the order of the columns. */
  public Map<String, String> extras() {
    return settings.extras;
  }

  /** The role of the instrument that is set to the load; null when there is none. */
  public @Nullable String loadAt() {
    return settings.loadAt;
  }

  /** What limits use of the row, by column, as printed. */
  public Map<String, String> values() {
    return settings.values;
  }

  /** What further outlets deliver at the same time: points at which nothing is done or read. */
  public List<Point> also() {
    return settings.also;
  }

  /** What is delivered here: by its own outlet, and by further ones at the same time. */
  public List<Point> delivered() {
    List<Point> all = new ArrayList<>(List.of(this));
    all.addAll(settings.also);
    return all;
  }

  /** What other instruments' loads are set to, by role. */
  public Map<String, Figure> otherLoads() {
    return settings.otherLoads;
  }

  /** How long output is on, in seconds; null when there is none, or nothing says. */
  public @Nullable Rational onTime() {
    return times.onTime;
  }

  /** How long output is on, and from what that follows. */
  public OnTime on() {
    return times.from;
  }

  /** How long output then rests, in seconds; null when nothing says. */
  public @Nullable Rational rest() {
    return times.rest;
  }

  /** The steps with the rest that is the last of them, if output rests. */
  public List<PlanStep> stepsWithRest() {
    if (times.rest == null) {
      return steps;
    }
    List<PlanStep> all = new ArrayList<>(steps);
    all.add(new PlanStep(Act.Rest.of(times.rest), null, null, span));
    return List.copyOf(all);
  }

  /** Where a point's parts are written; the whole row for one that has no cell. */
  public record Places(Span mode, Span setting, Span load) {}

  /**
   * A quantity that is read and not judged by itself.
   *
   * @param uncertainty of its widest range; null when none can be made
   * @param by the role of the instrument that shows it
   */
  public record Reading(
      String id,
      String quantity,
      String title,
      passband.quantity.Unit unit,
      Rational resolution,
      passband.limit.@Nullable Uncertainty uncertainty,
      String by) {}
}
