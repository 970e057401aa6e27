package passband.evidence;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import passband.limit.Decision;
import passband.model.Analyzer;
import passband.model.Instruments;
import passband.plan.Act;
import passband.plan.Delivery;
import passband.plan.Move;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.RecordLimit;
import passband.plan.Stage;
import passband.quantity.Units;
import passband.words.Language;

/** Goes through a plan in the order of the sheet and makes its items. */
final class EvidenceMaker implements Stage.Visitor<StageItems> {
  /** Stands for the section or run of items that belong to none. */
  private static final String SHEET = "sheet";

  private final Plan plan;
  private final Language language;
  private final Ids ids = new Ids();
  private final MeasuredItems measured;

  /** By the role of an instrument, the blank for the day on which its calibration is due. */
  private final Map<String, String> dues = new HashMap<>();

  /** By the name of a choice, its identity. */
  private final Map<String, String> choices = new HashMap<>();

  private int runs;

  EvidenceMaker(Plan plan) {
    this.plan = plan;
    this.language = plan.language();
    this.measured = new MeasuredItems(plan, dues);
  }

  Evidence evidence() {
    List<Item.Recorded> identity = identity();
    List<Item.Tick> leads = new ArrayList<>();
    plan.usedLeads()
        .forEach(
            lead ->
                leads.add(
                    new Item.Tick(
                        sheet(
                            "lead-" + lead.name().text(),
                            language.of("ask.present", lead.title()),
                            language.of("collect")))));
    List<StageItems> stages = new ArrayList<>();
    plan.stages().forEach(stage -> stages.add(stage.accept(this)));
    return new Evidence(
        source(), decision(), plan.phases(), identity, leads, withStops(stages), result());
  }

  private ItemList.Source source() {
    return new ItemList.Source(
        plan.name().text(),
        plan.title(),
        plan.revision().label(),
        plan.revision().date(),
        plan.digest(),
        plan.device().name().text(),
        instruments(),
        language.code(),
        plan.release().isReleased());
  }

  private ItemList.Decision decision() {
    Decision decision = plan.decision();
    return new ItemList.Decision(
        decision.kind().word(),
        new BigDecimal(decision.coverage().toPlain()),
        decision.risk() == null ? null : new BigDecimal(decision.risk().toPlain()),
        new BigDecimal(decision.guard().toPlain()),
        decision.prior() == null ? null : new BigDecimal(decision.prior().toPlain()));
  }

  // ---- the sheet's own ----

  private List<Item.Recorded> identity() {
    List<Item.Recorded> identity = new ArrayList<>();
    identity.add(identity("generator-serial", language.of("ask.generator-serial")));
    for (Analyzer unit : plan.instruments().units()) {
      boolean only = plan.instruments().units().size() == 1;
      String of = only ? "" : ".of";
      identity.add(
          identity(
              unit.role() + "-serial", language.of("ask.serial" + of, unit.title(), unit.role())));
      Item.Recorded due =
          identity(unit.role() + "-due", language.of("ask.due" + of, unit.title(), unit.role()));
      dues.put(unit.role(), due.id());
      identity.add(due);
    }
    identity.add(identity("done-by", language.of("ask.done-by")));
    identity.add(identity("date", language.of("ask.date")));
    identity.add(identity("settings-as-found", language.of("ask.settings")));
    return identity;
  }

  private Item.Recorded identity(String name, String title) {
    return new Item.Recorded(sheet(name, title, language.of("place.identity")), null, null);
  }

  private List<ItemList.Instrument> instruments() {
    List<ItemList.Instrument> instruments = new ArrayList<>();
    for (Instruments.Taken one : plan.instruments().roles()) {
      instruments.add(new ItemList.Instrument(one.role().text(), one.unit().name().text()));
    }
    return instruments;
  }

  private Item.Choice result() {
    String pass = language.of("result.pass");
    String result = language.of("result");
    return new Item.Choice(
        sheet("result", result, result),
        List.of(pass, language.of("result.fail"), language.of("result.incomplete")),
        pass);
  }

  private Item.Head sheet(String name, String title, String place) {
    return new Item.Head(ids.of(SHEET, name), title, null, place, List.of());
  }

  // ---- stages ----

  @Override
  public StageItems section(Stage.Section section) {
    Context context =
        new Context(
            section.name().text(), null, section.title(), List.of(), chosen(section.condition()));
    return steps(null, context, section.steps());
  }

  @Override
  public StageItems adjust(Stage.Adjust adjust) {
    String name = adjust.name().text();
    Item.Head head =
        new Item.Head(
            ids.of(name, "adjusted"), language.of("ask.adjusted"), null, adjust.title(), List.of());
    Item.Choice made = new Item.Choice(head, List.of(language.of("yes"), language.of("no")), null);
    Context context =
        new Context(name, null, adjust.title(), List.of(madeIs(adjust.name().text())), List.of());
    return steps(made, context, adjust.steps());
  }

  private StageItems steps(Item.@Nullable Choice made, Context context, List<PlanStep> steps) {
    return new StageItems(made, List.of(), null, asked(context, steps), List.of(), null, Map.of());
  }

  @Override
  public StageItems run(Stage.Run run) {
    runs++;
    Context context = context(run);
    List<Item> moves = new ArrayList<>();
    run.moves().forEach(move -> moves.add(moved(context, move)));
    Item enter = run.state() == null ? null : tick(context, "enter", run.state().enter());
    Map<Integer, Item> before = asked(context, run.before());
    List<StageItems.PointItems> points = new ArrayList<>();
    run.points().forEach(point -> points.add(point(run, context, point)));
    Item leave = run.state() == null ? null : tick(context, "leave", run.state().leave());
    return new StageItems(null, moves, enter, before, points, leave, asked(context, run.after()));
  }

  private Context context(Stage.Run run) {
    String phase = run.phase();
    return new Context(
        run.id(),
        phase,
        runs + ". " + run.title() + (phase == null ? "" : " (" + phase + ")"),
        ifAdjusted(run.when()),
        chosen(run.when().condition()));
  }

  /** The outcome that has to have been chosen: the choice stands before. */
  private List<Item.Condition> chosen(Stage.Condition condition) {
    Stage.Option option = condition.option();
    return option == null
        ? List.of()
        : List.of(
            new Item.Condition(
                Objects.requireNonNull(choices.get(option.choice()), option.choice()),
                option.is()));
  }

  /** What it stops is known when all that comes after it is. */
  @Override
  public StageItems gate(Stage.Gate gate) {
    Context context =
        new Context(
            gate.id(),
            gate.when().phase(),
            language.of("gate"),
            ifAdjusted(gate.when()),
            List.of());
    return stage(tick(context, "passed", language.of("ask.gate")));
  }

  private static StageItems stage(Item gate) {
    return new StageItems(null, List.of(), null, Map.of(0, gate), List.of(), null, Map.of());
  }

  /** Gates with what they stop, every value of output after them; with none one is only a tick. */
  private List<StageItems> withStops(List<StageItems> stages) {
    List<StageItems> made = new ArrayList<>(stages);
    List<String> stops = new ArrayList<>();
    for (int i = made.size() - 1; i >= 0; i--) {
      if (plan.stages().get(i) instanceof Stage.Run run && run.output() != Delivery.OFF) {
        List<String> own = new ArrayList<>();
        for (StageItems.PointItems point : made.get(i).points()) {
          point.measured().forEach(item -> own.add(item.id()));
        }
        stops.addAll(0, own);
      } else if (plan.stages().get(i) instanceof Stage.Gate) {
        Item gate = Objects.requireNonNull(made.get(i).before().get(0));
        @Nullable List<String> stopped = stops.isEmpty() ? null : List.copyOf(stops);
        made.set(i, stage(new Item.Tick(gate.head(), stopped)));
      }
    }
    return made;
  }

  private List<Item.Condition> ifAdjusted(Stage.When when) {
    List<Item.Condition> conditions = new ArrayList<>();
    when.adjusted().forEach(adjustment -> conditions.add(madeIs(adjustment)));
    return List.copyOf(conditions);
  }

  private Item.Condition madeIs(String adjustment) {
    return new Item.Condition(adjustment + "/adjusted", List.of(language.of("yes")));
  }

  @Override
  public StageItems start(Stage.Start start) {
    Context context = new Context(SHEET, null, language.of("start"), List.of(), List.of());
    return steps(null, context, List.of(start.ready()));
  }

  @Override
  public StageItems end(Stage.End end) {
    return steps(
        null, new Context(SHEET, null, language.of("end"), List.of(), List.of()), end.stays());
  }

  @Override
  public StageItems clear(Stage.Clear clear) {
    Stage.When when = clear.when();
    Context context =
        new Context(
            clear.before() == null ? SHEET : clear.before(),
            when.phase(),
            language.of("clear"),
            ifAdjusted(when),
            chosen(when.condition()));
    List<Item> moves = new ArrayList<>();
    clear.moves().forEach(move -> moves.add(moved(context, move)));
    return new StageItems(null, moves, null, Map.of(), List.of(), null, Map.of());
  }

  // ---- steps ----

  /** What the items of one stage have in common. */
  private record Context(
      String prefix,
      @Nullable String phase,
      String place,
      List<Item.Condition> applies,
      List<Item.Condition> when) {}

  private Item.Head head(Context context, String prefix, String name, String title) {
    return new Item.Head(
        ids.of(prefix, name), title, context.phase, context.place, context.applies, context.when);
  }

  private Item tick(Context context, String name, String title) {
    return new Item.Tick(head(context, context.prefix, name, title));
  }

  private Item moved(Context context, Move move) {
    String kind = move.kind().word();
    return tick(context, kind + "-" + move.lead().name().text(), move.text(language));
  }

  private Map<Integer, Item> asked(Context context, List<PlanStep> steps) {
    return asked(context, context.prefix, steps);
  }

  private Map<Integer, Item> asked(Context context, String prefix, List<PlanStep> steps) {
    Map<Integer, Item> asked = new TreeMap<>();
    for (int i = 0; i < steps.size(); i++) {
      Item item = item(context, prefix, steps.get(i));
      if (item != null) {
        asked.put(i, item);
      }
    }
    return asked;
  }

  private @Nullable Item item(Context context, String prefix, PlanStep step) {
    String text = step.text(language);
    if (step.act() instanceof Act.Ready) {
      return new Item.Tick(head(context, prefix, "ready", text));
    } else if (step.act() instanceof Act.Confirm confirm) {
      String name = confirm.name() == null ? ids.next(prefix, "confirm") : confirm.name();
      return new Item.Tick(head(context, prefix, name, text));
    } else if (step.act() instanceof Act.Noted noted) {
      return recorded(head(context, prefix, noted.name(), text), noted);
    } else if (step.act() instanceof Act.Choose choose) {
      Item.Head head = head(context, prefix, choose.name(), text);
      choices.put(choose.name(), head.id());
      return new Item.Choice(head, choose.outcomes(), choose.pass());
    }
    return null;
  }

  /** A limit without a unit asks for a plain number. */
  private static Item.Recorded recorded(Item.Head head, Act.Noted noted) {
    RecordLimit limit = noted.limit();
    return limit == null
        ? new Item.Recorded(head, ucum(noted.unit()), null)
        : new Item.Recorded(
            head, limit.unit().ucum(), new Item.Accepts(limit.lower(), limit.upper()));
  }

  /** Null for null. */
  private static @Nullable String ucum(@Nullable String printed) {
    return printed == null ? null : Objects.requireNonNull(Units.recorded(printed), printed).ucum();
  }

  private StageItems.PointItems point(Stage.Run run, Context context, Point point) {
    List<Item.Measured> items = new ArrayList<>();
    Item.Head head =
        new Item.Head("", "", context.phase, context.place, context.applies, context.when);
    point.readings().forEach(r -> items.add(measured.reading(run, point, r, head)));
    point.limits().forEach(l -> items.add(measured.limited(run, point, l, head)));
    items.forEach(item -> ids.take(item.id()));
    return new StageItems.PointItems(asked(context, point.id(), point.steps()), items);
  }
}
