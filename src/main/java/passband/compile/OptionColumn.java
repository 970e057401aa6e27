package passband.compile;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.ExtraSetting;
import passband.resolve.Names;
import passband.resolve.Scope;
import passband.syntax.CellValue;
import passband.syntax.Tree;
import passband.syntax.Word;

/** A setting of the device or the analyzer that is one of several names. */
final class OptionColumn extends Column {
  private final OwnSetting own;
  private final ExtraSetting setting;
  private final Names names;

  OptionColumn(Tree.Column tree, OwnSetting own, Names names, Diagnostics diagnostics) {
    super(tree, diagnostics);
    this.own = own;
    this.setting = own.setting();
    this.names = names;
  }

  /** At rest, as where there is no such column. */
  @Override
  List<RowSpec> blank(RowSpec row, Tree.Cell cell) {
    Word leave = setting.leave();
    return leave == null
        ? super.blank(row, cell)
        : List.of(row.withExtra(new RowSpec.Extra(own, name(), leave.text(), leave.text(), null)));
  }

  @Override
  List<RowSpec> with(RowSpec row, CellValue value) {
    List<Word> declared =
        Objects.requireNonNull(setting.options(), "a setting of amounts has a QuantityColumn");
    List<String> options = new ArrayList<>();
    declared.forEach(option -> options.add(option.text()));
    if (!(value instanceof CellValue.NameValue cell)) {
      diagnostics.say(
          Code.BAD_CELL,
          value.span(),
          "'%s' must be one of %s",
          name(),
          String.join(", ", options));
      return List.of();
    }
    String option = cell.name().text();
    if (!options.contains(option)) {
      Scope.unknownAmong(diagnostics, cell.name(), name(), "", declared);
      return List.of();
    }
    names.use(cell.name(), declared.get(options.indexOf(option)));
    return List.of(row.withExtra(new RowSpec.Extra(own, name(), option, option, null)));
  }
}
