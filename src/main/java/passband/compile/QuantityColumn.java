package passband.compile;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Value;
import passband.model.ExtraSetting;
import passband.model.Series;
import passband.plan.Figure;
import passband.quantity.Rational;
import passband.syntax.Amount;
import passband.syntax.Tree;

/** A setting of the device or the analyzer that is a quantity. */
final class QuantityColumn extends AmountColumn {
  private final OwnSetting own;
  private final ExtraSetting setting;

  QuantityColumn(Tree.Column tree, OwnSetting own, Diagnostics diagnostics) {
    super(tree, diagnostics);
    this.own = own;
    this.setting = own.setting();
  }

  /** At rest, as where there is no such column. */
  @Override
  List<RowSpec> blank(RowSpec row, Tree.Cell cell) {
    Amount leave = setting.tree().leaveAmount();
    if (leave == null) {
      return super.blank(row, cell);
    }
    RowSpec one = with(row, leave);
    return one == null ? List.of() : List.of(one);
  }

  @Override
  @Nullable RowSpec with(RowSpec row, Amount amount) {
    Series series = setting.series();
    if (series == null) {
      return null; // its declaration is at fault
    }
    Rational si = values.si(amount, series.dimension(), "'" + name() + "'");
    if (si == null || !canBeSet(series, si, amount)) {
      return null;
    }
    Figure figure = new Figure(si, series.unit());
    Value value = Value.of(si, series.dimension());
    return row.withExtra(new RowSpec.Extra(own, name(), figure.text(), figure.id(), value));
  }

  private boolean canBeSet(Series series, Rational si, Amount amount) {
    if (series.contains(si)) {
      return true;
    }
    Figure low = new Figure(series.lowest(), series.unit());
    Figure high = new Figure(series.highest(), series.unit());
    diagnostics
        .say(Code.SETTING_OFF_SPAN, amount.span(), "'%s' cannot be set to this", name())
        .note(setting.tree().span(), "it can be set from %s to %s", low.text(), high.text());
    return false;
  }
}
