package passband.limit;

import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.resolve.Values;
import passband.source.Span;
import passband.syntax.Amount;
import passband.syntax.Word;

/**
 * A limit as the manual prints it.
 *
 * @param quantity the name of the quantity; null when the cell does not say
 * @param lower null when that side is open
 * @param upper null when that side is open
 * @param span the cell
 * @param heading the heading of its column
 */
public record Stated(
    @Nullable String quantity, @Nullable End lower, @Nullable End upper, Span span, Span heading) {

  /**
   * One end.
   *
   * @param value in SI
   * @param digit one unit of the last digit printed, in SI
   * @param amount as written
   */
  public record End(Rational value, Rational digit, Unit unit, Amount amount) {}

  /** The ends as bounds without a nominal. */
  public Bounds bounds() {
    return new Bounds(
        null,
        lower == null ? null : Real.of(lower.value),
        upper == null ? null : Real.of(upper.value));
  }

  /**
   * Compares each end with the computed limit: it agrees when it is that limit rounded either way
   * at its last digit; rounded outward and tighter ends warn, looser ones are errors.
   *
   * @param computed the rule's limits in the stated quantity
   * @return whether no end is looser
   */
  public boolean agrees(Bounds computed, Implied implied, Span rule, Diagnostics diagnostics) {
    boolean low =
        lower == null
            || computed.lower() == null
            || agrees(true, lower, computed.lower(), computed, implied, rule, diagnostics);
    boolean high =
        upper == null
            || computed.upper() == null
            || agrees(false, upper, computed.upper(), computed, implied, rule, diagnostics);
    return low && high;
  }

  /**
   * Tells what tolerance a limit amounts to, in the words of the rule; null when there is no
   * nominal.
   */
  public interface Implied {
    /** For a limit of the stated quantity. */
    @Nullable String tolerance(Real limit);
  }

  private static boolean agrees(
      boolean isLower,
      End end,
      Real limit,
      Bounds computed,
      Implied implied,
      Span rule,
      Diagnostics diagnostics) {
    Rational inward = isLower ? limit.ceilingTo(end.digit) : limit.floorTo(end.digit);
    Rational outward = isLower ? limit.floorTo(end.digit) : limit.ceilingTo(end.digit);
    int beyondInward = isLower ? end.value.compareTo(inward) : inward.compareTo(end.value);
    int beyondOutward = isLower ? end.value.compareTo(outward) : outward.compareTo(end.value);
    String which = isLower ? "lower" : "upper";
    if (beyondOutward < 0) {
      sayLooser(which, end, limit, inward, implied, rule, diagnostics);
      return false;
    }
    if (beyondInward < 0) {
      diagnostics
          .say(
              Code.STATED_ROUNDED_OUTWARD,
              end.amount.span(),
              "the stated %s limit %s is the computed %s rounded outward",
              which,
              shown(end.value, end),
              exact(limit, end))
          .note(rule, "the rule is here")
          .hint("rounded inward it is %s; the computed limit governs", shown(inward, end))
          .fix(Fix.replace(end.amount.span(), written(inward, end)));
    } else if (beyondInward > 0) {
      diagnostics
          .say(
              Code.STATED_TIGHTER,
              end.amount.span(),
              "the stated %s limit %s is tighter than the computed %s",
              which,
              shown(end.value, end),
              exact(limit, end))
          .note(rule, "the rule is here")
          .hint("the stated limit governs; the rule alone gives %s", shown(inward, end));
    }
    return true;
  }

  private static void sayLooser(
      String which,
      End end,
      Real limit,
      Rational inward,
      Implied implied,
      Span rule,
      Diagnostics diagnostics) {
    String amounts = implied.tolerance(Real.of(end.value));
    diagnostics
        .say(
            Code.STATED_LOOSER,
            end.amount.span(),
            "the stated %s limit %s is looser than the computed %s%s",
            which,
            shown(end.value, end),
            exact(limit, end),
            amounts == null ? "" : ": " + amounts)
        .note(rule, "the rule is here")
        .hint("the computed limit, rounded inward, is %s", shown(inward, end))
        .fix(Fix.replace(end.amount.span(), written(inward, end)));
  }

  private static String exact(Real limit, End end) {
    Real inUnit = limit.over(Real.of(end.unit.factor()));
    String digits =
        inUnit.toDecimal(6, RoundingMode.HALF_EVEN).stripTrailingZeros().toPlainString();
    return end.unit.symbol().isEmpty() ? digits : digits + " " + end.unit.printed();
  }

  private static String digits(Rational value, End end) {
    return value.over(end.unit.factor()).toFixed(Limit.decimals(end.digit.over(end.unit.factor())));
  }

  /** As the source would have it: with a unit where the stated one has its own. */
  private static String written(Rational value, End end) {
    Word own = end.amount.ownUnit();
    return digits(value, end) + (own == null ? "" : " " + own.text());
  }

  private static String shown(Rational value, End end) {
    String digits = digits(value, end);
    return end.unit.symbol().isEmpty() ? digits : digits + " " + end.unit.printed();
  }

  /** An end from an amount; null, with the fault said, when its unit or number is at fault. */
  public static @Nullable End end(Amount amount, Values values) {
    Unit unit = values.unitOf(amount);
    if (unit == null || amount.number() == null) {
      return null;
    }
    return new End(
        amount.number().times(unit.factor()),
        amount.lastDigit().times(unit.factor()),
        unit,
        amount);
  }
}
