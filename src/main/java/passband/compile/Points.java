package passband.compile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.limit.Decision;
import passband.limit.Limit;
import passband.limit.LimitMaker;
import passband.limit.LimitRequest;
import passband.limit.PointConditions;
import passband.limit.ReadQuantity;
import passband.limit.Stated;
import passband.limit.Uncertainty;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.model.Device.Outlet;
import passband.model.Instruments;
import passband.model.Reader;
import passband.plan.Act;
import passband.plan.OnTime;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.quantity.Rational;
import passband.resolve.Names;
import passband.source.Span;
import passband.syntax.Derive;
import passband.syntax.Tree;
import passband.syntax.Word;

/** Makes the points of a test on one outlet: identity, steps, times, limits and readings. */
final class Points {
  private final Tree.Test test;
  private final Instruments instruments;
  private final Decision decision;
  private final Names names;
  private final Diagnostics diagnostics;
  private final Steps steps;
  private final Activations activations;
  private final Map<String, LimitMaker> makers = new HashMap<>();

  /** What is accepted of a test, and what is read besides to work something out. */
  record Asked(List<Accepts.Accepted> accepted, List<Accepts.Input> inputs) {}

  /** Where and when a test is done: the outlet, the phase and the setup, each null without. */
  record Place(@Nullable Outlet outlet, @Nullable String phase, @Nullable Setup setup) {
    /** The same where the outlet delivers that the row names, if it names one. */
    Place delivering(RowSpec spec) {
      return spec.driven() == null ? this : new Place(spec.driven(), phase, setup);
    }
  }

  Points(Tree.Test test, Decision decision, Steps steps, Names names, Diagnostics diagnostics) {
    this.test = test;
    this.instruments = steps.instruments();
    this.decision = decision;
    this.names = names;
    this.diagnostics = diagnostics;
    this.steps = steps;
    this.activations = new Activations(steps.device(), steps.instruments(), names, diagnostics);
  }

  /**
   * A point for each combination of the rows; one that is there already is said and left out.
   *
   * @param onTime without a duty
   * @param sweep null when the test has none
   */
  List<Point> of(
      List<RowSpec> specs, Asked asked, OnTime onTime, Stage.@Nullable Swept sweep, Place place) {
    List<Point> points = new ArrayList<>();
    Map<String, Span> seen = new HashMap<>();
    for (RowSpec spec : specs) {
      String id = identity(spec, place).text();
      Span first = seen.putIfAbsent(id, spec.span());
      if (first == null) {
        points.add(point(id, spec, asked, onTime, sweep, place));
      } else {
        diagnostics
            .say(Code.DUPLICATE_POINT, spec.span(), "the point %s is listed twice", id)
            .note(first, "first listed here");
      }
    }
    return points;
  }

  private Point point(
      String id,
      RowSpec spec,
      Asked asked,
      OnTime onTime,
      Stage.@Nullable Swept sweep,
      Place measured) {
    Place place = measured.delivering(spec);
    PointLoads loads = PointLoads.of(spec, instruments, place.outlet, place.setup);
    List<Limit> limits = limits(spec, loads, id, asked.accepted, sweep, measured);
    List<Point.Reading> readings = readings(id, asked.inputs);
    Point.Activation activation = activations.named(spec, place.outlet);
    Act.Activate activate =
        activations.by(
            spec, place.outlet, activation == null ? null : activation.contact(), place.setup);
    Point.Times times = new Point.Times(in(onTime, spec), rest(spec, onTime));
    List<Simultaneous.Partner> also =
        new Simultaneous(instruments, activations, diagnostics).of(id, spec, place, loads, times);
    PointWork work = new PointWork(spec, loads, asked, sweep, place, activate, also);
    return new Point(
        id,
        place.outlet,
        spec.mode(),
        new Point.Settings(
            spec.setting(),
            loads.main(),
            loads.role(),
            loads.termination(),
            activation,
            spec.target(),
            loads.others(),
            extras(spec, activation, place.outlet, also),
            values(spec),
            Simultaneous.points(also)),
        new PointSteps(steps, diagnostics)
            .of(test, work, reads(limits, readings, work), times.rest()),
        times,
        limits,
        readings,
        spec.places(),
        spec.span());
  }

  /** The contact is printed beside the other settings, as one of them. */
  private static Map<String, String> extras(
      RowSpec spec,
      Point.@Nullable Activation activation,
      @Nullable Outlet outlet,
      List<Simultaneous.Partner> also) {
    Map<String, String> extras = new LinkedHashMap<>();
    if (spec.driven() != null) {
      extras.put("delivering", spec.driven().title());
    }
    if (activation != null && activation.contact() != null) {
      extras.put("activation", Activations.printed(activation.contact(), outlet));
    }
    if (!also.isEmpty()) {
      extras.put("simultaneous", Simultaneous.printed(also));
    }
    spec.extras().forEach((name, extra) -> extras.put(name, extra.text()));
    if (spec.repeat() != null) {
      extras.put("repeat", spec.repeat().toPlain());
    }
    return extras;
  }

  private static Map<String, String> values(RowSpec spec) {
    Map<String, String> values = new LinkedHashMap<>();
    spec.values().forEach((name, value) -> values.put(name, value.figure().text()));
    return values;
  }

  private PointId identity(RowSpec spec, Place place) {
    Place at = place.delivering(spec);
    PointLoads loads = PointLoads.of(spec, instruments, at.outlet, at.setup);
    return PointId.of(test.name().text(), spec, loads, place);
  }

  private static OnTime in(OnTime onTime, RowSpec spec) {
    return spec.mode() == null ? OnTime.NONE : onTime.in(spec.mode().duty());
  }

  /** By the duty of the mode that needs the longest; null when none needs any. */
  private static @Nullable Rational rest(RowSpec spec, OnTime onTime) {
    Rational most = in(onTime, spec).rest();
    for (RowSpec also : spec.also()) {
      Rational other = in(onTime, also).rest();
      most = most == null || other == null ? (most == null ? other : most) : most.max(other);
    }
    return most;
  }

  // ---- limits ----

  private List<Limit> limits(
      RowSpec spec,
      PointLoads loads,
      String id,
      List<Accepts.Accepted> accepted,
      Stage.@Nullable Swept sweep,
      Place place) {
    List<Stated> stated = new StatedLimits(accepted, diagnostics).named(spec.stated());
    if (stated == null) {
      return List.of();
    }
    Rational load = loads.main() == null ? null : loads.main().si();
    PointConditions point =
        new PointConditions(
            id,
            new PointConditions.Load(
                load,
                spec.termination(),
                load == null ? null : bank(spec, place, load),
                spec.places().load()),
            spec.values(names),
            isInhibited() ? null : spec.mode(),
            bounds(place.outlet),
            stated,
            spec.span());
    List<Limit> limits = new ArrayList<>();
    for (Accepts.Accepted one : accepted) {
      if (!compares(one, spec, place)) {
        continue;
      }
      Limit limit =
          maker(one.reader())
              .limit(
                  new LimitRequest(
                      point,
                      one.tree(),
                      one.kind(),
                      one.read(),
                      workedOut(one, sweep, spec, place)));
      if (limit != null) {
        limits.add(limit);
      }
    }
    return limits;
  }

  /** Where a derived value compares points, the column by which they differ has to be there. */
  private boolean compares(Accepts.Accepted one, RowSpec spec, Place place) {
    Tree.Ref over = one.workedOut() == null ? null : over(one.workedOut().kind().name());
    if (over == null) {
      return true;
    }
    if (identity(spec, place).has(over.text())) {
      nameColumn(over, spec);
      return true;
    }
    diagnostics
        .say(
            Code.UNKNOWN_COLUMN,
            over.span(),
            "the points of the test '%s' do not differ by '%s'",
            test.name().text(),
            over.text())
        .hint("name 'outlet' or a column of the table that sets something, or 'repeat'");
    return false;
  }

  /** Where a column is a further setting, its name is one more use of that setting's. */
  private void nameColumn(Tree.Ref over, RowSpec spec) {
    Word last = over.parts().get(over.parts().size() - 1);
    RowSpec.Extra extra = spec.extras().get(over.text());
    names.use(last, extra == null ? null : extra.setting().name());
    if (over.parts().size() > 1) {
      Word owner = over.parts().get(0);
      Instruments.Taken taken = instruments.find(owner.text());
      names.use(owner, taken == null ? null : taken.role());
    }
  }

  /** The column over which a derived value compares points; null for any other value. */
  private Tree.@Nullable Ref over(String quantity) {
    for (Derive derive : test.derives()) {
      if (derive.name().text().equals(quantity)) {
        return derive.over();
      }
    }
    return null;
  }

  /** Then nothing of the mode's output has to come. */
  private boolean isInhibited() {
    return test.output() != null && test.output().text().equals("inhibited");
  }

  private List<Tree.QuantityLimit> bounds(@Nullable Outlet outlet) {
    List<Tree.QuantityLimit> bounds = new ArrayList<>();
    List<Tree.QuantityLimit> all = new ArrayList<>(outlet == null ? List.of() : outlet.limits());
    all.addAll(steps.device().limits());
    for (Tree.QuantityLimit line : all) {
      if (line == steps.device().bound(outlet, line.quantity().text())) {
        bounds.add(line);
      }
    }
    return bounds;
  }

  private LimitMaker maker(Reader reader) {
    return makers.computeIfAbsent(
        reader.role(), role -> new LimitMaker(reader, decision, diagnostics));
  }

  /** A swept load is as uncertain as the load and half a step. */
  private @Nullable ReadQuantity workedOut(
      Accepts.Accepted one, Stage.@Nullable Swept sweep, RowSpec spec, Place place) {
    ReadQuantity own = one.workedOut();
    Tree.Ref over = own == null ? null : over(own.kind().name());
    if (own != null && over != null) {
      String group = identity(spec, place).starred(over.text());
      return own.over(new ReadQuantity.Over(over.text(), group, "", Map.of(), List.of()));
    }
    if (own == null || sweep == null) {
      return own;
    }
    if (!own.kind().name().equals(sweep.as()) || !sweep.what().equals("load")) {
      return own;
    }
    Analyzer.LoadBank bank = bank(spec, place, sweep.from().si());
    Accuracy error = bank == null ? Accuracy.NONE : bank.error();
    return error == null
        ? own
        : own.with(new Uncertainty(error, own.resolution(), Rational.ZERO, decision.coverage()));
  }

  private Analyzer.@Nullable LoadBank bank(RowSpec spec, Place place, Rational ohms) {
    Outlet outlet = place.delivering(spec).outlet;
    return WiredLoads.bank(instruments, place.setup, spec.mode(), outlet, ohms);
  }

  // ---- readings ----

  private List<Point.Reading> readings(String id, List<Accepts.Input> inputs) {
    List<Point.Reading> readings = new ArrayList<>();
    inputs.forEach(one -> readings.add(reading(id, one)));
    return readings;
  }

  private Point.Reading reading(String id, Accepts.Input input) {
    Analyzer.Measure measure = input.measure();
    Analyzer.Range widest = measure.widest();
    String name = measure.quantity().name();
    return new Point.Reading(
        id + "/" + name,
        name,
        measure.quantity().printed(),
        widest.unit(),
        widest.resolution(),
        widest.error() == null
            ? null
            : new Uncertainty(
                widest.error(), widest.resolution(), Rational.ZERO, decision.coverage()),
        input.reader().role());
  }

  /** What is read, by what shows it; of a sweep, at the instrument that is swept. */
  private List<Act.Read> reads(List<Limit> limits, List<Point.Reading> readings, PointWork work) {
    Map<String, List<String>> names = new LinkedHashMap<>();
    for (Point.Reading reading : readings) {
      names.computeIfAbsent(reading.by(), by -> new ArrayList<>()).add(reading.title());
    }
    for (Limit limit : limits) {
      String by = limit.read().by();
      if (!isDerived(limit.quantity()) && by != null) {
        names.computeIfAbsent(by, role -> new ArrayList<>()).add(limit.title());
      }
    }
    if (work.sweep() != null || names.isEmpty()) {
      String role = work.units(steps.instruments(), null).get(0).role();
      List<String> swept = new ArrayList<>();
      names.values().forEach(swept::addAll);
      limits.forEach(
          limit -> {
            if (!isDerived(limit.quantity()) && limit.read().by() == null) {
              swept.add(limit.title());
            }
          });
      return List.of(new Act.Read(steps.owner(role), swept, work.sweep()));
    }
    List<Act.Read> reads = new ArrayList<>();
    names.forEach((role, what) -> reads.add(new Act.Read(steps.owner(role), what, null)));
    return reads;
  }

  private boolean isDerived(String quantity) {
    for (Derive derive : test.derives()) {
      if (derive.name().text().equals(quantity)) {
        return true;
      }
    }
    return false;
  }
}
