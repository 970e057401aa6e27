package passband.limit;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device;
import passband.model.ExtraSetting;
import passband.model.Series;
import passband.quantity.Dimension;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.resolve.Names;
import passband.resolve.Values;
import passband.syntax.LimitExpression;
import passband.syntax.Tree;

/**
 * Tries the limits of a device's modes at the top of each setting's span, so that a misspelt
 * quantity or unit is said though no test uses the limit: a peak voltage that nobody understands
 * would be a lead rating that nobody checks.
 */
public final class ModeLimits {
  private final Device device;
  private final Device.Mode mode;
  private final Names names;
  private final Diagnostics diagnostics;

  private ModeLimits(Device device, Device.Mode mode, Names names, Diagnostics diagnostics) {
    this.device = device;
    this.mode = mode;
    this.names = names;
    this.diagnostics = diagnostics;
  }

  /** Says what is wrong with the limits of every mode. */
  public static void check(Device device, Names names, Diagnostics diagnostics) {
    bounds(device.limits(), names, diagnostics);
    device.outlets().forEach(outlet -> bounds(outlet.limits(), names, diagnostics));
    for (Device.Mode mode : device.modes()) {
      boolean settingAtFault = mode.settingKind() == null && mode.tree().settingQuantity() != null;
      if (!settingAtFault) {
        new ModeLimits(device, mode, names, diagnostics).check();
      }
    }
  }

  /** Those of outlets and of the device are figures: no row and no setting is theirs. */
  private static void bounds(List<Tree.QuantityLimit> lines, Names names, Diagnostics diagnostics) {
    Map<String, Tree.QuantityLimit> seen = new HashMap<>();
    for (Tree.QuantityLimit line : lines) {
      Tree.QuantityLimit first = seen.putIfAbsent(line.quantity().text(), line);
      if (first != null && first.span() != line.span()) {
        diagnostics
            .say(
                Code.REPEATED_ITEM,
                line.span(),
                "there is a limit of %s here already",
                line.quantity().text())
            .note(first.span(), "the first is here");
      }
      QuantityKind kind = new Values(diagnostics).quantity(line.quantity());
      if (line.limit() instanceof LimitExpression.Stated) {
        diagnostics.say(
            Code.WRONG_KIND, line.limit().span(), "there is no row here that states a limit");
      } else if (kind != null) {
        new Rules(kind.name(), kind.dimension(), null, null, new NamedValues(names), diagnostics)
            .bounds(line.limit());
      }
    }
  }

  /** What a line of an outlet or a device gives; null where that cannot be told. */
  public static @Nullable Bounds bound(Tree.QuantityLimit line) {
    QuantityKind kind = QuantityKind.find(line.quantity().text());
    Bounds bounds =
        kind == null
            ? null
            : new Rules(
                    kind.name(),
                    kind.dimension(),
                    null,
                    null,
                    new NamedValues(new Names()),
                    new Diagnostics())
                .bounds(line.limit());
    return bounds == null || kind == null ? null : RuleBounds.possible(bounds, kind);
  }

  private void check() {
    if (mode.output() != null) {
      check(mode.output());
    }
    mode.limits().forEach(this::check);
  }

  private void check(Tree.QuantityLimit limit) {
    QuantityKind kind = new Values(diagnostics).quantity(limit.quantity());
    if (kind != null) {
      bounds(limit, kind, true, true);
    }
  }

  /**
   * The greatest upper end that a line of a mode gives at the ends of the mode's setting and of its
   * loads, in SI; null where it gives none.
   */
  public static @Nullable Real highest(Device device, Device.Mode mode, Tree.QuantityLimit line) {
    QuantityKind kind = QuantityKind.find(line.quantity().text());
    ModeLimits limits = new ModeLimits(device, mode, new Names(), new Diagnostics());
    Real highest = null;
    for (boolean setting : new boolean[] {false, true}) {
      for (boolean load : new boolean[] {false, true}) {
        Bounds bounds = kind == null ? null : limits.bounds(line, kind, setting, load);
        Real upper = bounds == null ? null : bounds.upper();
        highest = upper == null || highest == null ? upper : upper.max(highest);
      }
    }
    return highest;
  }

  /**
   * What a line of the mode gives; null, with the fault said, where it cannot be worked out.
   *
   * @param top whether the setting is at the top of its span or at the bottom, likewise {@code
   *     topLoad}
   */
  private @Nullable Bounds bounds(
      Tree.QuantityLimit line, QuantityKind kind, boolean top, boolean topLoad) {
    RowValues values = sample(top, topLoad);
    return new Rules(kind.name(), kind.dimension(), null, null, values, diagnostics)
        .bounds(line.limit());
  }

  private RowValues sample(boolean top, boolean topLoad) {
    NamedValues values = new NamedValues(names);
    if (mode.setting() != null) {
      values.put("setting", Value.of(end(mode.setting(), top), mode.setting().dimension()));
    }
    if (mode.loads() != null) {
      values.put("load", Value.of(end(mode.loads(), topLoad), Dimension.RESISTANCE));
    }
    for (ExtraSetting extra : device.settings()) {
      if (extra.series() != null) {
        values.put(extra.name(), Value.of(extra.series().highest(), extra.series().dimension()));
      }
    }
    return values;
  }

  private static Rational end(Series series, boolean top) {
    return top ? series.highest() : series.lowest();
  }
}
