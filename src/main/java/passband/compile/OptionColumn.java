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
import passband.syntax.SettingOption;
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
    Word leave = setting.leave() == null ? null : setting.tree().leave();
    return leave == null ? super.blank(row, cell) : at(row, leave.text());
  }

  @Override
  List<RowSpec> with(RowSpec row, CellValue value) {
    List<Word> declared = new ArrayList<>();
    options().forEach(option -> declared.add(option.name()));
    List<String> names = new ArrayList<>();
    declared.forEach(name -> names.add(name.text()));
    if (!(value instanceof CellValue.NameValue cell)) {
      diagnostics.say(
          Code.BAD_CELL, value.span(), "'%s' must be one of %s", name(), String.join(", ", names));
      return List.of();
    }
    String option = cell.name().text();
    if (!names.contains(option)) {
      Scope.unknownAmong(diagnostics, cell.name(), name(), "", declared);
      return List.of();
    }
    this.names.use(cell.name(), declared.get(names.indexOf(option)));
    return at(row, option);
  }

  private List<SettingOption> options() {
    return Objects.requireNonNull(setting.options(), "a setting of amounts has a QuantityColumn");
  }

  /** What is printed is the option's title, what identifies the row its name. */
  private List<RowSpec> at(RowSpec row, String option) {
    for (SettingOption one : options()) {
      if (one.name().text().equals(option)) {
        String printed = one.printed().text();
        return List.of(row.withExtra(new RowSpec.Extra(own, name(), printed, option, null)));
      }
    }
    return List.of();
  }
}
