package passband.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.limit.Bounds;
import passband.limit.Limit;
import passband.limit.Rules;
import passband.model.Device.Mode;
import passband.plan.Plan;
import passband.plan.Point;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Expression;
import passband.syntax.LimitExpression;
import passband.syntax.Tree;

/**
 * {@code rule-looser-than-mode} and {@code looser-together}, errors, and {@code
 * rule-tighter-than-mode}, a warning: a test's rule against what the mode's profile says, as limits
 * of what is read. Limits are compared, never targets. Of two rules at one point a one-sided one
 * may be looser than an output of another quantity, if the other is as tight.
 */
final class RuleAgainstMode implements Check {
  @Override
  public void check(Plan plan, Diagnostics diagnostics) {
    for (Point point : plan.points()) {
      for (Limit limit : point.limits()) {
        Mode mode = point.mode();
        boolean stated = limit.written() instanceof LimitExpression.Stated;
        if (mode != null && limit.ofMode() != null && !stated) {
          look(mode, point, limit, limit.ofMode(), diagnostics);
        }
      }
    }
  }

  private static void look(
      Mode mode, Point point, Limit limit, Bounds ofMode, Diagnostics diagnostics) {
    if (isLooser(limit, limit.computed())) {
      if (!point.also().isEmpty()) {
        sayTogether(mode, limit, ofMode, diagnostics);
      } else if (!isCovered(mode, point, limit) && !PowerTolerance.applies(point, limit)) {
        sayLooser(mode, limit, ofMode, diagnostics);
      }
      return;
    }
    Ends ends = Ends.of(limit);
    if (isTighter(limit.computed().lower(), ofMode.lower(), true, ends.lower)
        || isTighter(limit.computed().upper(), ofMode.upper(), false, ends.upper)) {
      String message = "this rule is tighter than the mode '%s' itself at %s";
      String name = mode.name().text();
      diagnostics
          .say(Code.RULE_TIGHTER_THAN_MODE, limit.rule().span(), message, name, limit.id())
          .note(
              ModeLines.limit(
                  mode, limit.rule().quantity() == null ? "" : limit.rule().quantity().text()),
              "the mode gives %s",
              sides(limit.unit(), ofMode));
    }
  }

  private static void sayLooser(Mode mode, Limit limit, Bounds ofMode, Diagnostics diagnostics) {
    String message = "this rule is looser than the mode '%s' itself at %s";
    String name = mode.name().text();
    diagnostics
        .say(Code.RULE_LOOSER_THAN_MODE, limit.rule().span(), message, name, limit.id())
        .note(
            ModeLines.limit(
                mode, limit.rule().quantity() == null ? "" : limit.rule().quantity().text()),
            "the mode gives %s",
            sides(limit.unit(), ofMode))
        .hint("write 'accept … from output', or correct whichever of the two is wrong")
        .fix(fromOutput(mode, limit));
  }

  /** Of two outlets that share what the generator can deliver only the maker can say. */
  static void sayTogether(Mode mode, Limit limit, Bounds ofMode, Diagnostics diagnostics) {
    String quantity = limit.rule().quantity() == null ? "" : limit.rule().quantity().text();
    diagnostics
        .say(
            Code.LOOSER_TOGETHER,
            limit.rule().span(),
            "while another outlet delivers too, this rule is looser than the mode '%s' itself at"
                + " %s",
            mode.name().text(),
            limit.id())
        .note(ModeLines.limit(mode, quantity), "the mode gives %s", sides(limit.unit(), ofMode))
        .hint(
            "if the manual gives these limits for both at once, write in the test: allow"
                + " looser-together because \"…\"");
  }

  // ---- comparing ----

  /** Whether at either end something passes that the mode does not allow. */
  static boolean isLooser(Limit limit, Bounds bounds) {
    Bounds ofMode = Objects.requireNonNull(limit.ofMode(), "only where the profile says something");
    return bounds.looserThan(ofMode);
  }

  /**
   * Whether the profile says nothing of the rule's own quantity, only of its output through the
   * load, and another rule of the point is tight enough for that. Limits on both sides say what the
   * output is and are held to it all the same: of two columns a slip in either would pass.
   */
  static boolean isCovered(Mode mode, Point point, Limit limit) {
    boolean bothSides = limit.exact().lower() != null && limit.exact().upper() != null;
    if (bothSides || says(mode, limit.rule())) {
      return false;
    }
    for (Limit other : point.limits()) {
      if (other != limit && other.ofMode() != null && !isLooser(other, other.exact())) {
        return true;
      }
    }
    return false;
  }

  /** Whether the profile has a line for the quantity of a rule. */
  private static boolean says(Mode mode, Tree.Accept rule) {
    List<Tree.QuantityLimit> lines = new ArrayList<>(mode.limits());
    if (mode.output() != null) {
      lines.add(mode.output());
    }
    for (Tree.QuantityLimit line : lines) {
      if (rule.quantity() != null && line.quantity().text().equals(rule.quantity().text())) {
        return true;
      }
    }
    return false;
  }

  /** An end of the mode's, rounded inward at the last digit that is written, is not tighter. */
  private static boolean isTighter(
      @Nullable Real rule, @Nullable Real mode, boolean lower, @Nullable Rational digit) {
    if (rule == null || mode == null) {
      return false;
    }
    if (digit != null) {
      Real inward = Real.of(lower ? mode.ceilingTo(digit) : mode.floorTo(digit));
      return lower ? rule.compareTo(inward) > 0 : rule.compareTo(inward) < 0;
    }
    return lower ? rule.compareTo(mode) > 0 : rule.compareTo(mode) < 0;
  }

  /**
   * One unit of the last digit of limits that are written as amounts of what is read, in SI; null
   * where they are not.
   */
  private record Ends(@Nullable Rational lower, @Nullable Rational upper) {
    static Ends of(Limit limit) {
      if (limit.rule().readAs() != null) {
        return new Ends(null, null);
      }
      LimitExpression written = limit.written();
      if (written instanceof LimitExpression.Between between) {
        return new Ends(digit(between.lower()), digit(between.upper()));
      }
      return new Ends(
          written instanceof LimitExpression.AtLeast least ? digit(least.lower()) : null,
          written instanceof LimitExpression.AtMost most ? digit(most.upper()) : null);
    }

    private static @Nullable Rational digit(Expression written) {
      if (!(written instanceof Expression.Literal literal)) {
        return null;
      }
      Unit unit =
          literal.amount().unit() == null ? Unit.ONE : Units.find(literal.amount().unit().text());
      return unit == null ? null : literal.amount().lastDigit().times(unit.factor());
    }
  }

  // ---- words ----

  /** The fix that takes the mode's tolerance, of the quantity that the mode gives it for. */
  private static Fix fromOutput(Mode mode, Limit limit) {
    Tree.Accept rule = limit.rule();
    Tree.QuantityLimit output = mode.output();
    if (output == null || says(mode, rule)) {
      return Fix.replace(limit.written().span(), "from output");
    }
    String quantity = output.quantity().text();
    String read = rule.readAs() != null ? "" : ", read as " + limit.quantity();
    return Fix.of(
        "accept " + quantity + " from output" + read,
        new Fix.Edit(Rules.quantitySpan(rule), quantity),
        new Fix.Edit(limit.written().span(), "from output"),
        new Fix.Edit(rule.span().atEnd(), read));
  }

  static String sides(Unit unit, Bounds ofMode) {
    Real low = ofMode.lower();
    Real high = ofMode.upper();
    if (low == null) {
      return high == null ? "no limit" : "at most " + Figures.text(high, unit);
    }
    return high == null
        ? "at least " + Figures.text(low, unit)
        : Figures.text(low, unit) + " to " + Figures.text(high, unit);
  }
}
