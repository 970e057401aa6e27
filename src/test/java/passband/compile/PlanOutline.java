package passband.compile;

import java.util.List;
import passband.limit.Limit;
import passband.plan.Act;
import passband.plan.Plan;
import passband.plan.PlanStep;
import passband.plan.Point;
import passband.plan.Stage;

/**
 * A plan written out for a person to read and a test to compare: stages, moves, steps, points,
 * limits.
 */
public final class PlanOutline implements Stage.Visitor<Void> {
  private final StringBuilder out = new StringBuilder();

  private PlanOutline() {}

  /** Everything but the title page. */
  public static String of(Plan plan) {
    PlanOutline outline = new PlanOutline();
    plan.stages().forEach(stage -> stage.accept(outline));
    return outline.out.toString();
  }

  private void line(String indent, String text) {
    out.append(indent).append(text).append('\n');
  }

  private void steps(String indent, List<PlanStep> steps) {
    steps.forEach(
        s ->
            line(
                indent,
                s.kind().word()
                    + ": "
                    + s.text()
                    + (s.act() instanceof Act.Noted n && n.unit() != null
                        ? " [" + n.unit() + "]"
                        : "")));
  }

  @Override
  public Void section(Stage.Section section) {
    Stage.When when = new Stage.When(null, section.condition());
    line("", "section " + section.name() + " \"" + section.title() + "\"" + onlyIf(when));
    steps("  ", section.steps());
    return null;
  }

  @Override
  public Void gate(Stage.Gate gate) {
    line("", "gate " + gate.id() + " \"" + gate.text() + "\"" + onlyIf(gate.when()));
    return null;
  }

  @Override
  public Void run(Stage.Run run) {
    String outlet = run.outlet() == null ? "no outlet" : run.outlet().title();
    line(
        "",
        "run "
            + run.test()
            + " on "
            + outlet
            + (run.phase() == null ? "" : ", " + run.phase())
            + onlyIf(run.when()));
    run.moves().forEach(m -> line("  ", m.text()));
    if (run.state() != null) {
      line("  ", "enter: " + run.state().enter());
    }
    steps("  before ", run.before());
    run.points().forEach(this::point);
    if (run.state() != null) {
      line("  ", "leave: " + run.state().leave());
    }
    steps("  after ", run.after());
    return null;
  }

  private void point(Point point) {
    String on = point.onTime() == null ? "" : ", on " + point.onTime() + " s";
    String rest = point.rest() == null ? "" : ", rest " + point.rest() + " s";
    line("  ", point.id() + on + rest);
    steps("    ", point.steps());
    point
        .readings()
        .forEach(r -> line("    ", "read " + r.quantity() + " in " + r.unit().printed()));
    point.limits().forEach(l -> line("    ", limit(l)));
  }

  private static String limit(Limit limit) {
    String accept =
        limit.accept().equals(limit.printed()) ? "" : ", accept " + side(limit, limit.accept());
    return limit.quantity()
        + ": "
        + side(limit, limit.printed())
        + " "
        + limit.unit().printed()
        + accept
        + ", "
        + limit.source().word();
  }

  private static String side(Limit limit, Limit.Rounded rounded) {
    String low = rounded.lower() == null ? "open" : limit.text(rounded.lower());
    String high = rounded.upper() == null ? "open" : limit.text(rounded.upper());
    return low + " … " + high;
  }

  @Override
  public Void adjust(Stage.Adjust adjust) {
    line(
        "",
        "adjust "
            + adjust.name()
            + " \""
            + adjust.title()
            + "\", affects "
            + String.join(", ", adjust.affects()));
    steps("  ", adjust.steps());
    return null;
  }

  @Override
  public Void start(Stage.Start start) {
    line("", "start");
    steps("  ", List.of(start.ready()));
    return null;
  }

  @Override
  public Void end(Stage.End end) {
    line("", "end");
    steps("  ", end.stays());
    return null;
  }

  private static String onlyIf(Stage.When when) {
    Stage.Option option = when.condition().option();
    return (when.adjusted().isEmpty() ? "" : ", only if " + String.join(" or ", when.adjusted()))
        + (option == null
            ? ""
            : ", only where " + option.choice() + " is " + String.join(" or ", option.is()));
  }

  @Override
  public Void clear(Stage.Clear clear) {
    String before = clear.before() == null ? "" : " before " + clear.before();
    line("", "clear" + before + onlyIf(clear.when()));
    clear.moves().forEach(m -> line("  ", m.text()));
    return null;
  }
}
