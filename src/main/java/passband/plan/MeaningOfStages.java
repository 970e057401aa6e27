package passband.plan;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.model.Terminal;
import passband.plan.Fact.Area;
import passband.source.Span;

/** What is done, in bench order. */
final class MeaningOfStages implements Stage.Visitor<Void> {
  private final FactList facts;
  private final Naming naming;
  private final MeaningOfPoints points;
  private final List<String> order = new ArrayList<>();

  MeaningOfStages(FactList facts, Naming naming) {
    this.facts = facts;
    this.naming = naming;
    this.points = new MeaningOfPoints(facts, naming);
  }

  void add(Plan plan) {
    plan.stages().forEach(stage -> stage.accept(this));
    facts.add(Fact.order(Area.ORDER, "order", "the order of the parts", order, plan.name().span()));
  }

  @Override
  public Void section(Stage.Section section) {
    String name = "section " + section.name();
    order.add(name);
    facts.add(
        Fact.of(
                Area.TEXT,
                name,
                name,
                Canonical.of(section.title()),
                FactText.titled(section.title()),
                section.name().span())
            .partOf(name + "/steps"));
    if (section.condition().option() != null) {
      when(name, name, new Stage.When(null, section.condition()), name + "/steps");
    }
    steps(name + "/steps", name + ", steps", section.steps(), null, section.name().span());
    return null;
  }

  /** In a later phase it is told by what adjustments affect. */
  @Override
  public Void gate(Stage.Gate gate) {
    String name = "gate " + gate.id();
    order.add(name);
    facts.add(Fact.text(Area.GATE, name, name, gate.text(), gate.name().span()));
    when(name, name, gate.when(), name);
    return null;
  }

  @Override
  public Void adjust(Stage.Adjust adjust) {
    String name = "adjust " + adjust.name();
    order.add(name);
    List<String> affects = new ArrayList<>();
    adjust.affects().forEach(test -> affects.add(naming.test(test)));
    facts.add(
        Fact.of(
            Area.STEPS,
            name,
            name,
            Canonical.of(adjust.title(), affects),
            FactText.titled(adjust.title(), "affects " + String.join(", ", affects)),
            adjust.name().span()));
    steps(name + "/steps", name + ", steps", adjust.steps(), null, adjust.name().span());
    return null;
  }

  @Override
  public Void start(Stage.Start start) {
    order.add("start");
    steps("start", "start", List.of(start.ready()), null, start.ready().span());
    return null;
  }

  @Override
  public Void end(Stage.End end) {
    order.add("end");
    steps("end", "end", end.stays(), null, null);
    return null;
  }

  /** It is told by what it makes way for. */
  @Override
  public Void clear(Stage.Clear clear) {
    String before = clear.before() == null ? "" : " before " + naming.run(clear.before());
    String key = "leads off" + before;
    String subject = "removal of the leads" + before;
    order.add(key);
    when(key, subject, clear.when(), key);
    moves(key, subject, clear.moves(), null, null);
    return null;
  }

  private void steps(
      String key,
      String subject,
      List<PlanStep> steps,
      @Nullable String owner,
      @Nullable Span span) {
    MeaningOfSteps meaning = new MeaningOfSteps(naming);
    facts.add(meaning.fact(Area.STEPS, key, subject, steps, span).partOf(owner));
    meaning.records(key, subject, steps).forEach(record -> facts.add(record.partOf(owner)));
  }

  // ---- a run ----

  @Override
  public Void run(Stage.Run run) {
    String test = naming.test(run.test().text());
    String outlet = run.outlet() == null ? "-" : naming.outlet(run.outlet().name().text());
    String name = naming.run(run.id());
    String key = "run/" + name;
    String phase = run.phase() == null ? "" : ", " + run.phase();
    String subject = "test " + test + " on " + outlet + phase;
    Span at = run.test().span();
    order.add(name);
    head(run, test, key, subject);
    when(key, subject, run.when(), key + "/state");
    if (run.setup() != null) {
      setup(run, run.setup(), key, subject, outlet);
    }
    moves(key + "/moves", subject + ", changes of the wiring", run.moves(), key + "/state", at);
    steps(key + "/before", subject + ", before", run.before(), key + "/state", at);
    steps(key + "/after", subject + ", after", run.after(), key + "/state", at);
    derives(run, key, subject);
    if (run.sweep() != null) {
      sweep(run.sweep(), key, subject, at);
    }
    points(run, key, subject);
    return null;
  }

  private void head(Stage.Run run, String test, String key, String subject) {
    Span at = run.test().span();
    String from = run.renamedFrom();
    facts.share(
        Fact.of(
                from == null ? Area.TEXT : Area.NAME,
                "test/" + test,
                "test " + test,
                Canonical.of(run.title(), from == null ? null : Canonical.of(run.test(), from)),
                FactText.titled(
                    run.title(), from == null ? null : run.test() + " renamed from " + from),
                at)
            .partOf(key + "/state"),
        key);
    String state = run.state() == null ? null : run.state().name().text();
    String inside = state == null ? "" : ", inside " + state;
    facts.add(Fact.of(Area.RUN, key + "/state", subject, Canonical.of(state), "done" + inside, at));
    String output = run.output().word();
    facts.add(
        Fact.text(Area.STATE, key + "/output", subject + ", output", output, at)
            .partOf(key + "/state"));
  }

  private void when(String key, String subject, Stage.When when, String owner) {
    String phase = when.phase() == null ? "always" : when.phase();
    String shown =
        when.adjusted().isEmpty() ? phase : phase + ", if " + String.join(" or ", when.adjusted());
    Stage.Option option = when.condition().option();
    String chosen =
        option == null
            ? ""
            : ", where " + option.choice() + " is " + String.join(" or ", option.is());
    String canonical = Canonical.of(when.phase(), when.adjusted());
    facts.add(
        Fact.of(
                Area.CONDITION,
                key + "/when",
                subject + ", when",
                option == null ? canonical : Canonical.of(canonical, option.choice(), option.is()),
                shown + chosen,
                null)
            .partOf(owner));
  }

  private void points(Stage.Run run, String key, String subject) {
    List<String> ids = new ArrayList<>();
    for (Point point : run.points()) {
      ids.add(naming.point(point.id()));
      points.add(point);
    }
    facts.add(
        Fact.order(
                Area.ORDER,
                key + "/order",
                subject + ", order of the points",
                ids,
                run.test().span())
            .partOf(key + "/state"));
  }

  // ---- wiring ----

  private void setup(Stage.Run run, Setup setup, String key, String subject, String outlet) {
    String name = setup.name().text();
    String owner = key + "/state";
    Span at = run.test().span();
    facts.add(Fact.text(Area.WIRE, key + "/setup", subject + ", setup", name, at).partOf(owner));
    facts.share(
        Fact.of(
                Area.TEXT,
                "setup/" + name,
                "setup " + name,
                Canonical.of(setup.title()),
                FactText.titled(setup.title()),
                setup.name().span())
            .partOf(owner),
        key);
    String on = "setup " + name + " on " + outlet;
    List<String> leads = new ArrayList<>();
    Map<String, Integer> joints = new HashMap<>();
    for (Wire wire : setup.wires()) {
      String own = wire.lead().name().text();
      int number = joints.merge(own, 1, Integer::sum);
      String lead = wire.lead().accessory() ? own + "/" + number : own;
      leads.add(lead);
      facts.share(wire(wire, "wire/" + name + "/" + outlet + "/" + lead, on).partOf(owner), key);
    }
    String wires = "wires/" + name + "/" + outlet;
    facts.share(
        Fact.order(Area.WIRE, wires, on + ", order of the leads", leads, setup.span())
            .partOf(owner),
        key);
  }

  private Fact wire(Wire wire, String key, String on) {
    String from = naming.terminal(wire.from());
    String to = naming.terminal(wire.to());
    return Fact.of(
        Area.WIRE,
        key,
        on + ", " + wire.lead().title(),
        Canonical.of(from, to),
        from + " to " + to,
        wire.span());
  }

  private List<String> ends(Move move) {
    List<String> ends = new ArrayList<>();
    move.at().forEach(one -> ends.add(end(one)));
    return ends;
  }

  /** Leads put on, moved and taken off, in order: they follow from the wiring of the runs. */
  private void moves(
      String key, String subject, List<Move> moves, @Nullable String owner, @Nullable Span span) {
    List<String> canonical = new ArrayList<>();
    List<String> shown = new ArrayList<>();
    for (Move move : moves) {
      canonical.add(
          move.at().isEmpty()
              ? Canonical.of(move.kind(), move.lead().name(), end(move.from()), end(move.to()))
              : Canonical.of(move.kind(), move.lead().name(), ends(move)));
      shown.add(move.text());
    }
    facts.add(
        Fact.of(Area.MOVES, key, subject, Canonical.of(canonical), String.join(" / ", shown), span)
            .partOf(owner));
  }

  private String end(Terminal terminal) {
    return naming.terminal(terminal);
  }

  // ---- what is worked out and swept ----

  private void derives(Stage.Run run, String key, String subject) {
    List<String> names = new ArrayList<>();
    for (Stage.Derived d : run.derives()) {
      names.add(d.name());
      facts.add(
          Fact.of(
                  Area.CALCULATION,
                  key + "/derive/" + d.name(),
                  subject + ", " + d.name(),
                  Canonical.of(d.title(), d.formula()),
                  FactText.titled(d.title(), d.formula()),
                  run.test().span())
              .partOf(key + "/state"));
    }
    facts.add(
        Fact.order(
                Area.ORDER,
                key + "/derives",
                subject + ", order of the derived values",
                names,
                run.test().span())
            .partOf(key + "/state"));
  }

  private void sweep(Stage.Swept s, String key, String subject, Span at) {
    String canonical =
        Canonical.of(
            s.what(), s.up(), s.from().si(), s.to().si(), s.step().si(), s.until(), s.as());
    String shown =
        s.what()
            + (s.up() ? " up " : " down ")
            + s.from().text()
            + " to "
            + s.to().text()
            + " step "
            + s.step().text()
            + " until "
            + s.until()
            + " as "
            + s.as();
    facts.add(
        Fact.of(Area.STEPS, key + "/sweep", subject + ", sweep", canonical, shown, at)
            .partOf(key + "/state"));
  }
}
