package passband.compile;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.limit.Decision;
import passband.limit.Limit;
import passband.limit.LimitMaker;
import passband.limit.LimitRequest;
import passband.limit.PointConditions;
import passband.limit.ReadQuantity;
import passband.limit.RowValues;
import passband.limit.Stated;
import passband.limit.Uncertainty;
import passband.limit.Value;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.Device.Duty;
import passband.model.Device.Outlet;
import passband.model.Device.State;
import passband.plan.Figure;
import passband.plan.Formula;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.resolve.Scope;
import passband.resolve.Values;
import passband.sequence.Seq;
import passband.source.Span;
import passband.syntax.Tree;
import passband.syntax.Word;

/**
 * Plans one test: what holds on every outlet is worked out once, then a run is made for each outlet
 * and phase.
 */
final class TestPlanner {
  private static final RowSpec NOTHING =
      new RowSpec(null, null, null, null, new TreeMap<>(), null, null, null);

  private final Tree.Test test;
  private final Device device;
  private final Analyzer analyzer;
  private final Decision decision;
  private final Setups setups;
  private final Steps steps;
  private final Diagnostics diagnostics;
  private final Values values;
  private final Accepts accepts;
  private final List<Outlet> outlets = new ArrayList<>();
  private final List<RowSpec> specs = new ArrayList<>();
  private List<Accepts.Accepted> accepted = List.of();
  private State state;
  private Rational onTime;
  private Stage.Swept sweep;
  private boolean hasSetup;
  private boolean sound = true;

  TestPlanner(
      Tree.Test test,
      Device device,
      Analyzer analyzer,
      Decision decision,
      Setups setups,
      Steps steps,
      Scope scope,
      Diagnostics diagnostics) {
    this.test = test;
    this.device = device;
    this.analyzer = analyzer;
    this.decision = decision;
    this.setups = setups;
    this.steps = steps;
    this.diagnostics = diagnostics;
    this.values = new Values(diagnostics);
    this.accepts = new Accepts(analyzer, scope, diagnostics);
  }

  // ---- what holds on every outlet ----

  /** Resolves the test; faults are said, and leave out what they concern. */
  void resolve(TableSource tables) {
    test.outlets().forEach(this::addOutlet);
    sound = test.outlets().isEmpty() || !outlets.isEmpty();
    hasSetup = test.setup() != null && setups.exists(test.setup());
    state = test.inside() == null ? null : state(test.inside());
    onTime =
        test.onTime() == null
            ? analyzer.settle()
            : values.positive(test.onTime(), Dimension.TIME, "an on-time");
    addSpecs(tables);
    RowSpec first = specs.isEmpty() ? NOTHING : specs.get(0);
    accepted = accepts.of(test, new SpecColumns(first));
    if (accepted.isEmpty() && test.accepts().isEmpty()) {
      diagnostics.add(
          Diagnostic.of(
                  Code.MISSING_ITEM,
                  test.name().span(),
                  "the test '" + test.name().text() + "' accepts nothing")
              .hint("add an 'accept …' line"));
    }
    sweep = test.sweep() == null ? null : sweep(test.sweep());
  }

  private void addOutlet(Word name) {
    Outlet outlet = device.outlet(name.text());
    if (outlet == null) {
      Scope.unknown(
          diagnostics, name, "outlet", Seq.of(device.outlets()).map(o -> o.name().text()).toList());
    } else if (Seq.of(outlets).anyMatch(o -> o == outlet)) {
      diagnostics.add(
          Code.DUPLICATE_NAME, name.span(), "the outlet '" + name.text() + "' stands twice");
    } else {
      outlets.add(outlet);
    }
  }

  private State state(Tree.Ref ref) {
    Word name = ref.parts().get(ref.parts().size() - 1);
    boolean form =
        ref.parts().size() == 1
            || (ref.parts().size() == 2 && ref.parts().get(0).text().equals("device"));
    State found = form ? device.state(name.text()) : null;
    if (found == null) {
      Scope.unknown(
          diagnostics, name, "state", Seq.of(device.states()).map(s -> s.name().text()).toList());
    }
    return found;
  }

  private Stage.Swept sweep(Tree.Sweep tree) {
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
  private static Rational quiet(passband.syntax.Amount amount) {
    return new Values(new Diagnostics()).si(amount);
  }

  private void addSpecs(TableSource tables) {
    Tree.Table table = test.table();
    if (table == null) {
      if (test.sweep() == null && !test.accepts().isEmpty()) {
        diagnostics.add(
            Code.MISSING_ITEM,
            test.name().span(),
            "the test '" + test.name().text() + "' has no table");
      } else if (test.sweep() != null) {
        specs.add(sweptOnly());
      }
      return;
    }
    Tree.Table whole = table.file() == null ? table : tables.read(table);
    if (whole == null) {
      sound = false;
      return;
    }
    specs.addAll(new Rows(device, analyzer, diagnostics).of(whole));
  }

  private RowSpec sweptOnly() {
    Span span = test.sweep().span();
    return new RowSpec(
        null, null, null, null, new TreeMap<>(), null, new Point.Places(span, span, span), span);
  }

  /** Gives the table that a source names by file; null, with the fault said, when it cannot. */
  interface TableSource {
    /** The table of this file. */
    Tree.Table read(Tree.Table named);
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

  // ---- one run ----

  /** The test on one outlet in one phase; null when faults leave nothing to plan. */
  Stage.Run run(Outlet outlet, String phase) {
    if (!sound) {
      return null;
    }
    Setup setup = hasSetup ? setups.on(test.setup(), outlet) : null;
    Map<String, String> place = outlet == null ? Map.of() : Map.of("outlet", outlet.title());
    List<Point> points = points(outlet, phase, setup);
    return new Stage.Run(
        test.name(),
        test.title() == null ? test.name().text() : test.title().text(),
        test.renamedFrom() == null ? null : test.renamedFrom().text(),
        phase,
        outlet,
        setup,
        List.of(),
        state,
        steps.of(Steps.when(test, Tree.Steps.When.BEFORE), place),
        points,
        steps.of(Steps.when(test, Tree.Steps.When.AFTER), place),
        derives(),
        sweep,
        test);
  }

  private List<Stage.Derived> derives() {
    List<Stage.Derived> derives = new ArrayList<>();
    for (Tree.Derive derive : test.derives()) {
      String title = derive.title() == null ? derive.name().text() : derive.title().text();
      derives.add(new Stage.Derived(derive.name().text(), title, Formula.text(derive.value())));
    }
    return derives;
  }

  private List<Point> points(Outlet outlet, String phase, Setup setup) {
    List<Point> points = new ArrayList<>();
    Map<String, Span> seen = new HashMap<>();
    PointSteps pointSteps = new PointSteps(steps, device, diagnostics);
    LimitMaker maker = new LimitMaker(analyzer, decision, diagnostics);
    for (RowSpec spec : specs) {
      String id = id(spec, outlet, phase);
      Span first = seen.putIfAbsent(id, spec.span());
      if (first != null) {
        diagnostics.add(
            Diagnostic.of(Code.DUPLICATE_POINT, spec.span(), "the point " + id + " stands twice")
                .note(first, "the first is here"));
        continue;
      }
      List<Limit> limits = limits(maker, spec, id);
      List<Point.Reading> readings = readings(spec, id);
      String read = readNames(limits, readings);
      points.add(
          new Point(
              id,
              outlet,
              spec.mode(),
              spec.setting(),
              spec.load(),
              spec.target(),
              extras(spec),
              pointSteps.of(test, spec, outlet, setup, sweep, read),
              spec.mode() == null ? null : onTime,
              rest(spec),
              limits,
              readings,
              spec.places(),
              spec.span()));
    }
    return points;
  }

  private static Map<String, String> extras(RowSpec spec) {
    Map<String, String> extras = new LinkedHashMap<>();
    spec.extras().forEach((name, extra) -> extras.put(name, extra.text()));
    return extras;
  }

  private String id(RowSpec spec, Outlet outlet, String phase) {
    StringBuilder id = new StringBuilder(test.name().text());
    id.append('/').append(outlet == null ? "-" : outlet.name().text());
    id.append('/').append(spec.mode() == null ? "-" : spec.mode().name().text());
    id.append('/').append(spec.setting() == null ? "-" : spec.setting().id());
    id.append('/').append(spec.load() == null ? "-" : spec.load().id());
    spec.extras()
        .forEach((name, extra) -> id.append('/').append(name).append('=').append(extra.id()));
    if (phase != null) {
      id.append('/').append(phase);
    }
    return id.toString();
  }

  /**
   * Rest in proportion to the on-time, by the mode's duty; null when the mode has none or may stay
   * on.
   */
  private Rational rest(RowSpec spec) {
    Duty duty = spec.mode() == null ? null : spec.mode().duty();
    if (duty == null || duty.continuous()) {
      return null;
    }
    return onTime == null ? duty.off() : duty.off().times(onTime).over(duty.on());
  }

  private List<Limit> limits(LimitMaker maker, RowSpec spec, String id) {
    Stated stated = accepts.named(spec.stated(), accepted);
    if (spec.stated() != null && stated == null) {
      return List.of();
    }
    PointConditions point =
        new PointConditions(
            id,
            spec.load() == null ? null : spec.load().si(),
            new SpecColumns(spec),
            spec.mode(),
            stated,
            spec.span());
    List<Limit> limits = new ArrayList<>();
    for (Accepts.Accepted one : accepted) {
      Limit limit =
          maker.limit(new LimitRequest(point, one.tree(), one.kind(), one.read(), workedOut(one)));
      if (limit != null) {
        limits.add(limit);
      }
    }
    return limits;
  }

  /** A swept load is as uncertain as the load and half a step. */
  private ReadQuantity workedOut(Accepts.Accepted one) {
    ReadQuantity own = one.workedOut();
    if (own == null
        || sweep == null
        || !own.kind().name().equals(sweep.as())
        || !sweep.what().equals("load")) {
      return own;
    }
    Analyzer.LoadBank bank = analyzer.load(sweep.from().si());
    Accuracy error = bank == null ? Accuracy.NONE : bank.error();
    return own.with(new Uncertainty(error, own.resolution(), Rational.ZERO, decision.coverage()));
  }

  /** What is read only to work something else out. */
  private List<Point.Reading> readings(RowSpec spec, String id) {
    Set<String> needed = new LinkedHashSet<>();
    test.derives().forEach(d -> needed.addAll(Accepts.inputs(d.value())));
    accepted.forEach(a -> needed.remove(a.read().name()));
    needed.remove("load");
    List<Point.Reading> readings = new ArrayList<>();
    for (String name : needed) {
      Analyzer.Measure measure = analyzer.measure(name);
      if (measure != null) {
        Analyzer.Range widest = measure.ranges().get(measure.ranges().size() - 1);
        readings.add(
            new Point.Reading(
                id + "/" + name,
                name,
                measure.quantity().printed(),
                widest.unit(),
                widest.resolution(),
                new Uncertainty(
                    widest.error(), widest.resolution(), Rational.ZERO, decision.coverage())));
      }
    }
    return readings;
  }

  private String readNames(List<Limit> limits, List<Point.Reading> readings) {
    List<String> names = new ArrayList<>();
    readings.forEach(r -> names.add(r.title().toLowerCase(java.util.Locale.ROOT)));
    for (Limit limit : limits) {
      if (Seq.of(test.derives()).noneMatch(d -> d.name().text().equals(limit.quantity()))) {
        names.add(limit.title().toLowerCase(java.util.Locale.ROOT));
      }
    }
    return names.isEmpty() ? "value" : String.join(" and the ", names);
  }

  /** The columns of a row as values. */
  private record SpecColumns(RowSpec spec) implements RowValues {
    @Override
    public Value value(String name) {
      return switch (name) {
        case "setting" -> of(spec.setting());
        case "load" -> of(spec.load());
        case "target" -> of(spec.target());
        default -> spec.extras().containsKey(name) ? spec.extras().get(name).value() : null;
      };
    }

    private static Value of(Figure figure) {
      return figure == null ? null : Value.of(figure.si(), figure.unit().dimension());
    }

    @Override
    public Collection<String> names() {
      List<String> names = new ArrayList<>();
      if (spec.setting() != null) {
        names.add("setting");
      }
      if (spec.load() != null) {
        names.add("load");
      }
      if (spec.target() != null) {
        names.add("target");
      }
      spec.extras()
          .forEach(
              (name, extra) -> {
                if (extra.value() != null) {
                  names.add(name);
                }
              });
      return names;
    }
  }
}
