package passband.diff;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.plan.Formula;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Amount;
import passband.syntax.Expression;
import passband.syntax.LimitExpression;
import passband.syntax.LimitExpression.Part;
import passband.syntax.LimitExpression.Tolerance;
import passband.syntax.LimitExpression.Within;

/**
 * What a change of a limit that a profile or a rule writes is, as far as that is the same at every
 * point: where only numbers differ that all move its ends in one way.
 */
final class WrittenLimits {
  /** How far the ends move: 1 looser, −1 tighter, each found at least once. */
  private boolean looser;

  private boolean tighter;
  private boolean comparable = true;

  private WrittenLimits() {}

  /** Null where it depends on the point. */
  static @Nullable Kind moved(LimitExpression was, LimitExpression now) {
    if (was instanceof Within old && now instanceof Within fresh) {
      WrittenLimits limits = new WrittenLimits();
      limits.within(old, fresh);
      return limits.kind();
    }
    Limit.Rounded old = ends(was);
    Limit.Rounded fresh = ends(now);
    return old == null || fresh == null ? null : LimitChangeClassifier.moved(old, fresh);
  }

  private @Nullable Kind kind() {
    if (!comparable || !looser && !tighter) {
      return null;
    }
    return looser && tighter ? Kind.SHIFTED : looser ? Kind.LOOSENED : Kind.TIGHTENED;
  }

  private void within(Within was, Within now) {
    tolerance(was.first(), now.first());
    Tolerance old = was.second();
    Tolerance fresh = now.second();
    if (old != null && fresh != null) {
      one(Boolean.compare(now.greater(), was.greater()));
      tolerance(old, fresh);
    } else if (old != null) {
      one(was.greater() ? -1 : 1); // the smaller of two is gone, or the greater
    } else if (fresh != null) {
      one(now.greater() ? 1 : -1);
    }
  }

  private void tolerance(Tolerance was, Tolerance now) {
    comparable &= of(was).equals(of(now));
    parts(was.up(), now.up());
    parts(was.down(), now.down());
  }

  private static String of(Tolerance tolerance) {
    Expression of = tolerance.of();
    return of == null ? "" : Formula.exact(of);
  }

  private void parts(List<Part> was, List<Part> now) {
    comparable &= was.size() == now.size();
    for (int i = 0; comparable && i < was.size(); i++) {
      part(was.get(i), now.get(i));
    }
  }

  private void part(Part was, Part now) {
    if (was.column() != null && now.column() != null) {
      comparable &= was.column().text().equals(now.column().text());
      return;
    }
    Rational old = value(was.amount());
    Rational fresh = value(now.amount());
    if (old == null || fresh == null || isShare(was.amount()) != isShare(now.amount())) {
      comparable = false;
    } else {
      one(fresh.compareTo(old));
    }
  }

  private void one(int direction) {
    looser |= direction > 0;
    tighter |= direction < 0;
  }

  private static boolean isShare(@Nullable Amount amount) {
    return amount != null && amount.unit() != null && amount.unit().text().equals("%");
  }

  /** In SI; a share as a number. */
  private static @Nullable Rational value(@Nullable Amount amount) {
    if (amount == null || amount.number() == null) {
      return null;
    }
    Unit unit = amount.unit() == null ? Unit.ONE : Units.find(amount.unit().text());
    return unit == null ? null : amount.number().times(unit.factor());
  }

  /** What is between two numbers; null for anything that has to be worked out. */
  private static Limit.@Nullable Rounded ends(LimitExpression limit) {
    if (limit instanceof LimitExpression.AtMost most) {
      Rational upper = value(most.upper());
      return upper == null ? null : new Limit.Rounded(null, upper);
    }
    if (limit instanceof LimitExpression.AtLeast least) {
      Rational lower = value(least.lower());
      return lower == null ? null : new Limit.Rounded(lower, null);
    }
    if (limit instanceof LimitExpression.Between between) {
      Rational lower = value(between.lower());
      Rational upper = value(between.upper());
      return lower == null || upper == null ? null : new Limit.Rounded(lower, upper);
    }
    return null;
  }

  private static @Nullable Rational value(Expression expression) {
    if (expression instanceof Expression.Negative negative) {
      Rational inner = value(negative.inner());
      return inner == null ? null : Rational.ZERO.minus(inner);
    }
    return expression instanceof Expression.Literal literal ? value(literal.amount()) : null;
  }
}
