package passband.plan;

import passband.syntax.Amount;
import passband.syntax.Expression;
import passband.syntax.Limit;

/** Writes a rule in the one way, values without needless digits. */
public final class LimitText implements Limit.Visitor<String> {
  private static final LimitText READABLE = new LimitText(false);
  private static final LimitText EXACT = new LimitText(true);

  private final boolean exact;

  private LimitText(boolean exact) {
    this.exact = exact;
  }

  /** The rule as a person would write it. */
  public static String of(Limit limit) {
    return limit.accept(READABLE);
  }

  /** The rule with every amount in SI: the same for the same meaning. */
  public static String exact(Limit limit) {
    return limit.accept(EXACT);
  }

  private String formula(Expression expression) {
    return exact ? Formula.exact(expression) : Formula.text(expression);
  }

  @Override
  public String within(Limit.Within within) {
    String text = "within " + tolerance(within.first());
    if (within.second() == null) {
      return text;
    }
    return text
        + " or "
        + tolerance(within.second())
        + ", whichever is "
        + (within.greater() ? "greater" : "smaller");
  }

  private String tolerance(Limit.Tolerance tolerance) {
    String distance =
        tolerance.up() == tolerance.down()
            ? amount(tolerance.up())
            : "+" + amount(tolerance.up()) + " -" + amount(tolerance.down());
    return tolerance.of() == null ? distance : distance + " of " + formula(tolerance.of());
  }

  private String amount(Amount amount) {
    return Formula.amount(amount, exact);
  }

  @Override
  public String stated(Limit.Stated stated) {
    return "from stated";
  }

  @Override
  public String output(Limit.Output output) {
    return "from output";
  }

  @Override
  public String between(Limit.Between between) {
    return "from " + formula(between.lower()) + " to " + formula(between.upper());
  }

  @Override
  public String atMost(Limit.AtMost atMost) {
    return "at most " + formula(atMost.upper());
  }

  @Override
  public String atLeast(Limit.AtLeast atLeast) {
    return "at least " + formula(atLeast.lower());
  }
}
