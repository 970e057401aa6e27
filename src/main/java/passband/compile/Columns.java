package passband.compile;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Spelling;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.ExtraSetting;
import passband.resolve.Names;
import passband.resolve.Values;
import passband.syntax.Tree;
import passband.syntax.Word;

/** Takes the heading of a table for columns. */
final class Columns {
  private final Device device;
  private final Map<String, Word> workedOut;
  private final Names names;
  private final Diagnostics diagnostics;
  private final Values values;
  private final List<ExtraSetting> settings = new ArrayList<>();

  /**
   * @param workedOut the test's swept and derived quantities by name
   */
  Columns(
      Device device,
      Analyzer analyzer,
      Map<String, Word> workedOut,
      Names names,
      Diagnostics diagnostics) {
    this.device = device;
    this.workedOut = workedOut;
    this.names = names;
    this.diagnostics = diagnostics;
    this.values = new Values(diagnostics);
    settings.addAll(device.settings());
    settings.addAll(analyzer.settings());
  }

  /** The columns of a table; null, with the faults said, when any of them cannot be told. */
  @Nullable List<Column> of(Tree.Table table) {
    List<Column> columns = new ArrayList<>();
    boolean sound = true;
    for (Tree.Column tree : table.columns()) {
      Column column = column(tree);
      sound = column != null && distinct(column, columns) && sound;
      if (column != null) {
        columns.add(column);
      }
    }
    return sound ? columns : null;
  }

  private boolean distinct(Column column, List<Column> before) {
    for (Column other : before) {
      if (column.isSame(other)) {
        diagnostics
            .say(
                Code.DUPLICATE_NAME,
                column.tree.span(),
                "the column '%s' is listed twice",
                column.name())
            .note(other.tree.span(), "first listed here");
        return false;
      }
    }
    return true;
  }

  private @Nullable Column column(Tree.Column tree) {
    if (tree.unit() != null && values.unit(tree.unit()) == null) {
      return null;
    }
    if (tree.stated()) {
      names.use(tree.name(), tree.name() == null ? null : workedOut.get(tree.name().text()));
      return new StatedColumn(tree, diagnostics);
    }
    Word name = Objects.requireNonNull(tree.name(), "only a stated column has no name");
    return switch (name.text()) {
      case "mode" -> new ModeColumn(tree, device, names, diagnostics);
      case "setting" -> new SettingColumn(tree, diagnostics);
      case "load" -> new LoadColumn(tree, diagnostics);
      case "target" -> new TargetColumn(tree, diagnostics);
      default -> ofSetting(tree, name);
    };
  }

  private @Nullable Column ofSetting(Tree.Column tree, Word name) {
    for (ExtraSetting setting : settings) {
      if (setting.name().text().equals(name.text())) {
        names.use(name, setting.name());
        return setting.options() == null
            ? new QuantityColumn(tree, setting, diagnostics)
            : new OptionColumn(tree, setting, names, diagnostics);
      }
    }
    sayUnknown(name);
    return null;
  }

  private void sayUnknown(Word name) {
    List<String> known = new ArrayList<>(List.of("mode", "setting", "load", "stated", "target"));
    settings.forEach(s -> known.add(s.name().text()));
    diagnostics
        .say(
            Code.UNKNOWN_COLUMN,
            name.span(),
            "unknown column '%s': neither a built-in column nor a setting of the device or"
                + " analyzer",
            name.text())
        .meant(Spelling.nearest(name.text(), known), "known here: %s", String.join(", ", known));
  }
}
