package passband.compile;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.diagnostic.Spelling;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.Device.Outlet;
import passband.model.Instruments;
import passband.plan.Owner;
import passband.resolve.Names;
import passband.resolve.Scope;
import passband.resolve.Values;
import passband.syntax.Tree;
import passband.syntax.Word;

/** Takes the heading of a table for columns. */
final class Columns {
  /** The columns of the language. */
  private static final List<String> GIVEN =
      List.of("mode", "setting", "load", "stated", "target", "activation", "repeat");

  private final Device device;
  private final Map<String, Word> workedOut;
  private final Set<String> inLimits;
  private final Names names;
  private final Diagnostics diagnostics;
  private final Values values;
  private final Instruments instruments;
  private final List<OwnSetting> settings = new ArrayList<>();
  private final List<String> ofTest = new ArrayList<>();

  /**
   * @param workedOut the test's swept and derived quantities by name
   * @param inLimits the names that its limits use
   * @param ofTest the words for which a table of several tests has columns; empty for another one
   */
  Columns(
      Device device,
      Instruments instruments,
      Map<String, Word> workedOut,
      Set<String> inLimits,
      List<String> ofTest,
      Names names,
      Diagnostics diagnostics) {
    this.device = device;
    this.workedOut = workedOut;
    this.inLimits = inLimits;
    this.ofTest.addAll(ofTest);
    this.names = names;
    this.diagnostics = diagnostics;
    this.values = new Values(diagnostics);
    this.instruments = instruments;
    device.settings().forEach(s -> settings.add(new OwnSetting(Owner.GENERATOR, s)));
    for (Analyzer unit : instruments.units()) {
      Owner owner = Owners.of(unit, instruments);
      unit.settings().forEach(s -> settings.add(new OwnSetting(owner, s)));
    }
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
    return sound && shareOutput(columns) ? columns : null;
  }

  private boolean distinct(Column column, List<Column> before) {
    for (Column other : before) {
      if (column.isSame(other) || other.isSame(column)) {
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
    if (tree.owner() != null) {
      return owned(tree, tree.owner(), name);
    }
    return switch (name.text()) {
      case "mode" -> new ModeColumn(tree, device, names, diagnostics);
      case "setting" -> new SettingColumn(tree, diagnostics);
      case "load" -> new LoadColumn(tree, null, diagnostics);
      case "target" -> new TargetColumn(tree, diagnostics);
      case "activation" -> new ActivationColumn(tree, diagnostics);
      case "repeat" -> new RepeatColumn(tree, diagnostics);
      default -> ofSetting(tree, name);
    };
  }

  private @Nullable Column ofSetting(Tree.Column tree, Word name) {
    List<OwnSetting> found = new ArrayList<>(settings);
    found.removeIf(one -> !one.setting().name().text().equals(name.text()));
    if (found.size() > 1) {
      sayAmbiguous(name, found);
      return null;
    }
    if (found.isEmpty() && inLimits.contains(name.text())) {
      return new ValueColumn(tree, diagnostics);
    }
    if (found.isEmpty()) {
      return unknown(tree, name);
    }
    return column(tree, name, found.get(0));
  }

  private Column column(Tree.Column tree, Word name, OwnSetting own) {
    names.use(name, own.setting().name());
    return own.setting().options() == null
        ? new QuantityColumn(tree, own, diagnostics)
        : new OptionColumn(tree, own, names, diagnostics);
  }

  private void sayAmbiguous(Word name, List<OwnSetting> found) {
    List<String> instead = new ArrayList<>();
    found.forEach(one -> instead.add(one.owner().role() + "." + name.text()));
    DiagnosticBuilder said =
        diagnostics
            .say(Code.AMBIGUOUS_NAME, name.span(), "several have a setting '%s'", name.text())
            .hint("write %s", String.join(" or ", instead));
    found.forEach(one -> said.note(one.setting().name().span(), "one is here"));
    instead.forEach(one -> said.fix(Fix.replace(name.span(), one)));
  }

  /**
   * A column of the generator, {@code device.NAME}, of an instrument, {@code ROLE.NAME}, or of an
   * outlet, {@code OUTLET.NAME}.
   */
  private @Nullable Column owned(Tree.Column tree, Word owner, Word name) {
    if (UnknownBench.is(device)) {
      return new AnyColumn(tree, diagnostics);
    }
    Instruments.Taken taken = instruments.find(owner.text());
    Outlet outlet = device.outlet(owner.text());
    if (taken == null && outlet != null) {
      names.use(owner, outlet.name());
      return driven(tree, outlet, name);
    }
    if (taken == null && !owner.text().equals(Instruments.DEVICE)) {
      List<String> known = new ArrayList<>(instruments.names());
      known.add(Instruments.DEVICE);
      Scope.unknown(diagnostics, owner, "role", known);
      return null;
    }
    names.use(owner, taken == null ? null : taken.role());
    String role = taken == null ? Instruments.DEVICE : taken.unit().role();
    if (taken != null && name.text().equals("load")) {
      return new LoadColumn(tree, role, diagnostics);
    }
    for (OwnSetting one : settings) {
      if (one.owner().role().equals(role) && one.setting().name().text().equals(name.text())) {
        return column(tree, name, one);
      }
    }
    sayUnknown(name);
    return null;
  }

  /** What an outlet delivers while another one is measured. */
  private @Nullable Column driven(Tree.Column tree, Outlet outlet, Word name) {
    Column own =
        switch (name.text()) {
          case "mode" -> new ModeColumn(tree, device, names, diagnostics);
          case "setting" -> new SettingColumn(tree, diagnostics);
          case "load" -> new LoadColumn(tree, null, diagnostics);
          case "activation" -> new ActivationColumn(tree, diagnostics);
          default -> null;
        };
    if (own == null) {
      diagnostics
          .say(Code.UNKNOWN_COLUMN, name.span(), "an outlet has no column '%s'", name.text())
          .hint("of an outlet that delivers: mode, setting, load, activation");
      return null;
    }
    return new DrivenColumn(tree, own, outlet, diagnostics);
  }

  /**
   * The columns without an outlet, or else those of the first outlet, are of what is delivered;
   * those of another outlet are of what it delivers at the same time. False, with the fault said,
   * where nothing says in which mode.
   */
  private boolean shareOutput(List<Column> columns) {
    Outlet main = null;
    boolean own = false;
    Set<Outlet> moded = new HashSet<>();
    for (Column column : columns) {
      own |= column instanceof ModeColumn;
      if (column instanceof DrivenColumn driven) {
        main = main == null ? driven.outlet() : main;
        if (driven.hasMode()) {
          moded.add(driven.outlet());
        }
      }
    }
    boolean sound = true;
    for (Column column : columns) {
      if (column instanceof DrivenColumn driven && (own || driven.outlet() != main)) {
        driven.isAlso();
        if (moded.add(driven.outlet())) {
          sayNoMode(driven);
          sound = false;
        }
      }
    }
    return sound;
  }

  private void sayNoMode(DrivenColumn driven) {
    String outlet = driven.outlet().name().text();
    diagnostics
        .say(
            Code.MISSING_COLUMN,
            driven.tree.span(),
            "nothing says in which mode '%s' delivers at the same time",
            outlet)
        .hint("add a '%s.mode' column, or remove this one", outlet);
  }

  /** Of an unknown bench any name may be a setting that is no slip for one of the language. */
  private @Nullable Column unknown(Tree.Column tree, Word name) {
    if (UnknownBench.is(device) && Spelling.nearest(name.text(), GIVEN) == null) {
      return new AnyColumn(tree, diagnostics);
    }
    sayUnknown(name);
    return null;
  }

  private void sayUnknown(Word name) {
    List<String> known = new ArrayList<>(GIVEN);
    known.addAll(ofTest);
    known.addAll(inLimits);
    settings.forEach(s -> known.add(s.setting().name().text()));
    String near = Spelling.nearest(name.text(), known);
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.UNKNOWN_COLUMN,
                name.span(),
                "unknown column '%s': neither a built-in column nor a setting of the device or"
                    + " analyzer, nor a value that a limit uses",
                name.text())
            .meant(near, "known here: %s", String.join(", ", known));
    for (OwnSetting one : settings) {
      if (near != null && one.setting().name().text().equals(near)) {
        said.note(one.setting().name().span(), "'%s' is declared here", near);
      }
    }
  }
}
