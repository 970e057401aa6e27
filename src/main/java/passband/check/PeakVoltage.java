package passband.check;

import org.jspecify.annotations.Nullable;
import passband.limit.ModeLimits;
import passband.model.Device;
import passband.model.Device.Mode;
import passband.quantity.Real;
import passband.syntax.Tree;

/** The highest peak voltage that a mode's profile gives. */
final class PeakVoltage {
  private PeakVoltage() {}

  /** In volts; null where the profile gives none. */
  static @Nullable Real of(Device device, Mode mode) {
    Real highest = null;
    for (Tree.QuantityLimit limit : mode.limits()) {
      if (limit.quantity().text().equals("peak-voltage")) {
        Real volts = ModeLimits.highest(device, mode, limit);
        highest = volts == null || highest == null ? volts : volts.max(highest);
      }
    }
    return highest;
  }
}
