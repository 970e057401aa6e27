package passband.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.draw.Drawing;
import passband.draw.LimitPicture;
import passband.draw.WiringDrawing;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.evidence.StageItems;
import passband.limit.Decision;
import passband.model.Device;
import passband.model.Lead;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.Unknowns;
import passband.words.Language;

/** From a compiled procedure to what its sheet prints. */
public final class SheetMaker implements Stage.Visitor<Sheet.Block> {
  private static final int SHORT = 12;

  /** The branch of what is not left out with other parts. */
  private static final String ALWAYS = "";

  private final Plan plan;
  private final Language language;
  private final StepsOfLine stepsOfLine;
  private final Evidence evidence;
  private final Asks asks;
  private final OnlyIf onlyIf;

  /** Where each wiring is drawn, by the drawing's name. */
  private final Map<String, String> drawn = new HashMap<>();

  private int runs;
  private int lines;
  private @Nullable StageItems items;

  private SheetMaker(Plan plan, Evidence evidence) {
    this.plan = plan;
    this.language = plan.language();
    this.stepsOfLine = new StepsOfLine(language);
    this.evidence = evidence;
    this.asks = new Asks(plan.decision(), language);
    this.onlyIf = new OnlyIf(plan);
  }

  /** The whole sheet. */
  public static Sheet sheet(Plan plan) {
    return sheet(plan, Evidence.of(plan));
  }

  /** The whole sheet of a plan whose items are made already. */
  public static Sheet sheet(Plan plan, Evidence evidence) {
    return new SheetMaker(plan, evidence).sheet();
  }

  private Sheet sheet() {
    List<Sheet.Block> blocks = new ArrayList<>();
    for (int i = 0; i < plan.stages().size(); i++) {
      items = evidence.stages().get(i);
      blocks.add(plan.stages().get(i).accept(this));
    }
    return new Sheet(
        head(),
        evidence.identity().stream().map(asks::of).toList(),
        plan.cautions().stream().map(Plan.Caution::text).toList(),
        leads(),
        blocks,
        allowed(),
        Unknowns.of(plan),
        LimitPicture.of(plan),
        asks.of(evidence.result()),
        evidence.list());
  }

  /** The items of the stage that is gone through. */
  private StageItems items() {
    return Objects.requireNonNull(items, "no stage is gone through");
  }

  private Sheet.Head head() {
    return new Sheet.Head(
        plan.name().text(),
        plan.title(),
        plan.revision().label(),
        plan.revision().date(),
        plan.digest(),
        plan.digest().substring(0, SHORT),
        plan.device().title(),
        plan.instruments().titles(),
        decision(),
        WhenStopped.text(plan),
        language);
  }

  /** By place, code and reason: in which order they are declared makes no difference. */
  private List<Sheet.AllowLine> allowed() {
    List<Plan.Allowed> sorted = new ArrayList<>(plan.allowed());
    sorted.sort(
        Comparator.comparing(Plan.Allowed::place)
            .thenComparing(Plan.Allowed::code)
            .thenComparing(Plan.Allowed::reason));
    List<Sheet.AllowLine> lines = new ArrayList<>();
    for (Plan.Allowed a : sorted) {
      Code code = Code.find(a.code());
      String title = code == null ? "" : language.of("code." + code.id());
      lines.add(new Sheet.AllowLine(a.code(), title, a.place(), a.reason()));
    }
    return lines;
  }

  private String decision() {
    Decision decision = plan.decision();
    String coverage = language.number(decision.coverage().toPlain());
    return switch (decision.kind()) {
      case SIMPLE -> language.of("decision.simple");
      case GUARDED ->
          language.of("decision.guarded", language.of("decision.guarded.rule", coverage));
      case MANAGED ->
          language.of("decision.guarded", language.of("decision.managed.rule", coverage));
      case RISK ->
          language.of(
              "decision.guarded",
              language.of("decision.risk.rule", language.number(decision.percent()), coverage));
    };
  }

  /** The leads that the procedure's setups use, in the order of the set. */
  private List<Sheet.LeadLine> leads() {
    List<Sheet.LeadLine> lines = new ArrayList<>();
    for (Lead lead : plan.usedLeads()) {
      String none = language.of(lead.unknown() == null ? "rating.none" : "rating.unknown");
      String rating = lead.ratedText() == null ? none : language.number(lead.ratedText());
      lines.add(
          new Sheet.LeadLine(
              Plan.letter(lines.size()),
              lead.title(),
              lead.kind().word(),
              lead.colour() == null ? "" : language.term(lead.colour()),
              rating,
              asks.of(evidence.leads().get(lines.size()))));
    }
    return lines;
  }

  // ---- blocks ----

  @Override
  public Sheet.Block section(Stage.Section section) {
    return new Sheet.Block(
        "section",
        0,
        section.title(),
        onlyIf.of(section.condition(), 0, 0),
        ALWAYS,
        null,
        List.of(),
        steps(section.steps(), items().before()),
        null);
  }

  @Override
  public Sheet.Block adjust(Stage.Adjust adjust) {
    String tests = String.join(", ", adjust.affects().stream().map(this::testTitle).toList());
    String note = language.of("adjust.note", tests);
    return new Sheet.Block(
        "adjust",
        0,
        adjust.title(),
        note,
        ALWAYS,
        asks.optional(items().made()),
        List.of(),
        steps(adjust.steps(), items().before()),
        null);
  }

  private String testTitle(String name) {
    return plan.runs().stream()
        .filter(r -> r.test().text().equals(name))
        .map(Stage.Run::title)
        .findFirst()
        .orElse(name);
  }

  @Override
  public Sheet.Block start(Stage.Start start) {
    return new Sheet.Block(
        "start",
        0,
        language.of("start"),
        null,
        ALWAYS,
        null,
        List.of(),
        steps(List.of(start.ready()), items().before()),
        null);
  }

  @Override
  public Sheet.Block end(Stage.End end) {
    return new Sheet.Block(
        "end",
        0,
        language.of("end"),
        null,
        ALWAYS,
        null,
        List.of(),
        steps(end.stays(), items().before()),
        null);
  }

  @Override
  public Sheet.Block gate(Stage.Gate gate) {
    List<Sheet.StepLine> steps = new ArrayList<>();
    steps.add(new Sheet.StepLine("caution", gate.text(), null, null));
    Sheet.Ask passed = asks.of(Objects.requireNonNull(items().before().get(0), "a gate's tick"));
    steps.add(new Sheet.StepLine("confirm", passed.text(), passed, null));
    steps.add(new Sheet.StepLine("do", language.of("gate.closed"), null, null));
    return new Sheet.Block(
        "gate",
        0,
        language.of("gate"),
        onlyIf.of(gate.when().condition(), 0, 0),
        ALWAYS,
        null,
        List.of(),
        List.copyOf(steps),
        null);
  }

  @Override
  public Sheet.Block clear(Stage.Clear clear) {
    String condition = onlyIf.of(clear.when().condition(), 0, 0);
    return new Sheet.Block(
        "clear",
        0,
        language.of("clear"),
        (condition == null ? "" : condition + " ") + language.of("output-off.all"),
        ALWAYS,
        null,
        asks.all(items().moves()),
        List.of(),
        null);
  }

  @Override
  public Sheet.Block run(Stage.Run run) {
    runs++;
    int first = lines + 1;
    Sheet.RunPart part =
        new Sheet.RunPart(
            run.phase(),
            run.outlet() == null ? null : run.outlet().title(),
            run.outlet() == null ? null : "outlet-" + run.outlet().name().text(),
            run.setup() == null ? null : setup(run, run.setup()),
            run.state() == null ? null : state(run.state()),
            steps(run.before(), items().before()),
            groups(run),
            steps(run.after(), items().after()),
            run.derived().stream()
                .map(d -> language.term(d.title()) + " = " + d.formula())
                .toList());
    return new Sheet.Block(
        "run",
        runs,
        run.title(),
        onlyIf.of(run.when().condition(), first, lines),
        branch(run.when().condition()),
        null,
        List.of(),
        List.of(),
        part);
  }

  private static String branch(Stage.Condition condition) {
    return condition.equals(Stage.Condition.NONE) ? ALWAYS : condition.toString();
  }

  /** The wiring is drawn where it comes first, and again where only what may be left out has it. */
  private Sheet.SetupLines setup(Stage.Run run, Setup setup) {
    Drawing drawing = WiringDrawing.of(plan, run);
    WiringLines wiring = new WiringLines(plan, setup);
    String before = drawn.get(drawing.name());
    if (before == null && run.when().condition().equals(Stage.Condition.NONE)) {
      drawn.put(drawing.name(), runs + ". " + run.title());
    }
    return new Sheet.SetupLines(
        setup.title(),
        drawing.name(),
        before == null ? drawing : null,
        run.moves().isEmpty() ? null : before,
        !run.moves().isEmpty(),
        wiring.jacks(),
        wiring.rows(run.moves(), asks.all(items().moves())));
  }

  private Sheet.StateLines state(Device.State state) {
    return new Sheet.StateLines(
        state.title(),
        asks.of(Objects.requireNonNull(items().enter(), "a state without a tick")),
        asks.of(Objects.requireNonNull(items().leave(), "a state without a tick")));
  }

  private List<Sheet.StepLine> steps(List<PlanStep> steps, Map<Integer, Item> asked) {
    List<Sheet.StepLine> lines = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      PlanStep step = steps.get(i);
      Sheet.Ask ask = asks.optional(asked.get(i));
      lines.add(
          new Sheet.StepLine(
              step.kind().word(), step.text(language), ask, StepsOfLine.lasts(step)));
    }
    return lines;
  }

  // ---- points ----

  private List<Sheet.Group> groups(Stage.Run run) {
    List<Sheet.Group> groups = new ArrayList<>();
    List<Sheet.StepLine> shared = List.of();
    List<Integer> together = new ArrayList<>();
    for (int i = 0; i < run.points().size(); i++) {
      List<Sheet.StepLine> steps = stepsOfLine.shared(run.points().get(i));
      if (!together.isEmpty() && !(alike(run, together.get(0), i) && steps.equals(shared))) {
        groups.add(group(run, together, shared));
        together.clear();
      }
      together.add(i);
      shared = steps;
    }
    if (!together.isEmpty()) {
      groups.add(group(run, together, shared));
    }
    return groups;
  }

  private static boolean alike(Stage.Run run, int one, int other) {
    Point a = run.points().get(one);
    Point b = run.points().get(other);
    return a.mode() == b.mode() && a.extras().keySet().equals(b.extras().keySet());
  }

  private Sheet.Group group(Stage.Run run, List<Integer> places, List<Sheet.StepLine> shared) {
    List<Point> points = places.stream().map(i -> run.points().get(i)).toList();
    Point first = points.get(0);
    List<Sheet.Line> made = new ArrayList<>();
    places.forEach(i -> made.add(line(run.points().get(i), items().points().get(i))));
    boolean one = points.size() == 1;
    return new Sheet.Group(
        first.mode() == null ? null : first.mode().title(),
        one ? stepsOfLine.own(first) : shared,
        made,
        first.setting() != null,
        first.loadText() != null,
        first.extras().keySet().stream().map(n -> language.term(n.replace('-', ' '))).toList(),
        WrittenAt.of(first));
  }

  private Sheet.Line line(Point point, StageItems.PointItems asked) {
    lines++;
    return new Sheet.Line(
        lines,
        point.id(),
        point.setting() == null ? null : language.number(point.setting().text()),
        point.loadText() == null ? null : language.term(language.number(point.loadText())),
        point.extras().values().stream().map(language::number).toList(),
        StepsOfLine.seconds(point.onTime()),
        new Boxes(language).of(point, asked),
        asks.all(asked.steps().values()),
        stepsOfLine.own(point).stream().map(Sheet.StepLine::text).toList());
  }
}
