package passband.check;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.plan.Figure;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.syntax.Derive;
import passband.syntax.Expression;
import passband.syntax.Ratings;
import passband.syntax.Variables;

/**
 * {@code uncertainty-unknown}, an error: a guard band cannot be made, or a value calculated with
 * the load, because the error of the analyzer or of its load is unknown. {@code error-unknown}:
 * without a guard band a reading of unknown error is compared as it is.
 */
final class ErrorKnown implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      for (Point point : run.points()) {
        for (Limit limit : point.limits()) {
          look(new Reading(plan, run, point, limit), diagnostics);
        }
      }
    }
  }

  /** A limit at its place, and what is unknown of the reading that is held against it. */
  private record Reading(Plan plan, Stage.Run run, Point point, Limit limit) {

    /** What its calculation is made from; null for what is not calculated. */
    @Nullable Expression formula() {
      for (Derive derive : run.tree().derives()) {
        if (derive.name().text().equals(limit.quantity())) {
          return derive.value();
        }
      }
      return null;
    }

    /** The same at the points that a value compares; itself for one of a single point. */
    List<Reading> compared() {
      if (limit.read().over() == null) {
        return List.of(this);
      }
      List<Reading> compared = new ArrayList<>();
      for (Stage.Run other : plan.runs()) {
        if (other.tree() == run.tree()) {
          other.points().forEach(one -> compared.add(new Reading(plan, other, one, limit)));
        }
      }
      return compared;
    }

    /** The unknown error of the load that the point goes through, or that is swept. */
    Ratings.@Nullable Unknown ofLoad() {
      Figure load = run.sweep() == null ? point.load() : run.sweep().from();
      LoadBank bank =
          load == null
              ? null
              : WiredLoads.bank(
                  plan.instruments(), run.setup(), point.mode(), point.outlet(), load.si());
      return bank == null ? null : bank.unknownError();
    }

    /**
     * The unknown error of what measures a quantity; of its widest range, where it has no limit.
     */
    Ratings.@Nullable Unknown ofQuantity(String quantity) {
      Limit own = Figures.limit(point, quantity);
      if (own != null && own.range() != null) {
        return own.range().unknown();
      }
      Analyzer.Measure measure = null;
      for (Point.Reading one : point.readings()) {
        measure = one.quantity().equals(quantity) ? plan.measure(quantity, one.by()) : measure;
      }
      return measure == null ? null : measure.widest().unknown();
    }

    /** Null where every error that counts is known. */
    Ratings.@Nullable Unknown unknown() {
      Expression formula = formula();
      Ratings.Unknown found = null;
      if (formula != null) {
        for (String name : Variables.of(formula)) {
          for (Reading at : compared()) {
            found = found != null ? found : name.equals("load") ? at.ofLoad() : at.ofQuantity(name);
          }
        }
        return found;
      }
      if (limit.range() == null) {
        boolean swept = run.sweep() != null && run.sweep().what().equals("load");
        return swept ? ofLoad() : null;
      }
      found = limit.range().unknown();
      boolean converted =
          limit.rule().readAs() != null
              && !limit.quantity().equals(String.valueOf(limit.rule().quantity()));
      return found == null && converted ? ofLoad() : found;
    }

    /** Whether the judge would need the error, whatever is allowed. */
    boolean needsError() {
      Expression formula = formula();
      boolean withLoad = formula != null && Variables.of(formula).contains("load");
      return !plan.decision().guard().isZero() || (withLoad && ofLoad() != null);
    }
  }

  private static void look(Reading reading, Diagnostics diagnostics) {
    Ratings.Unknown unknown = reading.unknown();
    if (unknown == null) {
      return;
    }
    String quantity = reading.limit.quantity();
    DiagnosticBuilder said =
        reading.needsError()
            ? diagnostics
                .say(
                    Code.UNCERTAINTY_UNKNOWN,
                    reading.limit.rule().span(),
                    "the uncertainty of %s cannot be worked out, because an error is unknown",
                    quantity)
                .hint("find the error out, read another quantity, or use another analyzer")
            : diagnostics.say(
                Code.ERROR_UNKNOWN,
                reading.limit.rule().span(),
                "%s is held against limits, but its error is unknown",
                quantity);
    said.note(reading.point.span(), "the point is here");
    said.note(unknown.span(), "the error is unknown here");
  }
}
