package passband.limit;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Mode;
import passband.model.Termination;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.syntax.Tree;

/**
 * What a mode's profile says of what is read at a point: its limits of that quantity at any load,
 * and the tolerance of its output, through the load where that is of another quantity. The
 * tolerance of an output holds at the rated load; off it only for a rule that aims at the same
 * value. Faults of the profile's lines are said elsewhere.
 */
final class ModeBounds {
  /**
   * In the quantity that is read, at each end the tightest; null where the profile says nothing.
   *
   * @param rule what the rule allows, in the quantity of the rule
   */
  @Nullable Bounds asRead(LimitRequest request, Bounds rule) {
    Mode mode = request.point().mode();
    Bounds all = null;
    for (Bounds one : mode == null ? List.<Bounds>of() : all(mode, request, rule)) {
      all = all == null ? one : all.tighter(one);
    }
    return all;
  }

  private static List<Bounds> all(Mode mode, LimitRequest request, Bounds rule) {
    List<Bounds> all = new ArrayList<>();
    if (mode.output() != null) {
      add(mode.output(), request, all);
      all.removeIf(output -> !holds(mode, output, request, rule));
    }
    for (Tree.QuantityLimit limit : mode.limits()) {
      if (limit.quantity().text().equals(request.accepted().name())) {
        add(limit, request, all);
      }
    }
    return all;
  }

  private static void add(Tree.QuantityLimit line, LimitRequest request, List<Bounds> all) {
    Bounds bounds = asRead(line, request);
    if (bounds != null) {
      all.add(bounds);
    }
  }

  private static boolean holds(Mode mode, Bounds output, LimitRequest request, Bounds rule) {
    Rational ohms = request.point().ohms();
    Termination end = request.point().load().termination();
    boolean rated =
        end != null
            ? mode.terminations().contains(end)
            : ohms == null || mode.loads() == null || mode.loads().contains(ohms);
    Real aim = request.converted(rule).nominal();
    return rated || (aim != null && output.nominal() != null && aim.equals(output.nominal()));
  }

  /** A line of the profile; null where it is of a quantity that cannot be read so. */
  private static @Nullable Bounds asRead(Tree.QuantityLimit line, LimitRequest request) {
    QuantityKind kind = QuantityKind.find(line.quantity().text());
    String read = request.read().name();
    boolean own = kind != null && kind.name().equals(request.accepted().name());
    boolean through =
        kind != null
            && request.point().ohms() != null
            && (kind.name().equals(read) || Conversion.exists(kind.name(), read));
    if (kind == null || !(own || through)) {
      return null;
    }
    RowValues columns = request.point().columns();
    Bounds bounds =
        new Rules(kind.name(), kind.dimension(), null, null, columns, new Diagnostics())
            .bounds(line.limit());
    return bounds == null || RuleBounds.belowZero(bounds, kind)
        ? null
        : converted(RuleBounds.possible(bounds, kind), kind.name(), request);
  }

  private static Bounds converted(Bounds bounds, String from, LimitRequest request) {
    String read = request.read().name();
    if (from.equals(read)) {
      return bounds;
    }
    Rational ohms = Objects.requireNonNull(request.point().ohms(), "a conversion needs a load");
    return bounds.map(x -> Conversion.convert(x, from, read, ohms));
  }
}
