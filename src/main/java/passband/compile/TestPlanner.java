package passband.compile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.limit.Decision;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.Device.Outlet;
import passband.model.Device.State;
import passband.model.Instruments;
import passband.plan.Delivery;
import passband.plan.Figure;
import passband.plan.Formula;
import passband.plan.OnTime;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Slot;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.resolve.Names;
import passband.resolve.Scope;
import passband.resolve.Values;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Derive;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * Plans one test: what holds on every outlet is worked out once, then a run is made for each outlet
 * and phase.
 */
final class TestPlanner {
  private final Tree.Test test;
  private final Device device;
  private final Instruments instruments;
  private final Decision decision;
  private final Setups setups;
  private final Steps steps;
  private final Names names;
  private final Diagnostics diagnostics;
  private final Values values;
  private final Accepts accepts;
  private final List<Outlet> outlets = new ArrayList<>();
  private final List<RowSpec> specs = new ArrayList<>();
  private List<Accepts.Accepted> accepted = List.of();
  private List<Accepts.Input> inputs = List.of();
  private @Nullable State state;
  private OnTime onTime = OnTime.NONE;
  private Stage.@Nullable Swept sweep;
  private boolean hasSetup;
  private boolean sound = true;

  TestPlanner(
      Tree.Test test,
      Device device,
      Instruments instruments,
      Decision decision,
      Setups setups,
      Steps steps,
      Scope scope,
      Diagnostics diagnostics) {
    this.test = test;
    this.device = device;
    this.instruments = instruments;
    this.decision = decision;
    this.setups = setups;
    this.steps = steps;
    this.names = scope.names();
    this.diagnostics = diagnostics;
    this.values = new Values(diagnostics);
    this.accepts = new Accepts(device, instruments, scope, diagnostics);
  }

  // ---- what holds on every outlet ----

  /** Resolves the test; faults are said, and leave out what they concern. */
  void resolve(Planner.TableFiles tables) {
    diagnostics.sharing(test.conditions().shared(), test.name().span());
    test.outlets().forEach(this::addOutlet);
    sound = test.outlets().isEmpty() || !outlets.isEmpty();
    hasSetup = test.setup() != null && setups.exists(test.setup());
    state = test.inside() == null ? null : state(test.inside());
    addSpecs(tables);
    RowSpec first = specs.isEmpty() ? RowSpec.empty(test.span()) : specs.get(0);
    accepted = accepts.of(test, first.sample().values(names));
    inputs = accepts.inputs(test, accepted);
    OnTimes onTimes = new OnTimes(test, instruments, readers(), diagnostics);
    onTime = onTimes.onTime();
    if (accepted.isEmpty() && test.accepts().isEmpty()) {
      diagnostics
          .say(
              Code.MISSING_ITEM,
              test.name().span(),
              "the test '%s' has no 'accept' line",
              test.name().text())
          .hint("add 'accept …'");
    }
    sweep = test.sweep() == null ? null : sweep(test.sweep());
    onTimes.require(delivery());
    eachOnce();
  }

  /** Two blocks of one kind: the second may have been meant for another time. */
  private void eachOnce() {
    Map<String, Tree.Steps> seen = new HashMap<>();
    for (Tree.Steps block : test.steps()) {
      String kind =
          block.when().name().toLowerCase(Locale.ROOT)
              + (block.replacing() == null ? "" : " replacing " + block.replacing().text());
      Tree.Steps first = seen.putIfAbsent(kind, block);
      if (first != null) {
        diagnostics
            .say(Code.REPEATED_ITEM, block.span(), "the test has a block '%s' already", kind)
            .note(first.span(), "the first is here");
      }
    }
  }

  /** The instruments that show something here. */
  private List<Analyzer> readers() {
    List<Analyzer> readers = new ArrayList<>();
    for (Analyzer unit : instruments.units()) {
      if (accepts.reads(unit, accepted, inputs)) {
        readers.add(unit);
      }
    }
    return readers;
  }

  private void addOutlet(Word name) {
    Outlet outlet = device.outlet(name.text());
    if (outlet == null) {
      List<Word> declared = device.outlets().stream().map(Outlet::name).toList();
      Scope.unknownAmong(diagnostics, name, "outlet", "", declared);
    } else if (outlets.contains(outlet)) {
      diagnostics.say(Code.DUPLICATE_NAME, name.span(), "outlet '%s' is listed twice", name.text());
    } else {
      names.use(name, outlet.name());
      outlets.add(outlet);
    }
  }

  private @Nullable State state(Tree.Ref ref) {
    Word name = ref.parts().get(ref.parts().size() - 1);
    boolean form =
        ref.parts().size() == 1
            || (ref.parts().size() == 2 && ref.parts().get(0).text().equals("device"));
    State found = form ? device.state(name.text()) : null;
    if (found == null) {
      List<Word> declared = device.states().stream().map(State::name).toList();
      Scope.unknownAmong(diagnostics, name, "state", "", declared);
    } else {
      names.use(name, found.name());
    }
    return found;
  }

  private Stage.@Nullable Swept sweep(Tree.Sweep tree) {
    Unit unit = Units.find(tree.step().unit() == null ? "" : tree.step().unit().text());
    Rational from = quiet(tree.from());
    Rational to = quiet(tree.to());
    Rational step = quiet(tree.step());
    if (unit == null || from == null || to == null || step == null) {
      return null;
    }
    return new Stage.Swept(
        tree.what().text(),
        tree.up(),
        new Figure(from, unit),
        new Figure(to, unit),
        new Figure(step, unit),
        tree.until().text(),
        tree.as().text());
  }

  /** A value whose faults are said elsewhere. */
  private static @Nullable Rational quiet(passband.syntax.Amount amount) {
    return new Values(new Diagnostics()).si(amount);
  }

  private void addSpecs(Planner.TableFiles tables) {
    Tree.Table table = test.table();
    if (table == null) {
      if (off() && test.sweep() == null) {
        specs.add(RowSpec.empty(test.name().span()));
      } else if (test.sweep() == null && !test.accepts().isEmpty()) {
        diagnostics.say(
            Code.MISSING_ITEM,
            test.name().span(),
            "the test '%s' has no table",
            test.name().text());
      } else if (test.sweep() != null) {
        specs.add(RowSpec.empty(test.sweep().span()));
      }
      checkOutput(null);
      return;
    }
    Tree.Table whole = table.file() == null ? table : tables.read(table);
    if (whole == null) {
      sound = false;
      return;
    }
    List<Tree.Row> rows = whole.rows();
    if (!rows.isEmpty()) {
      diagnostics.table(rows.get(0).span().to(rows.get(rows.size() - 1).span()));
    }
    checkOutput(whole);
    Columns heading =
        new Columns(
            device,
            instruments,
            Accepts.workedOut(test),
            accepts.inLimits(test),
            test.conditions().columns(),
            names,
            diagnostics);
    specs.addAll(new Rows(heading, diagnostics).of(whole));
  }

  private boolean off() {
    return test.output() != null && test.output().text().equals("off");
  }

  /** What a test delivers is said, never guessed from a missing column. */
  private void checkOutput(Tree.@Nullable Table table) {
    boolean mode = table != null && hasMode(table);
    Tree.Column setting = table == null || mode ? null : column(table, "setting");
    if (setting != null) {
      diagnostics
          .say(
              Code.MISSING_COLUMN,
              setting.span(),
              "a setting is given, but nothing says of which mode")
          .hint("add a 'mode' column, or remove this one");
    }
    if (test.output() != null) {
      checkOutput(test.output(), mode);
    } else if (!mode && (table != null || test.sweep() != null)) {
      DiagnosticBuilder said =
          diagnostics
              .say(
                  Code.MISSING_ITEM,
                  test.name().span(),
                  "the test '%s' does not say whether it delivers output",
                  test.name().text())
              .note(table == null ? test.span() : heading(table), "without a 'mode' column")
              .hint("add a 'mode' column, or 'output off' if output is never on");
      if (!test.conditions().inRow()) {
        said.fix(outputOff());
      }
    }
  }

  /** What an {@code output} line says agrees with the columns. */
  private void checkOutput(Word output, boolean mode) {
    if (off() && mode) {
      diagnostics
          .say(Code.WRONG_KIND, output.span(), "output is off, but the table has a 'mode' column")
          .note(test.name().span(), "in the test '%s'", test.name().text())
          .hint("remove the column, or this line")
          .fix(Fix.removeLines("remove the line", output.span()));
    } else if (off()) {
      requireNoOutput();
    } else if (!mode) {
      diagnostics
          .say(
              Code.MISSING_COLUMN,
              output.span(),
              "output that is inhibited is activated in a mode, but the test has no 'mode' column")
          .hint("add a 'mode' column, or write 'output off'")
          .fix(Fix.replace(output.span(), "output off"));
    }
  }

  /**
   * High-frequency leakage is there only while output is: without it every generator passes (IEC
   * 60601-2-2 measures it with the generator activated; from memory).
   */
  private void requireNoOutput() {
    for (Tree.Accept accept : test.accepts()) {
      Word quantity = accept.quantity();
      if (quantity != null && quantity.text().equals("hf-leakage")) {
        diagnostics
            .say(
                Code.WRONG_KIND,
                quantity.span(),
                "output is never on in this test, and without it there is no %s",
                quantity.text())
            .note(test.output() == null ? test.span() : test.output().span(), "it is off here")
            .hint("add a 'mode' column and remove 'output off'");
      }
    }
  }

  private Fix outputOff() {
    Span head = test.span();
    SourceFile source = head.file();
    int at = source.lineStart(Math.min(test.name().span().line() + 1, source.lineCount()));
    String indent = " ".repeat(head.column() + 1);
    return Fix.insert("add 'output off'", new Span(source, at, at), indent + "output off\n");
  }

  private static boolean hasMode(Tree.Table table) {
    return column(table, "mode") != null;
  }

  private static Tree.@Nullable Column column(Tree.Table table, String name) {
    for (Tree.Column column : table.columns()) {
      if (!column.stated() && column.name() != null && column.name().text().equals(name)) {
        return column;
      }
    }
    return null;
  }

  private static Span heading(Tree.Table table) {
    List<Tree.Column> columns = table.columns();
    return columns.isEmpty()
        ? table.span()
        : columns.get(0).span().to(columns.get(columns.size() - 1).span());
  }

  private Delivery delivery() {
    for (RowSpec spec : specs) {
      if (spec.mode() != null) {
        return test.output() == null ? Delivery.ON : Delivery.INHIBITED;
      }
    }
    return Delivery.OFF;
  }

  Word name() {
    return test.name();
  }

  Tree.Test tree() {
    return test;
  }

  /** The outlets; one null for a test without. */
  List<Outlet> outlets() {
    return outlets.isEmpty() ? java.util.Collections.singletonList(null) : outlets;
  }

  /** The state that it is done in; null when there is none, or no such state. */
  @Nullable State state() {
    return state;
  }

  /** How many points each run has. */
  int points() {
    return specs.size();
  }

  // ---- one run ----

  /** The test on one outlet in one phase; null when faults leave nothing to plan. */
  Stage.@Nullable Run run(@Nullable Outlet outlet, Stage.When when) {
    if (!sound) {
      return null;
    }
    diagnostics.sharing(test.conditions().shared(), test.name().span());
    Setup setup = hasSetup && test.setup() != null ? setups.on(test.setup(), outlet) : null;
    Map<String, Placeholders.Value> values =
        outlet == null
            ? Map.of()
            : Map.of("outlet", Placeholders.Value.given(Slot.OUTLET, outlet.title()));
    TextPlace place = new TextPlace(test, false, values);
    List<Point> points =
        new Points(test, decision, steps, names, diagnostics)
            .of(
                specs,
                new Points.Asked(accepted, inputs),
                onTime,
                sweep,
                new Points.Place(outlet, when.phase(), setup));
    return new Stage.Run(
        test.name(),
        test.title() == null ? test.name().text() : test.title().text(),
        test.renamedFrom() == null ? null : test.renamedFrom().text(),
        when,
        outlet,
        new Stage.Wiring(setup, List.of()),
        state,
        new Stage.Course(
            delivery(),
            steps.of(Steps.when(test, Tree.Steps.When.BEFORE), place),
            points,
            steps.of(Steps.when(test, Tree.Steps.When.AFTER), place)),
        derives(),
        sweep,
        test);
  }

  private List<Stage.Derived> derives() {
    List<Stage.Derived> derives = new ArrayList<>();
    for (Derive derive : test.derives()) {
      String title = derive.title() == null ? derive.name().text() : derive.title().text();
      String formula = Formula.text(derive.value());
      String over = derive.over() == null ? "" : " over " + derive.over().text();
      derives.add(new Stage.Derived(derive.name().text(), title, formula + over));
    }
    return derives;
  }
}
