package passband.check;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.limit.Bounds;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.syntax.Expression;
import passband.syntax.Tree;
import passband.syntax.Variables;

/**
 * {@code crest-below-one}, an error: limits of a crest factor below 1, or one that is worked out
 * the wrong way round. A peak value is never below the RMS value of the same wave, so their ratio
 * is never below 1.
 */
final class CrestFactor implements Check {
  private static final String NAME = "crest-factor";
  private static final Real ONE = Real.of(Rational.ONE);
  private static final Set<String> PEAK = Set.of("peak-voltage", "peak-current");
  private static final Set<String> RMS = Set.of("voltage", "current");

  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Stage.Run run : plan.runs()) {
      run.tree().derives().forEach(derive -> turned(derive, diagnostics));
      for (Point point : run.points()) {
        for (Limit limit : point.limits()) {
          if (limit.quantity().equals(NAME)) {
            below(point, limit, diagnostics);
          }
        }
      }
    }
  }

  // ---- limits ----

  /** Around a nominal of 1 or more the tolerance may well reach below it. */
  private static void below(Point point, Limit limit, Diagnostics diagnostics) {
    Bounds exact = limit.exact();
    boolean nominal = isBelow(exact.nominal());
    boolean lower = exact.nominal() == null && isBelow(exact.lower());
    if (nominal || lower || isBelow(exact.upper())) {
      diagnostics
          .say(
              Code.CREST_BELOW_ONE,
              limit.rule().span(),
              "the limits of the crest factor are %s, but peak divided by RMS is never below 1",
              limit.words(limit.printed()))
          .note(point.span(), "at this point");
    }
  }

  private static boolean isBelow(@Nullable Real end) {
    return end != null && end.compareTo(ONE) < 0;
  }

  // ---- formula ----

  private static void turned(Tree.Derive derive, Diagnostics diagnostics) {
    if (derive.name().text().equals(NAME)
        && derive.value() instanceof Expression.Binary ratio
        && ratio.operator() == Expression.Operator.OVER
        && isOf(ratio.left(), RMS, PEAK)
        && isOf(ratio.right(), PEAK, RMS)) {
      diagnostics
          .say(
              Code.CREST_BELOW_ONE,
              ratio.span(),
              "this divides the RMS value by the peak: the crest factor would be below 1")
          .hint("divide the peak by the RMS value")
          .fix(Fix.swap(ratio.left().span(), ratio.right().span()));
    }
  }

  private static boolean isOf(Expression part, Set<String> some, Set<String> none) {
    boolean found = false;
    for (String name : Variables.of(part)) {
      if (none.contains(name)) {
        return false;
      }
      found |= some.contains(name);
    }
    return found;
  }
}
