package passband.limit;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.syntax.LimitExpression;
import passband.syntax.Tree;

/**
 * A limit that is asked for.
 *
 * @param point where
 * @param accept the line that asks for it
 * @param accepted the quantity that the rule is about
 * @param read the quantity that is read; the same where nothing is converted
 * @param workedOut set when the quantity is swept or derived, otherwise null
 */
public record LimitRequest(
    PointConditions point,
    Tree.Accept accept,
    QuantityKind accepted,
    QuantityKind read,
    @Nullable ReadQuantity workedOut) {

  /** Whether the quantity of the rule is read as another one, through the load. */
  boolean converts() {
    return !accepted.name().equals(read.name());
  }

  /** Limits of the quantity of the rule, in the quantity that is read. */
  Bounds converted(Bounds bounds) {
    if (!converts()) {
      return bounds;
    }
    Rational ohms = Objects.requireNonNull(point.ohms(), "a conversion needs a load");
    return bounds.map(x -> Conversion.convert(x, accepted.name(), read.name(), ohms));
  }

  /** Whether the limits are those of the mode's profile. */
  boolean fromOutput() {
    return accept.limit() instanceof LimitExpression.Output;
  }

  /** Whether the limits are those that the profile states nearest. */
  boolean fromDevice() {
    return accept.limit() instanceof LimitExpression.OfDevice;
  }

  /** Whether the limits are those that the row states, and no others. */
  boolean statedOnly() {
    return accept.limit() instanceof LimitExpression.Stated;
  }

  /** The limits that the point states for a quantity; null when it states none. */
  @Nullable Stated stated(QuantityKind kind) {
    for (Stated stated : point.stated()) {
      if (stated.of(kind.name())) {
        return stated;
      }
    }
    return null;
  }

  /** The limits that the point states for the quantity of the rule or for the one that is read. */
  List<Stated> allStated() {
    List<Stated> all = new ArrayList<>(point.stated());
    all.removeIf(stated -> !stated.of(accepted.name()) && !stated.of(read.name()));
    return List.copyOf(all);
  }

  /** Whether the point states limits for the quantity of the rule or for the one that is read. */
  boolean hasStated() {
    return stated(accepted) != null || stated(read) != null;
  }

  /** The limit's identity. */
  String id() {
    ReadQuantity.Over over = workedOut == null ? null : workedOut.over();
    return (over == null ? point.id() : over.group()) + "/" + read.name();
  }
}
