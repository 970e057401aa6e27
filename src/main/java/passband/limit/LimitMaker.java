package passband.limit;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device;
import passband.model.Reader;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.source.Span;

/**
 * Makes the limit of one accepted quantity at one point: rule, stated limits, conversion, range,
 * guard band, and one rounding at the end. Gives null, with the fault said, when there is none to
 * make.
 */
public final class LimitMaker {
  private final Reader reader;
  private final Diagnostics diagnostics;
  private final RuleBounds rules;
  private final ModeBounds modes = new ModeBounds();
  private final RangeSelection ranges;
  private final LimitRounding rounding;

  /** For readings of this instrument, compared by this decision rule. */
  public LimitMaker(Reader reader, Decision decision, Diagnostics diagnostics) {
    this.reader = reader;
    this.diagnostics = diagnostics;
    this.rules = new RuleBounds(diagnostics);
    this.ranges = new RangeSelection(reader, decision.coverage(), diagnostics);
    this.rounding = new LimitRounding(decision, diagnostics);
  }

  /** The limit. */
  public @Nullable Limit limit(LimitRequest request) {
    Bounds rule = hasLoad(request) ? rules.of(request) : null;
    if (rule == null || !hasLimits(request)) {
      return null;
    }
    if (!isPossible(rule, request.accepted(), request.accept().span(), request)
        || !isPossible(request.stated(request.read()), request.read(), request)
        || !isPossible(request.stated(request.accepted()), request.accepted(), request)) {
      return null;
    }
    rule = rules.nonNegative(rule, request.accepted(), request.accept().span(), request);
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
    return read == null ? null : limit(request, read, exact, rule);
  }

  private @Nullable Limit limit(
      LimitRequest request, ReadQuantity read, Bounds exact, Bounds rule) {
    Bounds computed = request.converted(rule);
    Real ratio = ToleranceRatio.of(exact, read.kind().nonNegative(), read.uncertainty());
    Limit limit =
        new Limit(
            request.id(),
            read,
            exact,
            computed,
            ofMode(request, computed, rule),
            LimitRounding.rounded(exact, read.resolution()),
            rounding.accepting(exact, read, ratio),
            ratio,
            request.hasStated() && statedGoverns(exact, computed)
                ? Limit.Source.STATED
                : Limit.Source.RULE,
            request.accept(),
            request.allStated());
    return rounding.isUsable(limit, request) ? limit : null;
  }

  /** What the generator shows itself is its own word: its mode's output says nothing of it. */
  private @Nullable Bounds ofMode(LimitRequest request, Bounds computed, Bounds rule) {
    if (request.fromOutput()) {
      return computed;
    }
    return reader instanceof Device ? null : modes.asRead(request, rule);
  }

  // ---- what has to be there ----

  private boolean hasLoad(LimitRequest request) {
    if (!request.converts()) {
      return true;
    }
    if (ranges.hasOwnResistance(request.read())) {
      diagnostics
          .say(
              Code.NO_LOAD,
              request.accept().span(),
              "%s cannot be read as %s, which is measured through a resistance of its own",
              request.accepted().name(),
              request.read().name())
          .hint("accept the quantity that is read");
      return false;
    }
    if (request.point().ohms() != null) {
      return true;
    }
    PointConditions.Load load = request.point().load();
    if (load.termination() != null) {
      diagnostics
          .say(
              Code.NO_LOAD,
              load.span(),
              "%s cannot be read as %s: the load is %s",
              request.accepted().name(),
              request.read().name(),
              load.termination().word())
          .note(request.accept().span(), "this rule reads it so");
      return false;
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
    if (!request.statedOnly() || request.hasStated()) {
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

  private boolean isPossible(@Nullable Stated stated, QuantityKind kind, LimitRequest request) {
    return stated == null || isPossible(stated.bounds(), kind, stated.span(), request);
  }

  private boolean isPossible(Bounds bounds, QuantityKind kind, Span where, LimitRequest request) {
    if (!RuleBounds.belowZero(bounds, kind)) {
      return true;
    }
    diagnostics.say(
        Code.EMPTY_LIMITS,
        where,
        "the upper limit is below zero at %s: no reading would pass",
        request.point().id());
    return false;
  }

  // ---- stated limits ----

  /**
   * The rule's limits in the quantity that is read, or at each end the stated one where that is
   * tighter. Limits may be stated for the quantity of the rule, for the one that is read, or for
   * both.
   *
   * @param rule in the quantity of the rule
   * @param computed in the quantity that is read
   */
  private Bounds tightened(Bounds rule, Bounds computed, LimitRequest request) {
    Bounds tight = computed;
    Stated asRead = request.stated(request.read());
    if (asRead != null) {
      Rational ohms = request.converts() ? request.point().ohms() : null;
      agree(asRead, computed, rule, ohms, request);
      tight = tight.tighter(possible(asRead, request.read(), request));
    }
    Stated asAccepted = request.converts() ? request.stated(request.accepted()) : null;
    if (asAccepted != null) {
      agree(asAccepted, rule, rule, null, request);
      Bounds stated = possible(asAccepted, request.accepted(), request);
      tight = tight.tighter(request.converted(stated));
    }
    return tight;
  }

  private Bounds possible(Stated stated, QuantityKind kind, LimitRequest request) {
    return rules.nonNegative(stated.bounds(), kind, stated.span(), request);
  }

  /**
   * Compares stated limits with the rule's.
   *
   * @param computed the rule's limits in the stated quantity
   * @param ohms the load through which the one quantity is read as the other; null when they are
   *     the same
   */
  private void agree(
      Stated stated, Bounds computed, Bounds rule, @Nullable Rational ohms, LimitRequest request) {
    String quantity = Objects.requireNonNull(stated.quantity(), "the quantity is known by now");
    ImpliedTolerance implied =
        new ImpliedTolerance(rule.nominal(), request.accepted().name(), quantity, ohms);
    Span written = request.accept().span();
    new StatedComparison(
            new StatedComparison.Reference(computed, implied, false, written), diagnostics)
        .compare(stated);
  }

  private static boolean statedGoverns(Bounds exact, Bounds computed) {
    return !same(exact.lower(), computed.lower()) || !same(exact.upper(), computed.upper());
  }

  private static boolean same(@Nullable Real a, @Nullable Real b) {
    return a == null ? b == null : b != null && a.compareTo(b) == 0;
  }
}
