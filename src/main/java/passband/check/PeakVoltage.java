package passband.check;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Mode;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.resolve.Values;
import passband.syntax.Expression;
import passband.syntax.LimitExpression.AtMost;
import passband.syntax.Tree;

/** The highest peak voltage that a mode's profile gives. */
final class PeakVoltage {
  private PeakVoltage() {}

  /** In volts; null where the profile gives none, or not as a plain amount. */
  static @Nullable Real of(Mode mode) {
    for (Tree.QuantityLimit limit : mode.limits()) {
      if (limit.quantity().text().equals("peak-voltage")
          && limit.limit() instanceof AtMost most
          && most.upper() instanceof Expression.Literal literal) {
        Rational volts = new Values(new Diagnostics()).si(literal.amount());
        return volts == null ? null : Real.of(volts);
      }
    }
    return null;
  }
}
