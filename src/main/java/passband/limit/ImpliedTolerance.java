package passband.limit;

import java.math.RoundingMode;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Real;

/**
 * Tells what tolerance on the rule's quantity a stated limit amounts to.
 *
 * @param target the rule's nominal in its own quantity; null when it has none
 * @param accepted the rule's quantity
 * @param stated the quantity of the stated limit
 * @param ohms the load through which one is read as the other; null when they are the same
 */
record ImpliedTolerance(Real target, String accepted, String stated, Rational ohms)
    implements Stated.Implied {

  @Override
  public String tolerance(Real limit) {
    if (target == null || target.signum() == 0 || limit.signum() < 0) {
      return null;
    }
    Real amounts = ohms == null ? limit : Conversion.convert(limit, stated, accepted, ohms);
    Real percent = amounts.minus(target).over(target).times(Real.of(Rational.HUNDRED));
    String sign = percent.signum() < 0 ? "−" : "+";
    String digits =
        percent.abs().toDecimal(3, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString();
    QuantityKind kind = QuantityKind.find(accepted);
    return sign + digits + " % of the " + (kind == null ? accepted : kind.name()) + " aimed at";
  }
}
