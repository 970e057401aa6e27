package passband.compile;

import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.ExtraSetting;
import passband.resolve.Scope;
import passband.syntax.Tree;
import passband.syntax.Word;

/** A setting of the device or the analyzer that is one of several names. */
final class OptionColumn extends Column {
  private final ExtraSetting setting;

  OptionColumn(Tree.Column tree, ExtraSetting setting, Diagnostics diagnostics) {
    super(tree, diagnostics);
    this.setting = setting;
  }

  @Override
  List<RowSpec> with(RowSpec row, Tree.Value value) {
    List<String> options = setting.options().stream().map(Word::text).toList();
    if (!(value instanceof Tree.NameValue cell)) {
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
      Scope.unknown(diagnostics, cell.name(), name(), options);
      return List.of();
    }
    return List.of(row.withExtra(new RowSpec.Extra(setting, option, option, null)));
  }
}
