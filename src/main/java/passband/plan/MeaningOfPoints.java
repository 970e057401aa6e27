package passband.plan;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.limit.Stated;
import passband.model.Instruments;
import passband.plan.Fact.Area;
import passband.quantity.Rational;
import passband.source.Span;

/** What is done and read at each point. */
final class MeaningOfPoints {
  private static final Act STOP = new Act.Run(PlanStep.Kind.STOP, Owner.GENERATOR);

  private final FactList facts;
  private final Naming naming;
  private final MeaningOfSteps steps;

  MeaningOfPoints(FactList facts, Naming naming) {
    this.facts = facts;
    this.naming = naming;
    this.steps = new MeaningOfSteps(naming);
  }

  void add(Point point) {
    String id = naming.point(point.id());
    facts.add(Fact.of(Area.POINT, "point/" + id, id, canonical(point), shown(point), point.span()));
    part(
        id,
        Fact.of(
            Area.DUTY,
            "times/" + id,
            id + ", on and rest",
            Canonical.of(point.onTime(), point.rest()),
            FactText.seconds(point.onTime()) + " on, " + FactText.seconds(point.rest()) + " rest",
            point.span()));
    steps(point, id);
    List<String> boxes = new ArrayList<>();
    for (Point.Reading reading : point.readings()) {
      boxes.add(naming.point(reading.id()));
      part(id, reading(reading, point.span()));
    }
    for (Limit limit : point.limits()) {
      boxes.add(naming.point(limit.id()));
      part(id, limit(limit, point));
    }
    part(
        id,
        Fact.order(Area.ORDER, "boxes/" + id, id + ", order of the readings", boxes, point.span()));
  }

  private void part(String id, Fact fact) {
    facts.add(fact.partOf("point/" + id));
  }

  // ---- what it is ----

  private String canonical(Point point) {
    List<String> extras = new ArrayList<>();
    point.extras().forEach((name, text) -> extras.add(Canonical.of(name, text)));
    List<String> values = new ArrayList<>();
    point.values().forEach((name, text) -> values.add(Canonical.of(name, text)));
    return Canonical.of(
        point.outlet() == null ? null : naming.outlet(point.outlet().name().text()),
        point.mode() == null ? null : naming.mode(point.mode().name().text()),
        printed(point.setting()),
        load(point),
        point.target() == null ? null : point.target().si(),
        extras,
        values);
  }

  private static @Nullable String load(Point point) {
    String load = printed(point.load());
    return point.termination() == null ? load : Canonical.of(load, point.termination().word());
  }

  /** A figure that the sheet prints: with its unit. */
  private static @Nullable String printed(@Nullable Figure figure) {
    return figure == null ? null : Canonical.of(figure.si(), figure.unit());
  }

  private String shown(Point point) {
    List<String> parts = new ArrayList<>();
    parts.add(point.outlet() == null ? "-" : naming.outlet(point.outlet().name().text()));
    parts.add(point.mode() == null ? "-" : naming.mode(point.mode().name().text()));
    parts.add(point.setting() == null ? "-" : point.setting().text());
    parts.add(point.load() == null ? "-" : point.load().text());
    if (point.termination() != null) {
      parts.add(point.termination().word());
    }
    point.extras().forEach((name, text) -> parts.add(name + " " + text));
    point.values().forEach((name, text) -> parts.add(name + " " + text));
    if (point.target() != null) {
      parts.add("target " + point.target().text());
    }
    return String.join(", ", parts);
  }

  // ---- steps ----

  /** What stops the output is a fact of its own; the other steps tell only where it comes. */
  private void steps(Point point, String id) {
    List<PlanStep> stop = new ArrayList<>();
    List<PlanStep> all = new ArrayList<>();
    for (PlanStep step : point.steps()) {
      if (!step.standsFor(PlanStep.Kind.STOP)) {
        all.add(step);
      } else {
        if (stop.isEmpty()) {
          all.add(new PlanStep(STOP, null, null, step.span()));
        }
        stop.add(step);
      }
    }
    part(id, steps.fact(Area.STOP, "stop/" + id, id + ", stop", stop, point.span()));
    part(id, steps.fact(Area.STEPS, "steps/" + id, id + ", steps", all, point.span()));
    steps.records(id, id, point.steps()).forEach(record -> part(id, record));
  }

  // ---- readings and limits ----

  private Fact reading(Point.Reading r, Span at) {
    String id = naming.point(r.id());
    return Fact.of(
        Area.STEPS,
        "reading/" + id,
        id,
        Canonical.of(r.quantity(), r.unit(), r.resolution(), r.by()),
        r.quantity() + " in " + FactText.value(r.resolution(), r.unit()) + by(r.by()),
        at);
  }

  /**
   * A limit by its rule, what the row states and its rounded ends; what lies between follows from
   * the profiles.
   */
  private Fact limit(Limit limit, Point point) {
    String id = naming.point(limit.id());
    String canonical =
        Canonical.of(
            limit.quantity(),
            limit.unit(),
            limit.resolution(),
            limit.source().word(),
            limit.rule().quantity(),
            LimitText.exact(limit.written()),
            limit.rule().readAs(),
            limit.read().by(),
            stated(limit),
            ends(limit.printed()),
            ends(limit.accept()));
    String shown =
        FactText.limit(limit)
            + "; "
            + limit.source().word()
            + "; "
            + limit.quantity()
            + "; "
            + FactText.rule(limit)
            + FactText.stated(limit)
            + by(limit.read().by());
    boolean stated = limit.source() == Limit.Source.STATED;
    Span span = stated ? point.span() : limit.rule().span();
    return Fact.of(Area.LIMIT, "limit/" + id, id, canonical, shown, span).with(limit);
  }

  /** Whose display shows it, where the bench has more than an instrument. */
  private static String by(@Nullable String role) {
    return role == null ? "; worked out" : role.equals(Instruments.ONLY) ? "" : "; read by " + role;
  }

  /** What the row states, by quantity: the order of its columns makes no difference. */
  private static List<String> stated(Limit limit) {
    List<String> each = new ArrayList<>();
    for (Stated s : limit.stated()) {
      each.add(Canonical.of(s.quantity(), value(s.lower()), value(s.upper())));
    }
    each.sort(null);
    return each;
  }

  private static @Nullable Rational value(Stated.@Nullable End end) {
    return end == null ? null : end.value();
  }

  private static String ends(Limit.Rounded rounded) {
    return Canonical.of(rounded.lower(), rounded.upper());
  }
}
