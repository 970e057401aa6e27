package passband.compile;

import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device.Mode;
import passband.plan.Figure;
import passband.quantity.Dimension;
import passband.quantity.QuantityKind;

/** Holds the setting of a row against what its mode is set in. */
final class ModeSetting {
  private final Diagnostics diagnostics;

  ModeSetting(Diagnostics diagnostics) {
    this.diagnostics = diagnostics;
  }

  /**
   * The row with its setting in the mode's unit; null, with the fault said, when it does not fit.
   */
  @Nullable RowSpec fitted(RowSpec row) {
    Mode mode = row.mode();
    if (mode == null) {
      return row;
    }
    Figure setting = row.setting();
    if (!fits(row, mode, setting)) {
      return null;
    }
    if (setting == null || mode.setting() == null) {
      return row;
    }
    Figure inUnit = new Figure(setting.si(), mode.setting().unit());
    return row.withSetting(inUnit, row.places().setting());
  }

  private boolean fits(RowSpec row, Mode mode, @Nullable Figure setting) {
    QuantityKind kind = mode.settingKind();
    if (kind == null) {
      boolean atFault = mode.tree().settingQuantity() != null;
      return !atFault && hasNone(row, mode, setting);
    }
    if (setting == null) {
      diagnostics.say(
          Code.MISSING_COLUMN,
          row.span(),
          "the mode '%s' needs a setting, but the table has no 'setting' column",
          name(mode));
      return false;
    }
    return isOf(kind.dimension(), setting, row, mode);
  }

  private boolean hasNone(RowSpec row, Mode mode, @Nullable Figure setting) {
    if (setting != null) {
      diagnostics
          .say(Code.WRONG_KIND, row.span(), "the mode '%s' has no setting", name(mode))
          .note(mode.name().span(), "it is declared here");
    }
    return setting == null;
  }

  private boolean isOf(Dimension wanted, Figure setting, RowSpec row, Mode mode) {
    Dimension found = setting.unit().dimension();
    if (found.equals(wanted)) {
      return true;
    }
    diagnostics
        .say(
            found.isNone() ? Code.MISSING_UNIT : Code.UNIT_MISMATCH,
            row.span(),
            "the setting of '%s' is %s%s",
            name(mode),
            wanted.describe(),
            found.isNone() ? ", but this has no unit" : ", but this is " + found.describe())
        .note(mode.name().span(), "the mode is declared here");
    return false;
  }

  private static String name(Mode mode) {
    return mode.name().text();
  }
}
