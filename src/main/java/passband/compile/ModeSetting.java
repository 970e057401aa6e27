package passband.compile;

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
  RowSpec fitted(RowSpec row) {
    Mode mode = row.mode();
    if (mode == null) {
      return row;
    }
    if (!fits(row)) {
      return null;
    }
    if (row.setting() == null || mode.setting() == null) {
      return row;
    }
    Figure inUnit = new Figure(row.setting().si(), mode.setting().unit());
    return row.withSetting(inUnit, row.places().setting());
  }

  private boolean fits(RowSpec row) {
    QuantityKind kind = row.mode().settingKind();
    if (kind == null) {
      boolean atFault = row.mode().tree().settingQuantity() != null;
      return !atFault && hasNone(row);
    }
    return hasOne(row) && isOf(kind.dimension(), row);
  }

  private boolean hasNone(RowSpec row) {
    if (row.setting() != null) {
      diagnostics
          .say(Code.WRONG_KIND, row.span(), "the mode '%s' has no setting", name(row))
          .note(row.mode().name().span(), "it is declared here");
    }
    return row.setting() == null;
  }

  private boolean hasOne(RowSpec row) {
    if (row.setting() == null) {
      diagnostics.say(
          Code.MISSING_COLUMN,
          row.span(),
          "the mode '%s' needs a setting, but the table has no 'setting' column",
          name(row));
    }
    return row.setting() != null;
  }

  private boolean isOf(Dimension wanted, RowSpec row) {
    Dimension found = row.setting().unit().dimension();
    if (found.equals(wanted)) {
      return true;
    }
    diagnostics
        .say(
            found.isNone() ? Code.MISSING_UNIT : Code.UNIT_MISMATCH,
            row.span(),
            "the setting of '%s' is %s%s",
            name(row),
            wanted.describe(),
            found.isNone() ? ", but this has no unit" : ", but this is " + found.describe())
        .note(row.mode().name().span(), "the mode is declared here");
    return false;
  }

  private static String name(RowSpec row) {
    return row.mode().name().text();
  }
}
