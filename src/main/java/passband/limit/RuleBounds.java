package passband.limit;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.model.Device;
import passband.quantity.QuantityKind;
import passband.quantity.Real;
import passband.source.Span;
import passband.syntax.LimitExpression;
import passband.syntax.Tree;

/** What a rule, or the mode's profile, allows of the quantity that the rule is about. */
final class RuleBounds {
  private final Diagnostics diagnostics;

  RuleBounds(Diagnostics diagnostics) {
    this.diagnostics = diagnostics;
  }

  /** What the rule allows; null, with the fault said, when it cannot be worked out. */
  @Nullable Bounds of(LimitRequest request) {
    Bounds output =
        request.fromOutput() ? ofMode(request) : request.fromDevice() ? nearest(request) : null;
    LimitExpression limit =
        Objects.requireNonNull(request.accept().limit(), "an acceptance by a rule");
    return rules(request, output, request.accept()).bounds(limit);
  }

  private Rules rules(LimitRequest request, @Nullable Bounds output, Tree.@Nullable Accept accept) {
    QuantityKind accepted = request.accepted();
    RowValues columns = request.point().columns();
    return new Rules(accepted.name(), accepted.dimension(), output, accept, columns, diagnostics);
  }

  /** What the mode's profile says of the quantity; null where it says nothing. */
  private @Nullable Bounds ofMode(LimitRequest request) {
    Device.Mode mode = request.point().mode();
    Tree.QuantityLimit own = mode == null ? null : own(mode, request.accepted().name());
    return own == null ? null : rules(request, null, null).bounds(own.limit());
  }

  /** What the profile's nearest line of the quantity says; null where it has none. */
  private @Nullable Bounds nearest(LimitRequest request) {
    Tree.QuantityLimit line = nearestLine(request);
    return line == null ? null : rules(request, null, null).bounds(line.limit());
  }

  /** The profile's nearest line of the quantity: the mode's, the outlet's, the generator's. */
  static Tree.@Nullable QuantityLimit nearestLine(LimitRequest request) {
    String quantity = request.accepted().name();
    Device.Mode mode = request.point().mode();
    List<Tree.QuantityLimit> lines = new ArrayList<>(mode == null ? List.of() : mode.limits());
    lines.addAll(request.point().bounds());
    for (Tree.QuantityLimit line : lines) {
      if (line.quantity().text().equals(quantity)) {
        return line;
      }
    }
    return null;
  }

  private static Tree.@Nullable QuantityLimit own(Device.Mode mode, String quantity) {
    if (mode.output() != null && mode.output().quantity().text().equals(quantity)) {
      return mode.output();
    }
    for (Tree.QuantityLimit limit : mode.limits()) {
      if (limit.quantity().text().equals(quantity)) {
        return limit;
      }
    }
    return null;
  }

  /** Whether nothing that is never negative could meet it. */
  static boolean belowZero(Bounds bounds, QuantityKind kind) {
    return kind.nonNegative() && bounds.upper() != null && bounds.upper().signum() < 0;
  }

  /** Of what is never negative: a nominal only where there can be one, a lower side above zero. */
  static Bounds possible(Bounds bounds, QuantityKind kind) {
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

  /**
   * A lower limit at or below zero of what is never negative says nothing: that side is open.
   *
   * @param where what gives the limits
   */
  Bounds nonNegative(Bounds given, QuantityKind kind, Span where, LimitRequest request) {
    Bounds bounds = possible(given, kind);
    if (given.lower() != null && bounds.lower() == null) {
      DiagnosticBuilder said =
          diagnostics.say(
              Code.LIMIT_BELOW_ZERO,
              where,
              "the lower limit at %s is zero or negative: a generator that delivers nothing would pass",
              request.point().id());
      if (request.point().mode() != null && request.point().mode().output() != null) {
        said.note(request.point().mode().output().span(), "the mode's tolerance is here");
      }
      said.hint("check the tolerance there, or write 'at most'");
    }
    return bounds;
  }
}
