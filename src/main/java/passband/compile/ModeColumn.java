package passband.compile;

import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Device;
import passband.model.Device.Mode;
import passband.resolve.Names;
import passband.resolve.Scope;
import passband.syntax.CellValue;
import passband.syntax.Tree;
import passband.syntax.Word;

/** {@code mode}: names of the device's modes. */
final class ModeColumn extends Column {
  private final Device device;
  private final Names names;

  ModeColumn(Tree.Column tree, Device device, Names names, Diagnostics diagnostics) {
    super(tree, diagnostics);
    this.device = device;
    this.names = names;
  }

  @Override
  List<RowSpec> with(RowSpec row, CellValue value) {
    if (!(value instanceof CellValue.NameValue cell)) {
      diagnostics.say(Code.BAD_CELL, value.span(), "expected the name of a mode");
      return List.of();
    }
    Word name = cell.name();
    if (UnknownBench.is(device)) {
      return List.of(row);
    }
    Mode mode = device.mode(name.text());
    if (mode == null) {
      List<Word> declared = device.modes().stream().map(Mode::name).toList();
      Scope.unknownAmong(diagnostics, name, "mode", "", declared);
      return List.of();
    }
    names.use(name, mode.name());
    return List.of(row.withMode(mode, name.span()));
  }
}
