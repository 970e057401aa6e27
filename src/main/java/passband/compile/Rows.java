package passband.compile;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.limit.Stated;
import passband.limit.Value;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.Device.Mode;
import passband.model.ExtraSetting;
import passband.plan.Figure;
import passband.plan.Point;
import passband.quantity.Dimension;
import passband.quantity.QuantityKind;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.resolve.Scope;
import passband.resolve.Values;
import passband.sequence.Seq;
import passband.source.Span;
import passband.syntax.Amount;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * Expands a test's table into what each combination of a row asks for. Rows with faults are said
 * and left out.
 */
final class Rows {
  /** The most points that one test may expand into. */
  static final int MOST = 100_000;

  private static final Unit OHM = Units.find("ohm");

  private final Device device;
  private final Analyzer analyzer;
  private final Diagnostics diagnostics;
  private final Values values;

  Rows(Device device, Analyzer analyzer, Diagnostics diagnostics) {
    this.device = device;
    this.analyzer = analyzer;
    this.diagnostics = diagnostics;
    this.values = new Values(diagnostics);
  }

  // ---- columns ----

  private enum Kind {
    MODE,
    SETTING,
    LOAD,
    TARGET,
    STATED,
    EXTRA,
    UNKNOWN
  }

  /**
   * A column: what it is, the unit of its bare numbers, the quantity it states, the setting it
   * sets.
   */
  private record Column(
      Kind kind, String name, Word unit, String quantity, ExtraSetting extra, Span span) {}

  private List<Column> columns(Tree.Table table) {
    List<Column> columns = new ArrayList<>();
    for (Tree.Column tree : table.columns()) {
      Column column = column(tree);
      Column twin =
          Seq.of(columns)
              .filter(c -> c.name.equals(column.name) && c.kind == column.kind)
              .findFirst()
              .orElse(null);
      if (twin != null) {
        diagnostics.add(
            Diagnostic.of(
                    Code.DUPLICATE_NAME,
                    column.span,
                    "the column '" + column.name + "' stands twice")
                .note(twin.span, "the first is here"));
      }
      columns.add(
          twin == null
              ? column
              : new Column(Kind.UNKNOWN, column.name, null, null, null, column.span));
    }
    return columns;
  }

  private Column column(Tree.Column tree) {
    if (tree.unit() != null && values.unit(tree.unit()) == null) {
      return new Column(Kind.UNKNOWN, "?", null, null, null, tree.span());
    }
    if (tree.stated()) {
      String quantity = tree.name() == null ? null : tree.name().text();
      return new Column(
          Kind.STATED, "stated " + quantity, tree.unit(), quantity, null, tree.span());
    }
    String name = tree.name().text();
    Kind kind =
        switch (name) {
          case "mode" -> Kind.MODE;
          case "setting" -> Kind.SETTING;
          case "load" -> Kind.LOAD;
          case "target" -> Kind.TARGET;
          default -> Kind.EXTRA;
        };
    if (kind != Kind.EXTRA) {
      return new Column(kind, name, tree.unit(), null, null, tree.span());
    }
    ExtraSetting extra = extra(name);
    if (extra == null) {
      sayUnknownColumn(tree.name());
      return new Column(Kind.UNKNOWN, name, null, null, null, tree.span());
    }
    return new Column(Kind.EXTRA, name, tree.unit(), null, extra, tree.span());
  }

  private ExtraSetting extra(String name) {
    for (List<ExtraSetting> settings : List.of(device.settings(), analyzer.settings())) {
      for (ExtraSetting setting : settings) {
        if (setting.name().text().equals(name)) {
          return setting;
        }
      }
    }
    return null;
  }

  private void sayUnknownColumn(Word name) {
    List<String> known = new ArrayList<>(List.of("mode", "setting", "load", "stated", "target"));
    device.settings().forEach(s -> known.add(s.name().text()));
    analyzer.settings().forEach(s -> known.add(s.name().text()));
    Diagnostic diagnostic =
        Diagnostic.of(
            Code.UNKNOWN_COLUMN,
            name.span(),
            "'" + name.text() + "' is no column and no setting of the device or the analyzer");
    String near = passband.diagnostic.Spelling.nearest(name.text(), known);
    diagnostics.add(
        near == null
            ? diagnostic.hint("columns here are " + String.join(", ", known))
            : diagnostic.replaceBy(near));
  }

  // ---- rows ----

  /** The combinations of every row, in the order written; the leftmost column changes slowest. */
  List<RowSpec> of(Tree.Table table) {
    List<Column> columns = columns(table);
    if (Seq.of(columns).anyMatch(c -> c.kind == Kind.UNKNOWN)) {
      return List.of();
    }
    if (table.rows().isEmpty() && !table.columns().isEmpty()) {
      diagnostics.add(Code.EMPTY_TABLE, table.span(), "this table has no rows");
    }
    List<RowSpec> specs = new ArrayList<>();
    for (Tree.Row row : table.rows()) {
      if (!counted(row, columns)) {
        continue;
      }
      if (size(row).add(BigInteger.valueOf(specs.size())).compareTo(BigInteger.valueOf(MOST)) > 0) {
        diagnostics.add(
            Code.TOO_MANY_POINTS,
            row.span(),
            "with this row the table expands into more than " + MOST + " points");
        return specs;
      }
      expand(
          columns,
          row,
          0,
          new Partial(
              null,
              null,
              null,
              null,
              new TreeMap<>(),
              null,
              new Point.Places(row.span(), row.span(), row.span())),
          specs);
    }
    return specs;
  }

  private boolean counted(Tree.Row row, List<Column> columns) {
    if (row.cells().size() == columns.size()) {
      return true;
    }
    diagnostics.add(
        Diagnostic.of(
                Code.CELL_COUNT,
                row.span(),
                "this row has " + row.cells().size() + " cells, the header has " + columns.size())
            .note(
                columns.get(0).span.to(columns.get(columns.size() - 1).span),
                "the header is here"));
    return false;
  }

  /** How many combinations a row has; an item that is no series counts as one. */
  private BigInteger size(Tree.Row row) {
    BigInteger size = BigInteger.ONE;
    for (Tree.Cell cell : row.cells()) {
      BigInteger items = BigInteger.ZERO;
      for (Tree.Value value : cell.values()) {
        items = items.add(count(value));
      }
      size = size.multiply(items.max(BigInteger.ONE));
    }
    return size;
  }

  private static BigInteger count(Tree.Value value) {
    if (!(value instanceof Tree.NumberValue number) || number.item().step() == null) {
      return BigInteger.ONE;
    }
    Tree.SeriesItem item = number.item();
    Rational from = item.from().number();
    Rational to = item.to().number();
    Rational step = item.step().number();
    if (from == null
        || to == null
        || step == null
        || step.signum() <= 0
        || from.compareTo(to) > 0) {
      return BigInteger.ONE;
    }
    Unit a = item.from().unit() == null ? Unit.ONE : Units.find(item.from().unit().text());
    Unit b = item.step().unit() == null ? a : Units.find(item.step().unit().text());
    Rational scale = a == null || b == null ? Rational.ONE : a.factor().over(b.factor());
    return to.minus(from).times(scale).over(step).floor().add(BigInteger.ONE);
  }

  /** What the columns so far give. */
  private record Partial(
      Mode mode,
      Figure setting,
      Figure load,
      Figure target,
      SortedMap<String, RowSpec.Extra> extras,
      Stated stated,
      Point.Places at) {
    Partial mode(Mode other, Span where) {
      return new Partial(
          other,
          setting,
          load,
          target,
          extras,
          stated,
          new Point.Places(where, at.setting(), at.load()));
    }

    Partial setting(Figure other, Span where) {
      return new Partial(
          mode, other, load, target, extras, stated, new Point.Places(at.mode(), where, at.load()));
    }

    Partial load(Figure other, Span where) {
      return new Partial(
          mode,
          setting,
          other,
          target,
          extras,
          stated,
          new Point.Places(at.mode(), at.setting(), where));
    }

    Partial target(Figure other) {
      return new Partial(mode, setting, load, other, extras, stated, at);
    }

    Partial extras(SortedMap<String, RowSpec.Extra> others) {
      return new Partial(mode, setting, load, target, others, stated, at);
    }

    Partial stated(Stated other) {
      return new Partial(mode, setting, load, target, extras, other, at);
    }
  }

  private void expand(
      List<Column> columns, Tree.Row row, int at, Partial partial, List<RowSpec> specs) {
    if (at == columns.size()) {
      finish(columns, row, partial, specs);
      return;
    }
    Column column = columns.get(at);
    Tree.Cell cell = row.cells().get(at);
    if (cell.values().isEmpty()) {
      if (column.kind == Kind.STATED) {
        expand(columns, row, at + 1, partial, specs);
      } else {
        diagnostics.add(
            Code.BLANK_CELL, cell.span(), "the cell for '" + column.name + "' is blank");
      }
      return;
    }
    if (column.kind == Kind.STATED && cell.values().size() > 1) {
      diagnostics.add(Code.BAD_CELL, cell.span(), "a stated cell holds one pair of limits");
      return;
    }
    for (Tree.Value value : cell.values()) {
      for (Partial next : with(column, value, partial)) {
        expand(columns, row, at + 1, next, specs);
      }
    }
  }

  private List<Partial> with(Column column, Tree.Value value, Partial p) {
    return switch (column.kind) {
      case MODE -> modes(value, p);
      case STATED -> {
        Stated stated = stated(column, value);
        yield stated == null ? List.of() : List.of(p.stated(stated));
      }
      case EXTRA -> extras(column, value, p);
      default -> numbers(column, value, p);
    };
  }

  private List<Partial> modes(Tree.Value value, Partial p) {
    if (!(value instanceof Tree.NameValue name)) {
      diagnostics.add(Code.BAD_CELL, value.span(), "a mode is given by its name");
      return List.of();
    }
    Mode mode = device.mode(name.name().text());
    if (mode == null) {
      Scope.unknown(
          diagnostics,
          name.name(),
          "mode",
          Seq.of(device.modes()).map(m -> m.name().text()).toList());
      return List.of();
    }
    return List.of(p.mode(mode, name.name().span()));
  }

  private List<Partial> numbers(Column column, Tree.Value value, Partial p) {
    List<Partial> next = new ArrayList<>();
    for (Amount amount : amounts(column, value)) {
      Unit unit = values.unitOf(amount);
      Rational si = unit == null ? null : values.si(amount);
      if (si == null) {
        continue;
      }
      Figure figure = new Figure(si, unit);
      next.add(
          switch (column.kind) {
            case SETTING -> p.setting(figure, amount.span());
            case LOAD -> p.load(load(amount), amount.span());
            default -> p.target(figure);
          });
    }
    next.removeIf(partial -> column.kind == Kind.LOAD && partial.load == null);
    return next;
  }

  private Figure load(Amount amount) {
    Rational ohms = values.positive(amount, Dimension.RESISTANCE, "a load");
    return ohms == null ? null : new Figure(ohms, OHM);
  }

  /** The amounts of a value, a series in full, each with its unit. */
  private List<Amount> amounts(Column column, Tree.Value value) {
    if (!(value instanceof Tree.NumberValue number)) {
      diagnostics.add(
          Code.BAD_CELL, value.span(), "the column '" + column.name + "' holds numbers");
      return List.of();
    }
    Tree.SeriesItem item = number.item();
    if (item.to() != null && item.step() == null) {
      diagnostics.add(
          Diagnostic.of(Code.BAD_CELL, value.span(), "a span without a step is no list of values")
              .hint("write 'A to B step S', or list them"));
      return List.of();
    }
    Amount from = inColumn(column, item.from());
    if (from == null || item.to() == null) {
      return from == null ? List.of() : List.of(from);
    }
    return series(item, from, inColumn(column, item.to()), inColumn(column, item.step()));
  }

  private List<Amount> series(Tree.SeriesItem item, Amount from, Amount to, Amount step) {
    Rational first = from.number() == null ? null : values.si(from);
    Dimension dimension = values.unitOf(from) == null ? null : values.unitOf(from).dimension();
    if (first == null || dimension == null || to == null || step == null) {
      return List.of();
    }
    Rational last = values.si(to, dimension, "the end of this series");
    Rational by = values.positive(step, dimension, "a step");
    if (last == null || by == null) {
      return List.of();
    }
    if (last.compareTo(first) < 0) {
      diagnostics.add(Code.REVERSED_RANGE, item.span(), "this series ends before it starts");
      return List.of();
    }
    Rational factor = values.unitOf(from).factor();
    List<Amount> all = new ArrayList<>();
    for (Rational next = first; next.compareTo(last) <= 0; next = next.plus(by)) {
      Rational digits = next.over(factor);
      all.add(new Amount(digits.toPlain(), digits, from.unit(), item.span()));
    }
    return all;
  }

  /**
   * The amount with the column's unit; null, with the fault said, when it has one of its own
   * besides.
   */
  private Amount inColumn(Column column, Amount amount) {
    if (column.unit == null) {
      return amount;
    }
    if (amount.unit() != null) {
      diagnostics.add(
          Diagnostic.of(
                  Code.BAD_CELL,
                  amount.span(),
                  "the column's heading gives the unit "
                      + column.unit.text()
                      + ": its cells are bare numbers")
              .note(column.span, "the heading is here")
              .replaceBy(amount.digits()));
      return null;
    }
    return amount.withUnit(column.unit);
  }

  private Stated stated(Column column, Tree.Value value) {
    if (value instanceof Tree.OpenValue open) {
      Amount amount = inColumn(column, open.amount());
      Stated.End end = amount == null ? null : Stated.end(amount, values);
      return end == null
          ? null
          : new Stated(
              column.quantity,
              open.atMost() ? null : end,
              open.atMost() ? end : null,
              value.span(),
              column.span);
    }
    if (!(value instanceof Tree.NumberValue number)
        || number.item().to() == null
        || number.item().step() != null) {
      diagnostics.add(
          Diagnostic.of(
              Code.BAD_CELL,
              value.span(),
              "a stated cell is 'A to B', 'at most B', 'at least A' or blank"));
      return null;
    }
    Amount low = inColumn(column, number.item().from());
    Amount high = inColumn(column, number.item().to());
    Stated.End lower = low == null ? null : Stated.end(low, values);
    Stated.End upper = high == null ? null : Stated.end(high, values);
    if (lower == null || upper == null) {
      return null;
    }
    if (!lower.unit().dimension().equals(upper.unit().dimension())) {
      diagnostics.add(Code.UNIT_MISMATCH, value.span(), "the two ends are of different dimensions");
      return null;
    }
    if (lower.value().compareTo(upper.value()) >= 0) {
      diagnostics.add(
          Diagnostic.of(
                  Code.REVERSED_RANGE,
                  value.span(),
                  "the stated lower limit is not below the upper one")
              .hint("write the lower limit first"));
      return null;
    }
    return new Stated(column.quantity, lower, upper, value.span(), column.span);
  }

  private List<Partial> extras(Column column, Tree.Value value, Partial p) {
    ExtraSetting setting = column.extra;
    List<RowSpec.Extra> found = new ArrayList<>();
    if (setting.options() != null) {
      found.addAll(option(setting, value));
    } else if (setting.series() != null) {
      for (Amount amount : amounts(column, value)) {
        found.addAll(quantity(setting, amount));
      }
    }
    List<Partial> next = new ArrayList<>();
    for (RowSpec.Extra extra : found) {
      SortedMap<String, RowSpec.Extra> extras = new TreeMap<>(p.extras);
      extras.put(column.name, extra);
      next.add(p.extras(Collections.unmodifiableSortedMap(extras)));
    }
    return next;
  }

  private List<RowSpec.Extra> option(ExtraSetting setting, Tree.Value value) {
    List<String> options = Seq.of(setting.options()).map(Word::text).toList();
    if (!(value instanceof Tree.NameValue name)) {
      diagnostics.add(
          Diagnostic.of(
              Code.BAD_CELL,
              value.span(),
              "'" + setting.name().text() + "' is one of " + String.join(", ", options)));
      return List.of();
    }
    if (!options.contains(name.name().text())) {
      Scope.unknown(diagnostics, name.name(), setting.name().text(), options);
      return List.of();
    }
    return List.of(new RowSpec.Extra(name.name().text(), name.name().text(), null));
  }

  private List<RowSpec.Extra> quantity(ExtraSetting setting, Amount amount) {
    Dimension dimension = setting.series().dimension();
    Rational si = values.si(amount, dimension, "'" + setting.name().text() + "'");
    if (si == null) {
      return List.of();
    }
    if (!setting.series().contains(si)) {
      Figure low = new Figure(setting.series().lowest(), setting.series().unit());
      Figure high = new Figure(setting.series().highest(), setting.series().unit());
      diagnostics.add(
          Diagnostic.of(
                  Code.SETTING_OFF_SPAN,
                  amount.span(),
                  "'" + setting.name().text() + "' cannot be set to this")
              .note(setting.tree().span(), "it goes from " + low.text() + " to " + high.text()));
      return List.of();
    }
    Figure figure = new Figure(si, setting.series().unit());
    return List.of(new RowSpec.Extra(figure.text(), figure.id(), Value.of(si, dimension)));
  }

  // ---- whole rows ----

  private void finish(List<Column> columns, Tree.Row row, Partial p, List<RowSpec> specs) {
    Figure setting = p.setting;
    if (p.mode != null && !settingFits(p, row)) {
      return;
    }
    if (p.mode != null && p.mode.setting() != null && setting != null) {
      setting = new Figure(setting.si(), p.mode.setting().unit());
    }
    specs.add(new RowSpec(p.mode, setting, p.load, p.target, p.extras, p.stated, p.at, row.span()));
  }

  private boolean settingFits(Partial p, Tree.Row row) {
    QuantityKind kind = p.mode.settingKind();
    if (kind == null && p.mode.tree().settingQuantity() != null) {
      return false;
    }
    if (kind == null) {
      if (p.setting != null) {
        diagnostics.add(
            Diagnostic.of(
                    Code.WRONG_KIND,
                    row.span(),
                    "the mode '" + p.mode.name().text() + "' has no setting")
                .note(p.mode.name().span(), "it is declared here"));
      }
      return p.setting == null;
    }
    if (p.setting == null) {
      diagnostics.add(
          Diagnostic.of(
              Code.MISSING_COLUMN,
              row.span(),
              "the mode '"
                  + p.mode.name().text()
                  + "' needs a setting, and the table has no such column"));
      return false;
    }
    if (!p.setting.unit().dimension().equals(kind.dimension())) {
      saySetting(p, row, kind);
      return false;
    }
    return true;
  }

  private void saySetting(Partial p, Tree.Row row, QuantityKind kind) {
    boolean bare = p.setting.unit().dimension().isNone();
    String name = p.mode.name().text();
    diagnostics.add(
        Diagnostic.of(
                bare ? Code.MISSING_UNIT : Code.UNIT_MISMATCH,
                row.span(),
                "the setting of '"
                    + name
                    + "' is "
                    + kind.dimension().describe()
                    + (bare
                        ? ", and this has no unit"
                        : ", but this is " + p.setting.unit().dimension().describe()))
            .note(p.mode.name().span(), "the mode is declared here"));
  }
}
