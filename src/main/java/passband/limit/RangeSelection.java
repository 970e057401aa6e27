package passband.limit;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.model.Reader;
import passband.quantity.Distribution;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.quantity.Unit;
import passband.source.Span;
import passband.syntax.Tree;

/**
 * Selects the instrument's range for what is read between two limits, and with it the uncertainty.
 */
final class RangeSelection {
  private final Reader reader;
  private final Rational coverage;
  private final Diagnostics diagnostics;
  private Analyzer.@Nullable Range lastRange;
  private @Nullable QuantityKind lastFrom;
  private @Nullable Rational lastThrough;
  private Analyzer.@Nullable LoadBank lastBank;
  private @Nullable Uncertainty lastUncertainty;

  /**
   * @param coverage the factor k of the expanded uncertainty
   */
  RangeSelection(Reader reader, Rational coverage, Diagnostics diagnostics) {
    this.reader = reader;
    this.coverage = coverage;
    this.diagnostics = diagnostics;
  }

  /** What is read; null, with the fault said, when no range covers the limits. */
  @Nullable ReadQuantity read(LimitRequest request, Bounds exact) {
    QuantityKind kind = request.read();
    Analyzer.Range range = range(request, exact);
    return range == null
        ? null
        : new ReadQuantity(
            kind,
            kind.printed(),
            range.unit(),
            range.resolution(),
            uncertainty(range, request),
            range,
            reader.role(),
            null);
  }

  /** Whether a quantity is measured on a path of its own, whose resistance is not the load's. */
  boolean hasOwnResistance(QuantityKind kind) {
    Analyzer.Measure measure = reader.measure(kind.name());
    return measure != null && measure.through() != null;
  }

  private Analyzer.@Nullable Range range(LimitRequest request, Bounds exact) {
    Analyzer.Measure measure = reader.measure(request.read().name());
    if (measure == null) {
      sayNotMeasured(request);
      return null;
    }
    Real low = least(exact);
    Real high = greatest(exact);
    for (Analyzer.Range range : measure.ranges()) {
      if (Real.of(range.from()).compareTo(low) <= 0 && high.compareTo(Real.of(range.to())) <= 0) {
        return range;
      }
    }
    sayOutOfRange(measure, low, high, request);
    return null;
  }

  private static Real least(Bounds bounds) {
    Real low = end(bounds.lower(), bounds.upper());
    return bounds.nominal() == null ? low : low.min(bounds.nominal());
  }

  private static Real greatest(Bounds bounds) {
    Real high = end(bounds.upper(), bounds.lower());
    return bounds.nominal() == null ? high : high.max(bounds.nominal());
  }

  private static Real end(@Nullable Real first, @Nullable Real other) {
    return Objects.requireNonNull(first == null ? other : first, "limits with both sides open");
  }

  private void sayNotMeasured(LimitRequest request) {
    Tree.Accept accept = request.accept();
    String read = request.read().name();
    Span where = accept.readAs() != null ? accept.readAs().span() : Rules.quantitySpan(accept);
    List<String> measured = new ArrayList<>();
    List<String> instead = new ArrayList<>();
    for (Analyzer.Measure measure : reader.measures()) {
      String name = measure.quantity().name();
      measured.add(name);
      if (Conversion.exists(request.accepted().name(), name)) {
        instead.add(name);
      }
    }
    DiagnosticBuilder said =
        diagnostics.say(
            Code.NOT_MEASURED,
            where,
            "the %s '%s' does not measure %s",
            reader instanceof Analyzer ? "analyzer" : "device",
            reader.name().text(),
            read);
    said.note(reader.name().span(), "it is declared here");
    for (Analyzer.Measure measure : reader.measures()) {
      if (measure.quantity().dimension().equals(request.read().dimension())) {
        said.note(measure.span(), "it measures %s", measure.quantity().name());
      }
    }
    if (instead.isEmpty() && measured.isEmpty()) {
      said.hint("it measures nothing");
    } else if (instead.isEmpty()) {
      said.hint("it measures %s", String.join(", ", measured));
    } else if (accept.readAs() != null) {
      said.hint("write 'read as %s'", String.join("' or 'read as ", instead));
      instead.forEach(name -> said.fix(Fix.replace(where, name)));
    } else {
      said.hint("add ', read as %s'", String.join("' or ', read as ", instead));
      instead.forEach(name -> said.fix(readAs(accept, name)));
    }
  }

  private static Fix readAs(Tree.Accept accept, String quantity) {
    String added = ", read as " + quantity;
    return Fix.insert("add '" + added + "'", accept.span().atEnd(), added);
  }

  private void sayOutOfRange(Analyzer.Measure measure, Real low, Real high, LimitRequest request) {
    Unit unit = measure.ranges().get(0).unit();
    Analyzer.Range next = measure.ranges().get(measure.ranges().size() - 1);
    for (Analyzer.Range range : measure.ranges()) {
      boolean above = Real.of(range.to()).compareTo(high) >= 0;
      next = above && range.to().compareTo(next.to()) < 0 ? range : next;
    }
    DiagnosticBuilder said =
        diagnostics.say(
            Code.OUT_OF_RANGE,
            request.point().span(),
            "no %s range of '%s' covers %s",
            measure.quantity().name(),
            reader.name().text(),
            low.compareTo(high) == 0
                ? unit.rounded(low)
                : unit.rounded(low) + " to " + unit.rounded(high));
    Tree.QuantityLimit stated = request.fromDevice() ? RuleBounds.nearestLine(request) : null;
    if (stated != null) {
      said.note(stated.span(), "the limits come from here");
    }
    said.note(request.accept().span(), "the limits come from this rule")
        .note(measure.ranges().size() == 1 ? measure.span() : next.span(), "its ranges are here");
  }

  /**
   * Null where an error is unknown. Of neighbours in a table the uncertainty is most often the
   * same: the last one is kept.
   */
  private @Nullable Uncertainty uncertainty(Analyzer.Range range, LimitRequest request) {
    QuantityKind accepted = request.accepted();
    Rational through = request.converts() ? request.point().ohms() : null;
    Uncertainty last = lastUncertainty;
    if (last != null
        && range == lastRange
        && accepted == lastFrom
        && Objects.equals(through, lastThrough)
        && request.point().bank() == lastBank) {
      return last;
    }
    lastRange = range;
    lastFrom = accepted;
    lastThrough = through;
    lastBank = request.point().bank();
    Rational share = loadShare(accepted, through, request.point().bank());
    lastUncertainty =
        range.error() == null || share == null
            ? null
            : new Uncertainty(
                range.error(), range.resolution(), share, spread(request.point().bank()), coverage);
    return lastUncertainty;
  }

  private static Distribution spread(Analyzer.@Nullable LoadBank bank) {
    Accuracy error = bank == null ? null : bank.error();
    return error == null ? Distribution.RECTANGULAR : error.distribution();
  }

  /**
   * The share of itself by which the load's error moves the reading; zero without a load, null
   * where the load's error is unknown.
   */
  private static @Nullable Rational loadShare(
      QuantityKind accepted, @Nullable Rational ohms, Analyzer.@Nullable LoadBank bank) {
    if (ohms == null) {
      return Rational.ZERO;
    }
    Accuracy error = bank == null ? Accuracy.NONE : bank.error();
    return error == null
        ? null
        : error
            .at(Real.of(ohms))
            .rational()
            .over(ohms)
            .times(Conversion.loadSensitivity(accepted.name()));
  }
}
