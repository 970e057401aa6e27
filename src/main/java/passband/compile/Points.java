package passband.compile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
import passband.model.Device.Duty;
import passband.model.Device.Outlet;
import passband.model.Termination;
import passband.plan.Act;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.WiredLoads;
import passband.quantity.Rational;
import passband.resolve.Names;
import passband.source.Span;
import passband.syntax.Tree;

/** Makes the points of a test on one outlet: identity, steps, times, limits and readings. */
final class Points {
  private final Tree.Test test;
  private final Analyzer analyzer;
  private final Decision decision;
  private final Names names;
  private final Diagnostics diagnostics;
  private final PointSteps steps;
  private final LimitMaker maker;

  /** Where and when a test is done: the outlet, the phase and the setup, each null without. */
  record Place(@Nullable Outlet outlet, @Nullable String phase, @Nullable Setup setup) {}

  Points(
      Tree.Test test,
      Analyzer analyzer,
      Decision decision,
      Steps steps,
      Names names,
      Diagnostics diagnostics) {
    this.test = test;
    this.analyzer = analyzer;
    this.decision = decision;
    this.names = names;
    this.diagnostics = diagnostics;
    this.steps = new PointSteps(steps, diagnostics);
    this.maker = new LimitMaker(analyzer, decision, diagnostics);
  }

  /**
   * A point for each combination of the rows; one that is there already is said and left out.
   *
   * @param onTime in seconds; null when not given
   * @param sweep null when the test has none
   */
  List<Point> of(
      List<RowSpec> specs,
      List<Accepts.Accepted> accepted,
      @Nullable Rational onTime,
      Stage.@Nullable Swept sweep,
      Place place) {
    List<Point> points = new ArrayList<>();
    Map<String, Span> seen = new HashMap<>();
    for (RowSpec spec : specs) {
      String id = id(spec, place);
      Span first = seen.putIfAbsent(id, spec.span());
      if (first == null) {
        points.add(point(id, spec, accepted, onTime, sweep, place));
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
      List<Accepts.Accepted> accepted,
      @Nullable Rational onTime,
      Stage.@Nullable Swept sweep,
      Place place) {
    List<Limit> limits = limits(spec, id, accepted, sweep, place);
    List<Point.Reading> readings = readings(id, accepted);
    Act.Read read = new Act.Read(readNames(limits, readings), sweep);
    return new Point(
        id,
        place.outlet,
        spec.mode(),
        new Point.Settings(
            spec.setting(), spec.load(), spec.termination(), spec.target(), extras(spec)),
        steps.of(test, spec, setLoad(spec, place), place, read),
        new Point.Times(spec.mode() == null ? null : onTime, rest(spec, onTime)),
        limits,
        readings,
        spec.places(),
        spec.span());
  }

  private static Map<String, String> extras(RowSpec spec) {
    Map<String, String> extras = new LinkedHashMap<>();
    spec.extras().forEach((name, extra) -> extras.put(name, extra.text()));
    return extras;
  }

  private String id(RowSpec spec, Place place) {
    StringBuilder id = new StringBuilder(test.name().text());
    id.append('/').append(place.outlet == null ? "-" : place.outlet.name().text());
    id.append('/').append(spec.mode() == null ? "-" : spec.mode().name().text());
    id.append('/').append(spec.setting() == null ? "-" : spec.setting().id());
    String none = spec.termination() == null ? "-" : spec.termination().word();
    id.append('/').append(spec.load() == null ? none : spec.load().id());
    spec.extras()
        .forEach((name, extra) -> id.append('/').append(name).append('=').append(extra.id()));
    if (place.phase != null) {
      id.append('/').append(place.phase);
    }
    return id.toString();
  }

  /** Open is set only on a load that has such a position: else no load is wired. */
  private Act.@Nullable SetLoad setLoad(RowSpec spec, Place place) {
    if (spec.load() != null) {
      return new Act.SetLoad(spec.load(), null);
    }
    Termination end = spec.termination();
    Analyzer.LoadBank bank =
        end == null ? null : WiredLoads.bank(analyzer, place.setup, spec.mode(), place.outlet, end);
    return bank == null ? null : new Act.SetLoad(null, end);
  }

  /**
   * Rest in proportion to the on-time, by the mode's duty; null when the mode has none or may stay
   * on.
   */
  private static @Nullable Rational rest(RowSpec spec, @Nullable Rational onTime) {
    Duty duty = spec.mode() == null ? null : spec.mode().duty();
    Rational on = duty == null ? null : duty.on();
    Rational off = duty == null ? null : duty.off();
    if (on == null || off == null) {
      return null;
    }
    return onTime == null ? off : off.times(onTime).over(on);
  }

  // ---- limits ----

  private List<Limit> limits(
      RowSpec spec,
      String id,
      List<Accepts.Accepted> accepted,
      Stage.@Nullable Swept sweep,
      Place place) {
    List<Stated> stated = new StatedLimits(accepted, diagnostics).named(spec.stated());
    if (stated == null) {
      return List.of();
    }
    Rational load = spec.load() == null ? null : spec.load().si();
    PointConditions point =
        new PointConditions(
            id,
            new PointConditions.Load(
                load,
                spec.termination(),
                load == null ? null : bank(spec, place, load),
                spec.places().load()),
            spec.values(names),
            spec.mode(),
            stated,
            spec.span());
    List<Limit> limits = new ArrayList<>();
    for (Accepts.Accepted one : accepted) {
      Limit limit =
          maker.limit(
              new LimitRequest(
                  point, one.tree(), one.kind(), one.read(), workedOut(one, sweep, spec, place)));
      if (limit != null) {
        limits.add(limit);
      }
    }
    return limits;
  }

  /** A swept load is as uncertain as the load and half a step. */
  private @Nullable ReadQuantity workedOut(
      Accepts.Accepted one, Stage.@Nullable Swept sweep, RowSpec spec, Place place) {
    ReadQuantity own = one.workedOut();
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
    return WiredLoads.bank(analyzer, place.setup, spec.mode(), place.outlet, ohms);
  }

  // ---- readings ----

  /** What is read only to work something else out. */
  private List<Point.Reading> readings(String id, List<Accepts.Accepted> accepted) {
    Set<String> needed = new LinkedHashSet<>();
    test.derives().forEach(d -> needed.addAll(Accepts.inputs(d.value())));
    accepted.forEach(a -> needed.remove(a.read().name()));
    needed.remove("load");
    List<Point.Reading> readings = new ArrayList<>();
    for (String name : needed) {
      Analyzer.Measure measure = analyzer.measure(name);
      if (measure != null) {
        readings.add(reading(id, measure));
      }
    }
    return readings;
  }

  private Point.Reading reading(String id, Analyzer.Measure measure) {
    Analyzer.Range widest = measure.ranges().get(measure.ranges().size() - 1);
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
                widest.error(), widest.resolution(), Rational.ZERO, decision.coverage()));
  }

  private List<String> readNames(List<Limit> limits, List<Point.Reading> readings) {
    List<String> names = new ArrayList<>();
    readings.forEach(r -> names.add(r.title()));
    for (Limit limit : limits) {
      if (!isDerived(limit.quantity())) {
        names.add(limit.title());
      }
    }
    return names;
  }

  private boolean isDerived(String quantity) {
    for (Tree.Derive derive : test.derives()) {
      if (derive.name().text().equals(quantity)) {
        return true;
      }
    }
    return false;
  }
}
