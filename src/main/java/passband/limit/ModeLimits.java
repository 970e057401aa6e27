package passband.limit;

import passband.diagnostic.Diagnostics;
import passband.model.Device;
import passband.model.ExtraSetting;
import passband.quantity.Dimension;
import passband.quantity.QuantityKind;
import passband.resolve.Names;
import passband.resolve.Values;
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
    for (Device.Mode mode : device.modes()) {
      boolean settingAtFault = mode.settingKind() == null && mode.tree().settingQuantity() != null;
      if (!settingAtFault) {
        new ModeLimits(device, mode, names, diagnostics).check();
      }
    }
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
      new Rules(kind.name(), kind.dimension(), null, null, sample(), diagnostics)
          .bounds(limit.limit());
    }
  }

  private RowValues sample() {
    NamedValues values = new NamedValues(names);
    if (mode.setting() != null) {
      values.put("setting", Value.of(mode.setting().highest(), mode.setting().dimension()));
    }
    if (mode.loads() != null) {
      values.put("load", Value.of(mode.loads().highest(), Dimension.RESISTANCE));
    }
    for (ExtraSetting extra : device.settings()) {
      if (extra.series() != null) {
        values.put(extra.name(), Value.of(extra.series().highest(), extra.series().dimension()));
      }
    }
    return values;
  }
}
