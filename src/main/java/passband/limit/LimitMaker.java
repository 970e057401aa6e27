package passband.limit;

import java.math.RoundingMode;
import java.util.Objects;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.model.Device;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.sequence.Seq;
import passband.source.Span;
import passband.syntax.Tree;

/**
 * Makes the limit of one accepted quantity at one point: rule, stated limits, conversion, range,
 * guard band, and one rounding at the end. Gives null, with the fault said, when there is none to
 * make.
 */
public final class LimitMaker {

  /**
   * What is known of the point.
   *
   * @param id its identity without the quantity
   * @param ohms the load; null when it has none
   * @param columns what names in expressions stand for
   * @param mode null when there is none
   * @param stated the limits the manual prints; null when it prints none
   * @param span where the point is written
   */
  public record Point(
      String id, Rational ohms, RowValues columns, Device.Mode mode, Stated stated, Span span) {}

  /**
   * A quantity that is not measured by one of the analyzer's functions: swept or derived.
   *
   * @param name as accepted
   * @param unit what it is read in
   * @param resolution one step, in SI
   * @param uncertainty null when none can be made
   */
  public record Special(
      String name,
      String title,
      QuantityKind kind,
      Unit unit,
      Rational resolution,
      Uncertainty uncertainty) {}

  private final Analyzer analyzer;
  private final Decision decision;
  private final Diagnostics diagnostics;
  private Analyzer.Range lastRange;
  private QuantityKind lastFrom;
  private Rational lastThrough;
  private Uncertainty lastUncertainty;

  /** For readings of this analyzer, compared by this decision rule. */
  public LimitMaker(Analyzer analyzer, Decision decision, Diagnostics diagnostics) {
    this.analyzer = analyzer;
    this.decision = decision;
    this.diagnostics = diagnostics;
  }

  /**
   * The limit.
   *
   * @param accepted the quantity that the rule is about
   * @param read the quantity that is read; the same where nothing is converted
   * @param special set when the quantity is swept or derived
   */
  public Limit limit(
      Point point, Tree.Accept accept, QuantityKind accepted, QuantityKind read, Special special) {
    boolean converts = !accepted.name().equals(read.name());
    if (converts && point.ohms == null) {
      diagnostics.add(
          Diagnostic.of(
                  Code.NO_LOAD,
                  accept.span(),
                  "a "
                      + accepted.name()
                      + " is read as a "
                      + read.name()
                      + " through a load, but there is no load")
              .note(point.span, "this point has none")
              .hint("give the table a 'load' column"));
      return null;
    }
    Bounds rule = ruleBounds(point, accept, accepted);
    if (rule == null) {
      return null;
    }
    Stated stated = point.stated;
    boolean before = stated != null && converts && accepted.name().equals(stated.quantity());
    boolean after = stated != null && read.name().equals(stated.quantity());
    boolean statedOnly = accept.limit() instanceof passband.syntax.LimitExpression.Stated;
    if (statedOnly && !before && !after) {
      diagnostics.add(
          Diagnostic.of(
                  Code.STATED_MISSING,
                  point.span,
                  "this row states no limits for "
                      + read.name()
                      + ", and the test takes them from there")
              .note(accept.span(), "the rule is here"));
      return null;
    }
    if (belowZero(rule, accepted)) {
      diagnostics.add(
          Code.EMPTY_LIMITS,
          accept.span(),
          "the upper limit is below zero at " + point.id + ": no reading would pass");
      return null;
    }
    rule = nonNegative(rule, accepted, accept.span(), point.id);
    Bounds exact = rule;
    if (before) {
      stated.agrees(
          rule,
          new ImpliedTolerance(rule.nominal(), accepted.name(), accepted.name(), null),
          accept.span(),
          diagnostics);
      exact = rule.tighter(stated.bounds());
    }
    Bounds computed = converted(rule, accepted, read, point.ohms);
    exact = before ? converted(exact, accepted, read, point.ohms) : computed;
    if (after) {
      Real target = rule.nominal();
      stated.agrees(
          computed,
          new ImpliedTolerance(target, accepted.name(), read.name(), converts ? point.ohms : null),
          accept.span(),
          diagnostics);
      exact = exact.tighter(stated.bounds());
    }
    return finished(point, accept, accepted, read, special, exact, computed, before || after);
  }

  private static Bounds converted(
      Bounds bounds, QuantityKind accepted, QuantityKind read, Rational ohms) {
    return accepted.name().equals(read.name())
        ? bounds
        : bounds.map(x -> Conversion.convert(x, accepted.name(), read.name(), ohms));
  }

  private Bounds ruleBounds(Point point, Tree.Accept accept, QuantityKind accepted) {
    boolean fromOutput = accept.limit() instanceof passband.syntax.LimitExpression.Output;
    Bounds output = fromOutput ? ofMode(point, accepted) : null;
    return new Rules(accepted.name(), accepted.dimension(), output, point.columns, diagnostics)
        .bounds(accept.limit());
  }

  /** What the mode's profile says of a quantity; null where it says nothing. */
  private Bounds ofMode(Point point, QuantityKind accepted) {
    Tree.QuantityLimit own = point.mode == null ? null : own(point.mode, accepted.name());
    return own == null
        ? null
        : new Rules(accepted.name(), accepted.dimension(), null, point.columns, diagnostics)
            .bounds(own.limit());
  }

  private static Tree.QuantityLimit own(Device.Mode mode, String quantity) {
    if (mode.output() != null && mode.output().quantity().text().equals(quantity)) {
      return mode.output();
    }
    return Seq.of(mode.limits())
        .filter(l -> l.quantity().text().equals(quantity))
        .findFirst()
        .orElse(null);
  }

  /** The mode's own limits in the quantity that is read, open where they come to zero or less. */
  private Bounds ofMode(Point point, QuantityKind accepted, QuantityKind read) {
    Bounds own = ofMode(point, accepted);
    if (own == null || belowZero(own, accepted)) {
      return null;
    }
    return converted(possible(own, accepted), accepted, read, point.ohms);
  }

  private static boolean belowZero(Bounds bounds, QuantityKind kind) {
    return kind.nonNegative() && bounds.upper() != null && bounds.upper().signum() < 0;
  }

  /** Of what is never negative: a nominal only where there can be one, a lower side above zero. */
  private static Bounds possible(Bounds bounds, QuantityKind kind) {
    if (!kind.nonNegative()) {
      return bounds;
    }
    Real nominal = bounds.nominal();
    Real lower = bounds.lower();
    return new Bounds(
        nominal == null || nominal.signum() < 0 ? null : nominal,
        lower == null || lower.signum() <= 0 ? null : lower,
        bounds.upper());
  }

  /** A lower limit at or below zero of what is never negative says nothing: that side is open. */
  private Bounds nonNegative(Bounds given, QuantityKind kind, Span rule, String id) {
    Bounds bounds = possible(given, kind);
    if (given.lower() == null || bounds.lower() != null) {
      return bounds;
    }
    diagnostics.add(
        Diagnostic.of(
                Code.LIMIT_BELOW_ZERO,
                rule,
                "the lower limit comes to zero or less at "
                    + id
                    + ", so that side is open: no output at all would pass")
            .hint("check the tolerance there, or write 'at most'"));
    return bounds;
  }

  private Limit finished(
      Point point,
      Tree.Accept accept,
      QuantityKind accepted,
      QuantityKind read,
      Special special,
      Bounds exact,
      Bounds computed,
      boolean hasStated) {
    if (exact.lower() == null && exact.upper() == null) {
      diagnostics.add(
          Code.EMPTY_LIMITS,
          accept.span(),
          "both sides are open at " + point.id + ": any reading would pass");
      return null;
    }
    Analyzer.Range range = special == null ? range(read, exact, accept, point) : null;
    if (special == null && range == null) {
      return null;
    }
    Rational resolution = special == null ? range.resolution() : special.resolution;
    Unit unit = special == null ? range.unit() : special.unit;
    Uncertainty uncertainty =
        special == null ? uncertainty(range, accepted, read, point.ohms) : special.uncertainty;
    Limit.Rounded printed = rounded(exact, resolution);
    Limit.Rounded accepting =
        decision.guard().isZero() || uncertainty == null
            ? printed
            : guarded(exact, uncertainty, resolution);
    if (!usable(printed, accepting, accept, point, exact, unit)) {
      return null;
    }
    return new Limit(
        point.id + "/" + read.name(),
        read.name(),
        special == null ? read.printed() : special.title,
        unit,
        resolution,
        exact,
        computed,
        accept.limit() instanceof passband.syntax.LimitExpression.Output
            ? computed
            : ofMode(point, accepted, read),
        printed,
        accepting,
        uncertainty,
        ratio(exact, uncertainty),
        hasStated && statedGoverns(exact, computed) ? Limit.Source.STATED : Limit.Source.RULE,
        range,
        accept);
  }

  private static boolean statedGoverns(Bounds exact, Bounds computed) {
    return !same(exact.lower(), computed.lower()) || !same(exact.upper(), computed.upper());
  }

  private static boolean same(Real a, Real b) {
    return a == null ? b == null : b != null && a.compareTo(b) == 0;
  }

  // ---- the analyzer ----

  private Analyzer.Range range(QuantityKind read, Bounds exact, Tree.Accept accept, Point point) {
    Analyzer.Measure measure = analyzer.measure(read.name());
    if (measure == null) {
      sayNotMeasured(read, accept);
      return null;
    }
    Real low = least(exact);
    Real high = greatest(exact);
    for (Analyzer.Range range : measure.ranges()) {
      if (Real.of(range.from()).compareTo(low) <= 0 && high.compareTo(Real.of(range.to())) <= 0) {
        return range;
      }
    }
    sayOutOfRange(measure, low, high, accept, point);
    return null;
  }

  private static Real least(Bounds bounds) {
    Real low = bounds.lower() == null ? bounds.upper() : bounds.lower();
    return bounds.nominal() == null ? low : low.min(bounds.nominal());
  }

  private static Real greatest(Bounds bounds) {
    Real high = bounds.upper() == null ? bounds.lower() : bounds.upper();
    return bounds.nominal() == null ? high : high.max(bounds.nominal());
  }

  private void sayNotMeasured(QuantityKind read, Tree.Accept accept) {
    Span where = accept.readAs() != null ? accept.readAs().span() : accept.quantity().span();
    Diagnostic diagnostic =
        Diagnostic.of(
            Code.NOT_MEASURED,
            where,
            "the analyzer '" + analyzer.name().text() + "' does not measure " + read.name());
    String can =
        String.join(", ", Seq.of(analyzer.measures()).map(m -> m.quantity().name()).toList());
    boolean through =
        accept.readAs() == null
            && Seq.of(analyzer.measures())
                .anyMatch(m -> Conversion.exists(read.name(), m.quantity().name()));
    diagnostics.add(
        diagnostic.hint(through ? "add ', read as …'; it measures " + can : "it measures " + can));
  }

  private void sayOutOfRange(
      Analyzer.Measure measure, Real low, Real high, Tree.Accept accept, Point point) {
    Unit unit = measure.ranges().get(0).unit();
    diagnostics.add(
        Diagnostic.of(
                Code.OUT_OF_RANGE,
                point.span,
                "no range of '"
                    + analyzer.name().text()
                    + "' for "
                    + measure.quantity().name()
                    + " covers "
                    + text(low, unit)
                    + " to "
                    + text(high, unit))
            .note(accept.span(), "the limits come from this rule")
            .note(measure.span(), "its ranges are here"));
  }

  private static String text(Real value, Unit unit) {
    String digits =
        value
            .over(Real.of(unit.factor()))
            .toDecimal(4, RoundingMode.HALF_EVEN)
            .stripTrailingZeros()
            .toPlainString();
    return unit.symbol().isEmpty() ? digits : digits + " " + unit.printed();
  }

  /** Of neighbours in a table the uncertainty is most often the same: the last one is kept. */
  private Uncertainty uncertainty(
      Analyzer.Range range, QuantityKind accepted, QuantityKind read, Rational ohms) {
    Rational through = accepted.name().equals(read.name()) ? null : ohms;
    if (range != lastRange || accepted != lastFrom || !Objects.equals(through, lastThrough)) {
      lastRange = range;
      lastFrom = accepted;
      lastThrough = through;
      lastUncertainty = made(range, accepted, through);
    }
    return lastUncertainty;
  }

  private Uncertainty made(Analyzer.Range range, QuantityKind accepted, Rational ohms) {
    Rational load = Rational.ZERO;
    if (ohms != null) {
      Analyzer.LoadBank bank = analyzer.load(ohms);
      Accuracy error = bank == null ? Accuracy.NONE : bank.error();
      load =
          error
              .at(Real.of(ohms))
              .rational()
              .over(ohms)
              .times(Conversion.loadSensitivity(accepted.name()));
    }
    return new Uncertainty(range.error(), range.resolution(), load, decision.coverage());
  }

  // ---- the last step ----

  private static Limit.Rounded rounded(Bounds exact, Rational step) {
    return new Limit.Rounded(
        exact.lower() == null ? null : exact.lower().ceilingTo(step),
        exact.upper() == null ? null : exact.upper().floorTo(step));
  }

  private Limit.Rounded guarded(Bounds exact, Uncertainty uncertainty, Rational step) {
    Real times = Real.of(decision.guard());
    Real lower =
        exact.lower() == null
            ? null
            : exact.lower().plus(uncertainty.standard(exact.lower()).times(times));
    Real upper =
        exact.upper() == null
            ? null
            : exact.upper().minus(uncertainty.standard(exact.upper()).times(times));
    return rounded(new Bounds(null, lower, upper), step);
  }

  private boolean usable(
      Limit.Rounded printed,
      Limit.Rounded accepting,
      Tree.Accept accept,
      Point point,
      Bounds exact,
      Unit unit) {
    if (printed.isEmpty()) {
      diagnostics.add(
          Diagnostic.of(
                  Code.EMPTY_LIMITS,
                  accept.span(),
                  "no reading can meet the limits "
                      + text(exact.lower(), unit)
                      + " to "
                      + text(exact.upper(), unit)
                      + " at "
                      + point.id)
              .note(point.span, "the point is here"));
      return false;
    }
    if (accepting.isEmpty()) {
      diagnostics.add(
          Diagnostic.of(
                  Code.NOTHING_ACCEPTED,
                  accept.span(),
                  "the guard band leaves nothing to accept at " + point.id)
              .note(point.span, "the point is here")
              .hint("use a more accurate analyzer, or another decision rule"));
      return false;
    }
    return true;
  }

  /** The least over the ends of |limit − nominal| / U; without a nominal, half the width / U. */
  private static Real ratio(Bounds exact, Uncertainty uncertainty) {
    if (uncertainty == null) {
      return null;
    }
    Real half =
        exact.lower() == null || exact.upper() == null
            ? null
            : exact.upper().minus(exact.lower()).over(Real.of(Rational.TWO));
    Real low = ratioAt(exact.lower(), exact.nominal(), half, uncertainty);
    Real high = ratioAt(exact.upper(), exact.nominal(), half, uncertainty);
    return low == null ? high : high == null ? low : low.min(high);
  }

  private static Real ratioAt(Real limit, Real nominal, Real half, Uncertainty uncertainty) {
    Real distance = limit == null ? null : nominal == null ? half : limit.minus(nominal).abs();
    if (distance == null) {
      return null;
    }
    Real expanded = uncertainty.expanded(limit);
    return expanded.signum() == 0 ? null : distance.over(expanded);
  }
}
