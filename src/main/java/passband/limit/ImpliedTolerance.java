package passband.limit;

import org.jspecify.annotations.Nullable;
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
public record ImpliedTolerance(
    @Nullable Real target, String accepted, String stated, @Nullable Rational ohms) {

  /** In words; null where there is no nominal. */
  @Nullable String tolerance(Real limit) {
    if (target == null || target.signum() == 0 || limit.signum() < 0) {
      return null;
    }
    Real amounts = ohms == null ? limit : Conversion.convert(limit, stated, accepted, ohms);
    QuantityKind kind = QuantityKind.find(accepted);
    return "a deviation of "
        + Limit.percent(amounts, target)
        + " from the nominal "
        + (kind == null ? accepted : kind.name());
  }
}
