package passband.check;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Bounds;
import passband.limit.Conversion;
import passband.limit.ImpliedTolerance;
import passband.limit.Limit;
import passband.limit.Stated;
import passband.limit.StatedComparison;
import passband.model.Device.Mode;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Real;
import passband.syntax.LimitExpression;

/**
 * {@code stated-looser}, {@code stated-tighter} and {@code stated-rounded-outward} where a rule
 * takes its limits from what the rows state: against what the mode's profile says, through the load
 * where that is of another quantity.
 */
final class StatedAgainstMode implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Point point : plan.points()) {
      for (Limit limit : point.limits()) {
        Mode mode = point.mode();
        boolean stated = limit.written() instanceof LimitExpression.Stated;
        if (mode != null && limit.ofMode() != null && stated) {
          look(mode, point, limit, limit.ofMode(), diagnostics);
        }
      }
    }
  }

  private static void look(
      Mode mode, Point point, Limit limit, Bounds ofMode, Diagnostics diagnostics) {
    boolean looser = RuleAgainstMode.isLooser(limit, limit.exact());
    if (looser && RuleAgainstMode.isCovered(mode, point, limit)) {
      return;
    }
    if (looser && !point.also().isEmpty()) {
      RuleAgainstMode.sayTogether(mode, limit, ofMode, diagnostics);
      return;
    }
    for (Stated stated : limit.stated()) {
      Bounds inStated = ofMode.map(end -> as(end, limit.quantity(), stated, point.load()));
      new StatedComparison(
              new StatedComparison.Reference(
                  inStated,
                  implied(mode, inStated, stated, point.load()),
                  true,
                  ModeLines.limit(mode, limit.quantity())),
              diagnostics)
          .compare(stated);
      open("lower", limit.exact().lower(), ofMode.lower(), mode, limit, stated, diagnostics);
      open("upper", limit.exact().upper(), ofMode.upper(), mode, limit, stated, diagnostics);
    }
  }

  /** A limit of what is read as one of the stated quantity. */
  private static Real as(Real end, String read, Stated stated, @Nullable Figure load) {
    return stated.quantity() == null || load == null || stated.of(read)
        ? end
        : Conversion.convert(end, read, stated.quantity(), load.si());
  }

  private static ImpliedTolerance implied(
      Mode mode, Bounds inStated, Stated stated, @Nullable Figure load) {
    String own = stated.quantity() == null ? "" : stated.quantity();
    String output = mode.output() == null ? own : mode.output().quantity().text();
    Real nominal = inStated.nominal();
    if (nominal == null || load == null || !Conversion.exists(own, output)) {
      return new ImpliedTolerance(nominal, own, own, null);
    }
    Real target = Conversion.convert(nominal, own, output, load.si());
    return new ImpliedTolerance(target, output, own, load.si());
  }

  /** A side that the rows leave open and the mode does not. */
  private static void open(
      String which,
      @Nullable Real exact,
      @Nullable Real ofMode,
      Mode mode,
      Limit limit,
      Stated stated,
      Diagnostics diagnostics) {
    if (exact == null && ofMode != null) {
      diagnostics
          .say(
              Code.STATED_LOOSER,
              stated.span(),
              "this row states no %s limit, but the mode's is %s",
              which,
              Figures.text(ofMode, limit.unit()))
          .note(ModeLines.limit(mode, limit.quantity()), "the mode's tolerance is here");
    }
  }
}
