package passband.limit;

import java.math.RoundingMode;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.source.Span;
import passband.syntax.Word;

/**
 * Compares each end of stated limits with those of a rule or a mode: it agrees when it is that
 * limit rounded either way at its last digit; ends rounded outward and tighter ends warn, looser
 * ones are errors.
 */
public final class StatedComparison {
  /**
   * What stated limits are compared with.
   *
   * @param bounds in the stated quantity
   * @param implied tells what tolerance a stated limit amounts to
   * @param ofMode whether they are a mode's, not a rule's
   * @param span where they are written
   */
  public record Reference(Bounds bounds, ImpliedTolerance implied, boolean ofMode, Span span) {
    private String whose() {
      return ofMode ? "the mode's" : "the computed";
    }

    private String note() {
      return ofMode ? "the mode's tolerance is here" : "the rule is here";
    }
  }

  private final Reference reference;
  private final Diagnostics diagnostics;

  /** With these limits. */
  public StatedComparison(Reference reference, Diagnostics diagnostics) {
    this.reference = reference;
    this.diagnostics = diagnostics;
  }

  /** Says where the stated limits disagree. An open end is left to the rule. */
  public void compare(Stated stated) {
    if (stated.lower() != null && reference.bounds.lower() != null) {
      compare(true, stated.lower(), reference.bounds.lower());
    }
    if (stated.upper() != null && reference.bounds.upper() != null) {
      compare(false, stated.upper(), reference.bounds.upper());
    }
  }

  private void compare(boolean isLower, Stated.End end, Real limit) {
    Rational inward = isLower ? limit.ceilingTo(end.digit()) : limit.floorTo(end.digit());
    Rational outward = isLower ? limit.floorTo(end.digit()) : limit.ceilingTo(end.digit());
    Rational value = end.value();
    int beyondInward = isLower ? value.compareTo(inward) : inward.compareTo(value);
    int beyondOutward = isLower ? value.compareTo(outward) : outward.compareTo(value);
    String which = isLower ? "lower" : "upper";
    if (beyondOutward < 0) {
      sayLooser(which, end, limit, inward);
    } else if (beyondInward < 0) {
      sayOutward(which, end, limit, inward);
    } else if (beyondInward > 0) {
      sayTighter(which, end, limit, inward);
    }
  }

  private void sayLooser(String which, Stated.End end, Real limit, Rational inward) {
    String amounts = reference.implied.tolerance(Real.of(end.value()));
    diagnostics
        .say(
            Code.STATED_LOOSER,
            end.amount().span(),
            "the stated %s limit %s is looser than %s %s%s",
            which,
            shown(end.value(), end),
            reference.whose(),
            exact(limit, end),
            amounts == null ? "" : ": " + amounts)
        .note(reference.span, reference.note())
        .hint("%s limit, rounded inward, is %s", reference.whose(), shown(inward, end))
        .fix(Fix.replace(end.amount().span(), written(inward, end)));
  }

  private void sayOutward(String which, Stated.End end, Real limit, Rational inward) {
    diagnostics
        .say(
            Code.STATED_ROUNDED_OUTWARD,
            end.amount().span(),
            "the stated %s limit %s is %s %s rounded outward",
            which,
            shown(end.value(), end),
            reference.whose(),
            exact(limit, end))
        .note(reference.span, reference.note())
        .hint(
            "rounded inward it is %s%s",
            shown(inward, end), reference.ofMode ? "" : "; the computed limit governs")
        .fix(Fix.replace(end.amount().span(), written(inward, end)));
  }

  private void sayTighter(String which, Stated.End end, Real limit, Rational inward) {
    diagnostics
        .say(
            Code.STATED_TIGHTER,
            end.amount().span(),
            "the stated %s limit %s is tighter than %s %s",
            which,
            shown(end.value(), end),
            reference.whose(),
            exact(limit, end))
        .note(reference.span, reference.note())
        .hint(
            "the stated limit governs; %s gives %s",
            reference.ofMode ? "the mode's tolerance" : "the rule alone", shown(inward, end));
  }

  // ---- values as printed ----

  private static String exact(Real limit, Stated.End end) {
    Real inUnit = limit.over(Real.of(end.unit().factor()));
    String digits =
        inUnit.toDecimal(6, RoundingMode.HALF_EVEN).stripTrailingZeros().toPlainString();
    return end.unit().symbol().isEmpty() ? digits : digits + " " + end.unit().printed();
  }

  private static String digits(Rational value, Stated.End end) {
    Rational factor = end.unit().factor();
    return value.over(factor).toFixed(Limit.decimals(end.digit().over(factor)));
  }

  /** As the source would have it: with a unit where the stated one has its own. */
  private static String written(Rational value, Stated.End end) {
    Word own = end.amount().ownUnit();
    return digits(value, end) + (own == null ? "" : " " + own.text());
  }

  private static String shown(Rational value, Stated.End end) {
    String digits = digits(value, end);
    return end.unit().symbol().isEmpty() ? digits : digits + " " + end.unit().printed();
  }
}
