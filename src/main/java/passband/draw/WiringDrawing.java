package passband.draw;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import passband.model.Analyzer;
import passband.model.Lead;
import passband.model.Terminal;
import passband.plan.Plan;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.sequence.Seq;

/**
 * How a setup is wired on an outlet: the generator's terminals at the left, the analyzer's jacks at
 * the right, each lead with its number, printed name, colour and line style between them. 90 mm
 * wide, as high as it needs to be.
 */
public final class WiringDrawing {
  private static final double WIDTH = 360;
  private static final double LEFT = 114;
  private static final double RIGHT = 246;
  private static final double EDGE = 2;
  private static final double LANE = 15;
  private static final double DOT = 4.5;
  private static final double SIZE = 11;
  private static final double LINE = 13;
  private static final double GAP = 5;

  private final Plan plan;
  private final List<Lead> leads;
  private final List<Wire> wires;
  private final WiringOrder order;
  private final Map<String, Double> heights = new LinkedHashMap<>();
  private final Map<Wire, Double> rows = new IdentityHashMap<>();
  private final List<Shape> behind = new ArrayList<>();
  private final List<Shape> shapes = new ArrayList<>();
  private final List<Bridge> bridges;
  private double leftY;
  private double rightY;

  private WiringDrawing(Plan plan, Stage.Run run) {
    this.plan = plan;
    this.leads = plan.usedLeads();
    this.wires = run.setup().wires();
    this.bridges = Bridge.of(plan.analyzer(), wires);
    this.order = WiringOrder.best(leftTerminals(), plan.analyzer().terminals(), wires);
  }

  /** The drawing of a run that has a setup. */
  public static Drawing of(Plan plan, Stage.Run run) {
    String outlet = run.outlet() == null ? "" : "." + run.outlet().name().text();
    String on = run.outlet() == null ? "" : " on " + run.outlet().title();
    return new WiringDrawing(plan, run)
        .draw(run.setup().name().text() + outlet, "Wiring: " + run.setup().title() + on);
  }

  /** Every terminal of the outlets that a wire goes to, outlet by outlet. */
  private List<Terminal> leftTerminals() {
    return Seq.of(plan.device().outlets())
        .filter(o -> Seq.of(o.terminals()).anyMatch(this::isUsed))
        .flatMap(o -> Seq.of(o.terminals()))
        .toList();
  }

  private boolean isUsed(Terminal terminal) {
    return Seq.of(wires).anyMatch(w -> w.from().same(terminal) || w.to().same(terminal));
  }

  private Drawing draw(String name, String title) {
    leftY = heading(plan.device().title(), EDGE, LEFT);
    rightY = heading(plan.analyzer().title(), RIGHT, WIDTH - EDGE);
    placeRows();
    double bottom = Math.max(leftY, rightY) + 4;
    Seq.of(wires).filter(WiringOrder::isStraight).forEach(this::lead);
    sameSideWires();
    bridges();
    order.left().forEach(t -> terminal(t, true));
    order.right().forEach(t -> terminal(t, false));
    panel(EDGE, LEFT, bottom);
    panel(RIGHT, WIDTH - EDGE, bottom);
    List<Shape> all = new ArrayList<>(behind);
    all.addAll(shapes);
    return new Drawing(name, title, description(), WIDTH, legend(all, bottom), all);
  }

  // ---- rows ----

  private double heading(String text, double from, double to) {
    double y = EDGE + 4;
    for (String line : TextWidths.wrapped(text, to - from - 10, SIZE, true)) {
      y += LINE;
      text((from + to) / 2, y, SIZE, true, Shape.Anchor.MIDDLE, line);
    }
    return y + 6;
  }

  private void placeRows() {
    String owner = null;
    for (Terminal terminal : order.left()) {
      if (!terminal.owner().equals(owner)) {
        owner = terminal.owner();
        outletHeading(terminal.ownerTitle());
      }
      placeLeft(terminal);
    }
    for (Terminal jack : order.right()) {
      if (!heights.containsKey(jack.id())) {
        rightY = alone(jack, rightY);
      } else if (Seq.of(rows.keySet()).anyMatch(w -> WiringOrder.rightEnd(w).same(jack))) {
        heights.put(jack.id(), mean(w -> WiringOrder.rightEnd(w).same(jack)));
      }
    }
  }

  private double mean(Predicate<Wire> which) {
    double sum = 0;
    int count = 0;
    for (Wire wire : wires) {
      if (rows.containsKey(wire) && which.test(wire)) {
        sum += rows.get(wire);
        count++;
      }
    }
    return sum / count;
  }

  private void outletHeading(String title) {
    leftY += 3;
    behind.add(
        new Shape.Line(
            List.of(new Shape.At(EDGE, leftY), new Shape.At(LEFT, leftY)),
            0.8,
            Palette.INK,
            List.of()));
    for (String line : TextWidths.wrapped(title, LEFT - 14, SIZE + 2, true)) {
      leftY += LINE + 2;
      text(EDGE + 6, leftY, SIZE + 2, true, Shape.Anchor.START, line);
    }
    leftY += 4;
  }

  private void placeLeft(Terminal terminal) {
    List<Wire> here =
        Seq.of(wires)
            .filter(w -> WiringOrder.isStraight(w) && WiringOrder.leftEnd(w).same(terminal))
            .toList();
    if (here.isEmpty()) {
      leftY = alone(terminal, leftY);
      return;
    }
    for (Wire wire : here) {
      Terminal jack = WiringOrder.rightEnd(wire);
      placeRightBefore(jack);
      double half = Math.max(half(terminal), heights.containsKey(jack.id()) ? 0 : half(jack));
      double above = Math.max(half, label(wire.lead()).size() * LINE + 11);
      double y = Math.max(leftY, rightY) + above;
      rows.put(wire, y);
      leftY = y + Math.max(half, 9);
      rightY = leftY;
      heights.putIfAbsent(jack.id(), y);
    }
    heights.put(terminal.id(), mean(w -> WiringOrder.leftEnd(w).same(terminal)));
    leftY = after(terminal, leftY);
    rightY = after(WiringOrder.rightEnd(here.get(here.size() - 1)), rightY);
  }

  /** Jacks without leads that the order puts above this one. */
  private void placeRightBefore(Terminal jack) {
    if (heights.containsKey(jack.id())) {
      return;
    }
    for (int i = 0; i < WiringOrder.index(order.right(), jack); i++) {
      Terminal above = order.right().get(i);
      boolean waits =
          Seq.of(wires)
              .anyMatch(w -> WiringOrder.isStraight(w) && WiringOrder.rightEnd(w).same(above));
      if (!waits && !heights.containsKey(above.id())) {
        rightY = alone(above, rightY);
      }
    }
  }

  private double alone(Terminal terminal, double y) {
    double centre = y + half(terminal);
    heights.put(terminal.id(), centre);
    return after(terminal, centre + half(terminal));
  }

  /** Leaves room under a terminal for the name of what goes from it to another on its side. */
  private double after(Terminal terminal, double y) {
    double bottom = y + GAP - 3;
    for (Bridge bridge : sideBridges(terminal.onAnalyzer())) {
      boolean first =
          bridge.isAt(terminal)
              && heights.containsKey(bridge.from().id()) != heights.containsKey(bridge.to().id());
      if (first) {
        bridge.labelAt(bottom);
        bottom += bridge.lines(labelWidth(terminal.onAnalyzer())).size() * LINE + 4;
      }
    }
    return bottom;
  }

  private double half(Terminal terminal) {
    return lines(terminal).size() * LINE / 2.0 + 1;
  }

  private List<String> lines(Terminal terminal) {
    String text = terminal.title() + (isUsed(terminal) ? "" : " (empty)");
    return TextWidths.wrapped(text, labelWidth(terminal.onAnalyzer()), SIZE, false);
  }

  private double labelWidth(boolean analyzer) {
    return LEFT - EDGE - 13 - LANE * lanes(analyzer);
  }

  private int lanes(boolean analyzer) {
    return sideBridges(analyzer).size();
  }

  /** What joins two terminals of one side: links, and the analyzer's own load and meters. */
  private List<Bridge> sideBridges(boolean analyzer) {
    return Seq.of(bridges).filter(b -> b.from().onAnalyzer() == analyzer).toList();
  }

  // ---- leads ----

  private int number(Lead lead) {
    return leads.indexOf(lead) + 1;
  }

  private static List<String> label(Lead lead) {
    return TextWidths.wrapped(named(lead), RIGHT - LEFT - 16, SIZE, false);
  }

  /** The printed name, with the colour where the name does not say it. */
  private static String named(Lead lead) {
    boolean said = lead.colour() == null || lead.title().contains(lead.colour());
    return said ? lead.title() : lead.title() + ", " + lead.colour();
  }

  private void lead(Wire wire) {
    double from = heights.get(WiringOrder.leftEnd(wire).id());
    double to = heights.get(WiringOrder.rightEnd(wire).id());
    double row = rows.get(wire);
    List<Shape.At> points =
        List.of(
            new Shape.At(LEFT, from),
            new Shape.At(LEFT + 12, row),
            new Shape.At(RIGHT - 12, row),
            new Shape.At(RIGHT, to));
    strand(points, wire.lead());
    List<String> lines = label(wire.lead());
    double y = row - 11 - (lines.size() - 1) * LINE;
    for (String line : lines) {
      text((LEFT + RIGHT) / 2, y, SIZE, false, Shape.Anchor.MIDDLE, line);
      y += LINE;
    }
    badge((LEFT + RIGHT) / 2, row, number(wire.lead()));
  }

  /** A line edged in ink, so that a white lead is seen, in the lead's colour and style. */
  private void strand(List<Shape.At> points, Lead lead) {
    List<Double> dash = LineStyle.of(number(lead));
    behind.add(new Shape.Line(points, 5, Palette.INK, dash));
    behind.add(new Shape.Line(points, 3.2, Palette.of(lead.colour()), dash));
  }

  private void badge(double x, double y, int number) {
    shapes.add(new Shape.Circle(x, y, 7.5, Palette.PAPER, Palette.INK, 1.2));
    text(x, y + 4, SIZE, true, Shape.Anchor.MIDDLE, Integer.toString(number));
  }

  // ---- what stays on one side ----

  private void sameSideWires() {
    for (Wire wire : wires) {
      if (!WiringOrder.isStraight(wire)) {
        Bridge bridge = Seq.of(bridges).filter(b -> b.wire() == wire).findFirst().orElseThrow();
        double x = laneX(bridge);
        List<Shape.At> points = bracket(bridge, x);
        strand(points, wire.lead());
        bridgeLabel(bridge);
        badge(x, middle(bridge), number(wire.lead()));
      }
    }
  }

  private void bridges() {
    for (Bridge bridge : bridges) {
      if (bridge.wire() == null) {
        double x = laneX(bridge);
        double y = middle(bridge);
        behind.add(new Shape.Line(bracket(bridge, x), 1.4, Palette.INK, List.of()));
        if (bridge.load()) {
          shapes.add(new Shape.Rect(x - 4.5, y - 10, 9, 20, Palette.PAPER, Palette.INK, 1.6));
        } else {
          shapes.add(new Shape.Circle(x, y, 7.5, Palette.PAPER, Palette.INK, 1.6));
          text(x, y + 4, SIZE, true, Shape.Anchor.MIDDLE, "A");
        }
        bridgeLabel(bridge);
      }
    }
  }

  private double laneX(Bridge bridge) {
    boolean analyzer = bridge.from().onAnalyzer();
    double away = 4 + LANE * (sideBridges(analyzer).indexOf(bridge) + 0.5) + 1;
    return analyzer ? RIGHT + away : LEFT - away;
  }

  private List<Shape.At> bracket(Bridge bridge, double x) {
    double edge = bridge.from().onAnalyzer() ? RIGHT : LEFT;
    double from = heights.get(bridge.from().id());
    double to = heights.get(bridge.to().id());
    return List.of(
        new Shape.At(edge, from),
        new Shape.At(x, from),
        new Shape.At(x, to),
        new Shape.At(edge, to));
  }

  private double middle(Bridge bridge) {
    return (heights.get(bridge.from().id()) + heights.get(bridge.to().id())) / 2;
  }

  private void bridgeLabel(Bridge bridge) {
    boolean analyzer = bridge.from().onAnalyzer();
    double y = bridge.label() - 2;
    for (String line : bridge.lines(labelWidth(analyzer))) {
      y += LINE;
      labelText(analyzer, y, line);
    }
  }

  private void labelText(boolean analyzer, double y, String line) {
    double away = 9 + LANE * lanes(analyzer);
    text(
        analyzer ? RIGHT + away : LEFT - away,
        y,
        SIZE,
        false,
        analyzer ? Shape.Anchor.START : Shape.Anchor.END,
        line);
  }

  // ---- terminals ----

  private void terminal(Terminal terminal, boolean left) {
    double x = left ? LEFT : RIGHT;
    double y = heights.get(terminal.id());
    String fill = isUsed(terminal) ? Palette.INK : Palette.PAPER;
    if (terminal.kind().carriesOutput()) {
      shapes.add(new Shape.Circle(x, y, DOT, fill, Palette.INK, 1.4));
    } else {
      shapes.add(new Shape.Rect(x - DOT, y - DOT, 2 * DOT, 2 * DOT, fill, Palette.INK, 1.4));
    }
    List<String> lines = lines(terminal);
    double base = y - (lines.size() - 1) * LINE / 2 + 4;
    for (String line : lines) {
      labelText(!left, base, line);
      base += LINE;
    }
  }

  private void panel(double from, double to, double bottom) {
    behind.add(
        0, new Shape.Rect(from, EDGE, to - from, bottom - EDGE, Palette.PANEL, Palette.INK, 1.4));
  }

  private double legend(List<Shape> all, double bottom) {
    double y = bottom + 16;
    double x = EDGE + 6;
    all.add(new Shape.Circle(x, y - 4, DOT, Palette.INK, Palette.INK, 1.4));
    all.add(legendText(x + 9, y, "carries output"));
    x += 102;
    all.add(new Shape.Rect(x - DOT, y - 4 - DOT, 2 * DOT, 2 * DOT, Palette.INK, Palette.INK, 1.4));
    all.add(legendText(x + 9, y, "contact or key"));
    x += 110;
    all.add(new Shape.Circle(x, y - 4, DOT, Palette.PAPER, Palette.INK, 1.4));
    all.add(legendText(x + 9, y, "leave empty"));
    return y + 6;
  }

  private static Shape legendText(double x, double y, String text) {
    return new Shape.Text(x, y, SIZE, false, Shape.Anchor.START, text);
  }

  private void text(
      double x, double y, double size, boolean bold, Shape.Anchor anchor, String text) {
    shapes.add(new Shape.Text(x, y, size, bold, anchor, text));
  }

  private String description() {
    StringBuilder said = new StringBuilder();
    for (Wire wire : wires) {
      said.append(said.isEmpty() ? "" : " ")
          .append(number(wire.lead()) + ": " + wire.lead().title())
          .append(wire.lead().colour() == null ? "" : " (" + wire.lead().colour() + ")")
          .append(" from " + place(wire.from()) + " to " + place(wire.to()) + ".");
    }
    return said.toString();
  }

  private static String place(Terminal terminal) {
    return terminal.ownerTitle() + ", " + terminal.title();
  }

  /** What joins two terminals of the same side. */
  private static final class Bridge {
    private final Terminal from;
    private final Terminal to;
    private final Wire wire;
    private final String name;
    private double label;

    private Bridge(Terminal from, Terminal to, Wire wire, String name) {
      this.from = from;
      this.to = to;
      this.wire = wire;
      this.name = name;
    }

    static List<Bridge> of(Analyzer analyzer, List<Wire> wires) {
      List<Bridge> bridges = new ArrayList<>();
      for (Wire wire : wires) {
        if (!WiringOrder.isStraight(wire)) {
          bridges.add(new Bridge(wire.from(), wire.to(), wire, named(wire.lead())));
        }
      }
      for (Analyzer.LoadBank load : analyzer.loads()) {
        inside(bridges, wires, load.from(), load.to(), "load");
      }
      for (Analyzer.Measure measure : analyzer.measures()) {
        if (measure.from() != null) {
          inside(bridges, wires, measure.from(), measure.to(), measure.quantity().printed());
        }
      }
      return bridges;
    }

    private static void inside(
        List<Bridge> bridges, List<Wire> wires, Terminal from, Terminal to, String name) {
      boolean there = Seq.of(bridges).anyMatch(b -> b.from.same(from) && b.to.same(to));
      if (!there && reached(wires, from) && reached(wires, to)) {
        bridges.add(new Bridge(from, to, null, name));
      }
    }

    private static boolean reached(List<Wire> wires, Terminal jack) {
      return Seq.of(wires).anyMatch(w -> w.from().same(jack) || w.to().same(jack));
    }

    boolean isAt(Terminal terminal) {
      return from.same(terminal) || to.same(terminal);
    }

    boolean load() {
      return wire == null && name.equals("load");
    }

    Terminal from() {
      return from;
    }

    Terminal to() {
      return to;
    }

    Wire wire() {
      return wire;
    }

    void labelAt(double y) {
      label = y;
    }

    double label() {
      return label;
    }

    List<String> lines(double width) {
      return TextWidths.wrapped(name, width, SIZE, false);
    }
  }
}
