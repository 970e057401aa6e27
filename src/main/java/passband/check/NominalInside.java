package passband.check;

import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Real;

/**
 * {@code nominal-outside-limits}, an error: a unit that does exactly what it is set to would fail.
 */
final class NominalInside implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Point point : plan.points()) {
      for (Limit limit : point.limits()) {
        Real nominal = limit.exact().nominal();
        boolean below =
            nominal != null
                && limit.exact().lower() != null
                && nominal.compareTo(limit.exact().lower()) < 0;
        boolean above =
            nominal != null
                && limit.exact().upper() != null
                && nominal.compareTo(limit.exact().upper()) > 0;
        if (nominal != null && (below || above)) {
          diagnostics
              .say(
                  Code.NOMINAL_OUTSIDE_LIMITS,
                  point.span(),
                  "the nominal %s is outside its own limits %s",
                  Figures.text(nominal, limit.unit()),
                  limit.words(limit.printed()))
              .note(limit.rule().span(), "the rule is here");
        }
      }
    }
  }
}
