package passband.limit;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.source.Span;

/**
 * Makes the limit of one accepted quantity at one point: rule, stated limits, conversion, range,
 * guard band, and one rounding at the end. Gives null, with the fault said, when there is none to
 * make.
 */
public final class LimitMaker {
  private final Diagnostics diagnostics;
  private final RuleBounds rules;
  private final RangeSelection ranges;
  private final LimitRounding rounding;

  /** For readings of this analyzer, compared by this decision rule. */
  public LimitMaker(Analyzer analyzer, Decision decision, Diagnostics diagnostics) {
    this.diagnostics = diagnostics;
    this.rules = new RuleBounds(diagnostics);
    this.ranges = new RangeSelection(analyzer, decision.coverage(), diagnostics);
    this.rounding = new LimitRounding(decision, diagnostics);
  }

  /** The limit. */
  public @Nullable Limit limit(LimitRequest request) {
    Bounds rule = hasLoad(request) ? rules.of(request) : null;
    if (rule == null || !hasLimits(request) || !isPossible(rule, request)) {
      return null;
    }
    rule = rules.nonNegative(rule, request);
    Bounds computed = request.converted(rule);
    Bounds exact = tightened(rule, computed, request);
    if (exact.lower() == null && exact.upper() == null) {
      diagnostics.say(
          Code.EMPTY_LIMITS,
          request.accept().span(),
          "no limit applies at %s: any reading would pass",
          request.point().id());
      return null;
    }
    ReadQuantity read =
        request.workedOut() != null ? request.workedOut() : ranges.read(request, exact);
    return read == null ? null : limit(request, read, exact, computed);
  }

  private @Nullable Limit limit(
      LimitRequest request, ReadQuantity read, Bounds exact, Bounds computed) {
    boolean stated = request.states(request.accepted()) || request.states(request.read());
    Limit limit =
        new Limit(
            request.id(),
            read,
            exact,
            computed,
            request.fromOutput() ? computed : rules.ofModeAsRead(request),
            LimitRounding.rounded(exact, read.resolution()),
            rounding.accepting(exact, read),
            ToleranceRatio.of(exact, read.uncertainty()),
            stated && statedGoverns(exact, computed) ? Limit.Source.STATED : Limit.Source.RULE,
            request.accept());
    return rounding.isUsable(limit, request) ? limit : null;
  }

  // ---- what has to be there ----

  private boolean hasLoad(LimitRequest request) {
    if (!request.converts() || request.point().ohms() != null) {
      return true;
    }
    diagnostics
        .say(
            Code.NO_LOAD,
            request.accept().span(),
            "%s can be read as %s only through a load",
            request.accepted().name(),
            request.read().name())
        .note(request.point().span(), "this point has no load")
        .hint("add a 'load' column to the table");
    return false;
  }

  private boolean hasLimits(LimitRequest request) {
    if (!request.statedOnly()
        || request.states(request.accepted())
        || request.states(request.read())) {
      return true;
    }
    diagnostics
        .say(
            Code.STATED_MISSING,
            request.point().span(),
            "this row has no stated limits for %s",
            request.read().name())
        .note(request.accept().span(), "this rule takes its limits from them");
    return false;
  }

  private boolean isPossible(Bounds rule, LimitRequest request) {
    if (!RuleBounds.belowZero(rule, request.accepted())) {
      return true;
    }
    diagnostics.say(
        Code.EMPTY_LIMITS,
        request.accept().span(),
        "the upper limit is below zero at %s: no reading would pass",
        request.point().id());
    return false;
  }

  // ---- stated limits ----

  /**
   * The rule's limits in the quantity that is read, or at each end the stated one where that is
   * tighter.
   *
   * @param rule in the quantity of the rule
   * @param computed in the quantity that is read
   */
  private Bounds tightened(Bounds rule, Bounds computed, LimitRequest request) {
    Stated stated = request.point().stated();
    String accepted = request.accepted().name();
    Span span = request.accept().span();
    if (stated == null) {
      return computed;
    }
    if (request.states(request.read())) {
      Rational ohms = request.converts() ? request.point().ohms() : null;
      ImpliedTolerance implied =
          new ImpliedTolerance(rule.nominal(), accepted, request.read().name(), ohms);
      stated.agrees(computed, implied, span, diagnostics);
      return computed.tighter(stated.bounds());
    }
    if (request.states(request.accepted())) {
      ImpliedTolerance implied = new ImpliedTolerance(rule.nominal(), accepted, accepted, null);
      stated.agrees(rule, implied, span, diagnostics);
      return request.converted(rule.tighter(stated.bounds()));
    }
    return computed;
  }

  private static boolean statedGoverns(Bounds exact, Bounds computed) {
    return !same(exact.lower(), computed.lower()) || !same(exact.upper(), computed.upper());
  }

  private static boolean same(@Nullable Real a, @Nullable Real b) {
    return a == null ? b == null : b != null && a.compareTo(b) == 0;
  }
}
