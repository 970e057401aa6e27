package passband.limit;

import java.math.RoundingMode;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.model.Analyzer;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.syntax.LimitExpression;
import passband.syntax.Tree;

/**
 * What a reading at one point has to be. All values are in SI; {@link #unit} is what they are
 * printed in.
 *
 * @param id the point's identity with the quantity at its end
 * @param read what is read
 * @param exact the tolerance limits before rounding, at each end the tighter of computed and
 *     stated, and the nominal
 * @param computed the rule's limits alone, in the quantity that is read
 * @param ofMode what the mode's profile says of it at this load, in the quantity that is read; null
 *     where it says nothing
 * @param printed the tolerance limits rounded inward
 * @param accept the limits that a reading is compared with, rounded inward once
 * @param ratio the accuracy ratio; null where there is none
 * @param source whether a stated limit governs an end
 * @param rule the line that asks for it
 * @param stated what the row states of it, in the quantity of the rule or in the one that is read
 */
public record Limit(
    String id,
    ReadQuantity read,
    Bounds exact,
    Bounds computed,
    @Nullable Bounds ofMode,
    Rounded printed,
    Rounded accept,
    @Nullable Real ratio,
    Source source,
    Tree.Accept rule,
    List<Stated> stated) {

  /** The same of a quantity that is read otherwise. */
  public Limit with(ReadQuantity other) {
    return new Limit(
        id, other, exact, computed, ofMode, printed, accept, ratio, source, rule, stated);
  }

  /** What the rule's line says of the quantity. */
  public LimitExpression written() {
    return Objects.requireNonNull(rule.limit(), "an acceptance by a rule has no limit itself");
  }

  /** The name of what is read. */
  public String quantity() {
    return read.kind().name();
  }

  /** The printed name of what is read. */
  public String title() {
    return read.title();
  }

  /** The unit of the reading. */
  public Unit unit() {
    return read.unit();
  }

  /** One step of the reading, in SI. */
  public Rational resolution() {
    return read.resolution();
  }

  /** The evaluation of the reading's uncertainty; null where none can be made. */
  public @Nullable Uncertainty uncertainty() {
    return read.uncertainty();
  }

  /** The analyzer's range; null for a swept or derived quantity. */
  public Analyzer.@Nullable Range range() {
    return read.range();
  }

  /** Whether the tolerance before rounding is the other's. */
  public boolean sameTolerance(Limit other) {
    return same(exact.lower(), other.exact.lower()) && same(exact.upper(), other.exact.upper());
  }

  private static boolean same(@Nullable Real a, @Nullable Real b) {
    return a == null ? b == null : b != null && a.compareTo(b) == 0;
  }

  /** Limits on the grid of the reading's steps; null where that side is open. */
  public record Rounded(@Nullable Rational lower, @Nullable Rational upper) {
    /** Whether there is a reading that meets both. */
    public boolean isEmpty() {
      return lower != null && upper != null && lower.compareTo(upper) > 0;
    }
  }

  /** Where a limit comes from. */
  public enum Source {
    RULE("rule"),
    STATED("stated");

    private final String word;

    Source(String word) {
      this.word = word;
    }

    /** As printed. */
    public String word() {
      return word;
    }
  }

  /** The larger of the expanded uncertainties at the two ends, in SI; null where there is none. */
  public @Nullable Real expanded() {
    if (uncertainty() == null) {
      return null;
    }
    Real low = exact.lower() == null ? null : uncertainty().expanded(exact.lower());
    Real high = exact.upper() == null ? null : uncertainty().expanded(exact.upper());
    return low == null ? high : high == null ? low : low.max(high);
  }

  /** The accuracy ratio with two decimals, rounded down; null where there is none. */
  public @Nullable String ratioText() {
    return ratio == null ? null : ratio.floorTo(Rational.of(1, 100)).toFixed(2);
  }

  /** By how much of a target a value is off it: {@code +7.5 %}, three significant digits. */
  public static String percent(Real value, Real target) {
    Real share = value.minus(target).over(target).times(Real.of(Rational.HUNDRED));
    return (share.signum() < 0 ? "−" : "+")
        + share.abs().toDecimal(3, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString()
        + " %";
  }

  /** How many decimals a reading in its unit has. */
  public int decimals() {
    return decimals(resolution().over(unit().factor()));
  }

  /** How many decimals a multiple of the step needs. */
  public static int decimals(Rational step) {
    Rational scaled = step;
    int decimals = 0;
    while (!scaled.isInteger() && decimals < 12) {
      scaled = scaled.times(Rational.TEN);
      decimals++;
    }
    return decimals;
  }

  /** A value in SI as printed in the reading's unit. */
  public String text(Rational si) {
    return si.over(unit().factor()).toFixed(decimals());
  }

  /** An end of limits as printed; null where that side is open. */
  public @Nullable String end(@Nullable Rational si) {
    return si == null ? null : text(si);
  }

  /** Limits of this one in words: {@code 179.0 to 219.0 mA}, {@code at most 3800 V}. */
  public String words(Rounded rounded) {
    return words(end(rounded.lower()), end(rounded.upper()), unit());
  }

  /** Two ends in words, of which one may be open: null. */
  public static String words(@Nullable String low, @Nullable String high, Unit unit) {
    String printed = unit.equals(Unit.ONE) ? "" : " " + unit.printed();
    if (low == null) {
      return "at most " + high + printed;
    }
    return high == null ? "at least " + low + printed : low + " to " + high + printed;
  }
}
