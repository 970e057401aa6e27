package passband.diff;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.diff.Fact.Area;
import passband.limit.Limit;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.model.Device;
import passband.model.ExtraSetting;
import passband.model.Lead;
import passband.model.Series;
import passband.model.Terminal;
import passband.plan.LimitText;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.source.Span;
import passband.syntax.Tree;
import passband.syntax.Word;

/** A compiled procedure taken apart into facts, in the order of the bench. */
public final class Facts implements Stage.Visitor<Void> {
  private final Plan plan;
  private final Names names;
  private final Map<String, Fact> facts = new LinkedHashMap<>();
  private final List<String> stages = new ArrayList<>();

  private Facts(Plan plan, Names names) {
    this.plan = plan;
    this.names = names;
  }

  /** The facts by key. */
  public static Map<String, Fact> of(Plan plan, Names names) {
    Facts facts = new Facts(plan, names);
    facts.head();
    facts.device(plan.device());
    facts.analyzer(plan.analyzer());
    plan.leads().forEach(facts::lead);
    plan.stages().forEach(stage -> stage.accept(facts));
    facts.add(
        Area.ORDER,
        "order",
        "the order of the parts",
        String.join(", ", facts.stages),
        plan.name().span());
    return facts.facts;
  }

  private void add(Area area, String key, String subject, String value, Span cause) {
    facts.putIfAbsent(key, new Fact(area, key, subject, value, null, cause));
  }

  // ---- the procedure ----

  private void head() {
    Tree.Procedure tree = plan.tree();
    Plan.Revision r = plan.revision();
    Span revision = tree.revision() == null ? plan.name().span() : tree.revision().span();
    String replaces =
        r.replaces() == null ? "" : ", replaces " + r.replaces() + " (" + r.replacesDigest() + ")";
    add(Area.REVISION, "revision", "revision", r.label() + " on " + r.date() + replaces, revision);
    add(Area.TEXT, "title", "the title", plan.title(), plan.name().span());
    Span decision = tree.decision() == null ? plan.name().span() : tree.decision().span();
    add(Area.DECISION, "decision", "the decision rule", plan.decision().text(), decision);
    add(Area.TEXT, "phases", "the phases", String.join(", ", plan.phases()), plan.name().span());
    for (Plan.Caution caution : plan.cautions()) {
      String name = caution.name().text();
      add(
          Area.CAUTION,
          "caution/" + name,
          "caution '" + name + "'",
          caution.text(),
          caution.name().span());
    }
    for (Plan.Allowed allow : plan.allowed()) {
      String key = "allow/" + allow.place() + "/" + allow.code();
      add(
          Area.ALLOW,
          key,
          allow.code() + " in " + allow.place(),
          allow.reason(),
          plan.name().span());
    }
  }

  // ---- profiles ----

  private static String titled(String title, String... more) {
    StringBuilder text = new StringBuilder("\"" + title + "\"");
    for (String part : more) {
      text.append(part == null || part.isEmpty() ? "" : ", " + part);
    }
    return text.toString();
  }

  private void device(Device device) {
    add(
        Area.PROFILE,
        "device",
        "the generator",
        titled(device.title(), device.name().text()),
        device.name().span());
    for (Device.Outlet outlet : device.outlets()) {
      String name = names.outlet(outlet.name().text());
      add(
          Area.PROFILE,
          "outlet/" + name,
          "outlet " + name,
          titled(outlet.title()),
          outlet.name().span());
      outlet.terminals().forEach(t -> terminal(t, Area.PROFILE));
    }
    device.modes().forEach(this::mode);
    actions("generator", device.actions(), Area.PROFILE);
    for (Device.State state : device.states()) {
      String name = "state " + state.name().text();
      Span at = state.name().span();
      add(Area.TEXT, name + "/title", name, titled(state.title()), at);
      add(Area.STATE, name + "/enter", name + ", enter", state.enter(), at);
      add(Area.STATE, name + "/leave", name + ", leave", state.leave(), at);
    }
    device.settings().forEach(s -> setting("generator", s));
  }

  private void terminal(Terminal t, Area area) {
    String id = t.onAnalyzer() ? t.id() : names.terminal(t.id());
    String holds = t.holds() == 1 ? null : "holds " + t.holds();
    add(area, "terminal/" + id, id, titled(t.title(), t.kind().word(), holds), t.name().span());
  }

  private void mode(Device.Mode mode) {
    String name = names.mode(mode.name().text());
    String key = "mode/" + name + "/";
    String subject = "mode " + name;
    Span at = mode.name().span();
    add(Area.PROFILE, key + "title", subject, titled(mode.title()), at);
    List<String> on = mode.outlets().stream().map(o -> names.outlet(o.name().text())).toList();
    add(Area.PROFILE, key + "on", subject + ", outlets", String.join(", ", on), at);
    String through = mode.through() == null ? "" : names.outlet(mode.through().name().text());
    add(Area.CONTACT, key + "through", subject + ", return path", through, at);
    String kind = mode.settingKind() == null ? "" : mode.settingKind().name() + " ";
    add(Area.PROFILE, key + "setting", subject + ", setting", kind + series(mode.setting()), at);
    add(Area.PROFILE, key + "load", subject + ", rated load", series(mode.loads()), at);
    if (mode.output() != null) {
      limit(key + "output", subject + ", output", mode.output());
    }
    mode.limits().forEach(l -> limit(key + l.quantity().text(), subject, l));
    add(Area.DUTY, key + "duty", subject + ", duty", duty(mode.duty()), at);
    List<String> by =
        mode.activateBy().stream()
            .map(a -> String.join(".", a.parts().stream().map(Word::text).toList()))
            .toList();
    add(Area.CONTACT, key + "activate", subject + ", activated by", String.join(", ", by), at);
  }

  private void limit(String key, String subject, Tree.QuantityLimit limit) {
    String text = limit.quantity().text() + " " + LimitText.exact(limit.limit());
    add(Area.PROFILE, key, subject, text, limit.span());
  }

  private static String duty(Device.Duty duty) {
    if (duty == null) {
      return "";
    }
    return duty.continuous()
        ? "continuous"
        : seconds(duty.on()) + " on, " + seconds(duty.off()) + " off";
  }

  private static String seconds(Rational seconds) {
    return seconds == null ? "-" : seconds.toPlain() + " s";
  }

  private void actions(String of, Map<String, Word> actions, Area area) {
    actions.forEach(
        (name, text) -> {
          Area at = name.equals("stop") ? Area.STOP : area;
          add(at, "action/" + of + "/" + name, of + " action " + name, text.text(), text.span());
        });
  }

  private void setting(String of, ExtraSetting s) {
    String options =
        s.options() == null
            ? series(s.series())
            : String.join(", ", s.options().stream().map(Word::text).toList());
    String name = s.name().text();
    add(
        Area.PROFILE,
        "setting/" + of + "/" + name,
        of + " setting " + name,
        titled(s.title(), options),
        s.name().span());
  }

  private static String series(Series series) {
    if (series == null) {
      return "";
    }
    Unit unit = coherent(series.unit());
    List<String> texts = new ArrayList<>();
    for (Series.Segment s : series.segments()) {
      String to = s.from().equals(s.to()) ? "" : " to " + value(s.to(), unit);
      String step = s.step() == null ? "" : " step " + value(s.step(), unit);
      texts.add(value(s.from(), unit) + to + step);
    }
    return String.join(", ", texts);
  }

  /** The unit without a prefix: how a profile spells its units is no part of the meaning. */
  private static Unit coherent(Unit unit) {
    return Units.all().stream()
        .filter(u -> u.dimension().equals(unit.dimension()) && u.factor().equals(Rational.ONE))
        .findFirst()
        .orElse(unit);
  }

  private static String value(Rational si, Unit unit) {
    String number = si.over(unit.factor()).toPlain();
    return unit.symbol().isEmpty() ? number : number + " " + unit.printed();
  }

  private void analyzer(Analyzer analyzer) {
    Span at = analyzer.name().span();
    add(
        Area.ANALYZER,
        "analyzer",
        "the analyzer",
        titled(analyzer.title(), analyzer.name().text()),
        at);
    add(Area.DUTY, "settle", "the analyzer's settling time", seconds(analyzer.settle()), at);
    analyzer.terminals().forEach(t -> terminal(t, Area.ANALYZER));
    int bank = 0;
    for (Analyzer.LoadBank load : analyzer.loads()) {
      String key = "load/" + bank++ + "/";
      String subject = "load from " + load.from().id() + " to " + load.to().id();
      add(
          Area.ANALYZER,
          key + "ends",
          "the load's jacks",
          subject + " " + load.name(),
          load.span());
      add(Area.ANALYZER, key + "values", subject, series(load.values()), load.span());
      add(Area.ANALYZER, key + "error", subject + ", error", accuracy(load.error()), load.span());
      List<String> power =
          load.power().stream()
              .map(p -> p.power().toPlain() + " W for " + seconds(p.time()))
              .toList();
      add(Area.ANALYZER, key + "power", subject + ", power", String.join(", ", power), load.span());
    }
    analyzer.measures().forEach(this::measure);
    actions("analyzer", analyzer.actions(), Area.ANALYZER);
    analyzer.settings().forEach(s -> setting("analyzer", s));
  }

  private void measure(Analyzer.Measure measure) {
    String key = "measure/" + measure.quantity().name();
    String subject = "measured " + measure.quantity().name();
    String ends = measure.from() == null ? "" : measure.from().id() + " to " + measure.to().id();
    add(Area.ANALYZER, key, subject, ends, measure.span());
    int number = 1;
    for (Analyzer.Range r : measure.ranges()) {
      String range =
          value(r.from(), r.unit())
              + " to "
              + value(r.to(), r.unit())
              + ", resolution "
              + value(r.resolution(), r.unit());
      add(
          Area.ANALYZER,
          key + "/" + number,
          subject + ", range " + number,
          range + ", error " + accuracy(r.error()),
          r.span());
      number++;
    }
  }

  private static String accuracy(Accuracy accuracy) {
    return accuracy.relative().times(Rational.HUNDRED).toPlain()
        + " % + "
        + accuracy.absolute().toPlain();
  }

  private void lead(Lead lead) {
    String name = lead.name().text();
    String what = lead.link() ? "link" : "lead";
    String rated = lead.rated() == null ? "no rating" : "rated " + lead.rated().toPlain() + " V";
    add(
        Area.LEAD,
        "lead/" + name,
        what + " " + name,
        titled(lead.title(), what, rated, lead.colour()),
        lead.name().span());
  }

  // ---- stages ----

  private void steps(Area area, String key, String subject, List<PlanStep> steps, Span cause) {
    StringBuilder text = new StringBuilder();
    for (PlanStep s : steps) {
      text.append(text.isEmpty() ? "" : " / ").append(s.kind().word() + " " + s.text());
      append(text, " -> ", s.name());
      append(text, " in ", s.unit());
      append(text, " of ", s.outcomes().isEmpty() ? null : String.join(", ", s.outcomes()));
      append(text, " pass ", s.pass());
      append(text, " for ", s.seconds());
    }
    add(area, key, subject, text.toString(), cause);
  }

  private static void append(StringBuilder text, String before, String part) {
    text.append(part == null ? "" : before + part);
  }

  @Override
  public Void section(Stage.Section section) {
    String name = "section " + section.name().text();
    stages.add(name);
    add(Area.TEXT, name, name, titled(section.title()), section.name().span());
    steps(Area.STEPS, name + "/steps", name + ", steps", section.steps(), section.name().span());
    return null;
  }

  @Override
  public Void adjust(Stage.Adjust adjust) {
    String name = "adjust " + adjust.name().text();
    stages.add(name);
    List<String> affects = adjust.affects().stream().map(names::test).toList();
    String value = titled(adjust.title(), "affects " + String.join(", ", affects));
    add(Area.STEPS, name, name, value, adjust.name().span());
    steps(Area.STEPS, name + "/steps", name + ", steps", adjust.steps(), adjust.name().span());
    return null;
  }

  @Override
  public Void clear(Stage.Clear clear) {
    stages.add("leads off");
    return null;
  }

  @Override
  public Void run(Stage.Run run) {
    String test = names.test(run.test().text());
    String outlet = run.outlet() == null ? "-" : names.outlet(run.outlet().name().text());
    String key = "run/" + test + "/" + outlet + (run.phase() == null ? "" : "/" + run.phase());
    String subject = "test " + test + " on " + outlet;
    Span at = run.test().span();
    stages.add(key.substring(4));
    add(Area.TEXT, "test/" + test, "test " + test, titled(run.title()), at);
    add(
        Area.STATE,
        key + "/state",
        subject + ", inside",
        run.state() == null ? "" : run.state().name().text(),
        at);
    setup(run, key, subject, outlet);
    steps(Area.STEPS, key + "/before", subject + ", before", run.before(), at);
    steps(Area.STEPS, key + "/after", subject + ", after", run.after(), at);
    run.derives()
        .forEach(
            d ->
                add(
                    Area.STEPS,
                    key + "/derive/" + d.name(),
                    subject + ", " + d.name(),
                    titled(d.title(), d.formula()),
                    at));
    if (run.sweep() != null) {
      Stage.Swept s = run.sweep();
      String swept =
          s.what()
              + (s.up() ? " up " : " down ")
              + s.from().si()
              + " to "
              + s.to().si()
              + " step "
              + s.step().si()
              + " until "
              + s.until()
              + " as "
              + s.as();
      add(Area.STEPS, key + "/sweep", subject + ", sweep", swept, at);
    }
    List<String> order = new ArrayList<>();
    for (Point point : run.points()) {
      order.add(names.point(point.id()));
      point(point);
    }
    add(
        Area.ORDER,
        key + "/order",
        subject + ", order of the points",
        String.join(", ", order),
        at);
    return null;
  }

  private void setup(Stage.Run run, String key, String subject, String outlet) {
    if (run.setup() == null) {
      return;
    }
    String setup = run.setup().name().text();
    add(Area.WIRE, key + "/setup", subject + ", setup", setup, run.test().span());
    add(
        Area.TEXT,
        "setup/" + setup,
        "setup " + setup,
        titled(run.setup().title()),
        run.setup().name().span());
    for (Wire wire : run.setup().wires()) {
      String lead = wire.lead().name().text();
      String value = end(wire.from()) + " to " + end(wire.to());
      add(
          Area.WIRE,
          "wire/" + setup + "/" + outlet + "/" + lead,
          "setup " + setup + " on " + outlet + ", " + wire.lead().title(),
          value,
          wire.span());
    }
  }

  private String end(Terminal terminal) {
    return terminal.onAnalyzer() ? terminal.id() : names.terminal(terminal.id());
  }

  private void point(Point point) {
    String id = names.point(point.id());
    String target = point.target() == null ? "" : "target " + point.target().si().toPlain();
    add(Area.POINT, "point/" + id, id, target, point.span());
    add(
        Area.DUTY,
        "times/" + id,
        id + ", on and rest",
        seconds(point.onTime()) + " on, " + seconds(point.rest()) + " rest",
        point.span());
    List<PlanStep> stop =
        point.steps().stream().filter(s -> s.kind() == PlanStep.Kind.STOP).toList();
    List<PlanStep> rest =
        point.steps().stream().filter(s -> s.kind() != PlanStep.Kind.STOP).toList();
    steps(Area.STOP, "stop/" + id, id + ", stop", stop, point.span());
    steps(Area.STEPS, "steps/" + id, id + ", steps", rest, point.span());
    point
        .readings()
        .forEach(
            r ->
                add(
                    Area.STEPS,
                    "reading/" + names.point(r.id()),
                    names.point(r.id()),
                    r.title() + " in " + value(r.resolution(), r.unit()),
                    point.span()));
    point.limits().forEach(l -> limit(l, point));
  }

  private void limit(Limit limit, Point point) {
    String id = names.point(limit.id());
    String rule = LimitText.exact(limit.rule().limit());
    String read = limit.rule().readAs() == null ? "" : ", read as " + limit.rule().readAs().text();
    String value =
        limitText(limit) + "; " + limit.source().word() + "; " + limit.title() + "; " + rule + read;
    facts.putIfAbsent(
        "limit/" + id,
        new Fact(
            Area.LIMIT,
            "limit/" + id,
            id,
            value,
            limit,
            limit.source() == Limit.Source.STATED ? point.span() : limit.rule().span()));
  }

  /** What a reading has to be, the tolerance and one step of the reading. */
  static String limitText(Limit limit) {
    String accept = limit.words(limit.accept());
    String tolerance = limit.words(limit.printed());
    String outer = accept.equals(tolerance) ? "" : " (tolerance " + tolerance + ")";
    return accept + outer + ", read to " + value(limit.resolution(), limit.unit());
  }
}
