package passband.plan;

import java.util.ArrayList;
import java.util.List;
import passband.syntax.Expression;
import passband.syntax.LimitExpression;

/** Writes a rule in the one way, values without needless digits. */
public final class LimitText implements LimitExpression.Visitor<String> {
  private static final LimitText READABLE = new LimitText(false);
  private static final LimitText EXACT = new LimitText(true);

  private final boolean exact;

  private LimitText(boolean exact) {
    this.exact = exact;
  }

  /** The rule as a person would write it. */
  public static String of(LimitExpression limit) {
    return limit.accept(READABLE);
  }

  /** The rule with every amount in SI: the same for the same meaning. */
  public static String exact(LimitExpression limit) {
    return limit.accept(EXACT);
  }

  private String formula(Expression expression) {
    return exact ? Formula.exact(expression) : Formula.text(expression);
  }

  @Override
  public String within(LimitExpression.Within within) {
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

  private String tolerance(LimitExpression.Tolerance tolerance) {
    String distance =
        tolerance.up() == tolerance.down()
            ? parts(tolerance.up())
            : "+" + parts(tolerance.up()) + " -" + parts(tolerance.down());
    return tolerance.of() == null ? distance : distance + " of " + formula(tolerance.of());
  }

  private String parts(List<LimitExpression.Part> parts) {
    List<String> texts = new ArrayList<>();
    for (LimitExpression.Part part : parts) {
      String amount = part.amount() == null ? "" : Formula.amount(part.amount(), exact);
      texts.add(amount + (part.column() == null ? "" : part.column().text()));
    }
    return String.join(" + ", texts);
  }

  @Override
  public String stated(LimitExpression.Stated stated) {
    return "from stated";
  }

  @Override
  public String output(LimitExpression.Output output) {
    return "from output";
  }

  @Override
  public String ofDevice(LimitExpression.OfDevice device) {
    return "from device";
  }

  @Override
  public String between(LimitExpression.Between between) {
    return "from " + formula(between.lower()) + " to " + formula(between.upper());
  }

  @Override
  public String atMost(LimitExpression.AtMost atMost) {
    return "at most " + formula(atMost.upper());
  }

  @Override
  public String atLeast(LimitExpression.AtLeast atLeast) {
    return "at least " + formula(atLeast.lower());
  }
}
