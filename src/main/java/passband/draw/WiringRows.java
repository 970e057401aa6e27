package passband.draw;

import static passband.draw.WiringGrid.EDGE;
import static passband.draw.WiringGrid.GAP;
import static passband.draw.WiringGrid.LEFT;
import static passband.draw.WiringGrid.LINE;
import static passband.draw.WiringGrid.RIGHT;
import static passband.draw.WiringGrid.SIZE;
import static passband.draw.WiringGrid.WIDTH;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Predicate;
import passband.model.Analyzer;
import passband.model.Terminal;
import passband.plan.Plan;
import passband.plan.Wire;
import passband.words.Language;

/** Where the terminals and leads of a wiring drawing are, from top to bottom, under headings. */
final class WiringRows {
  private final Language language;
  private final List<Wire> wires;
  private final Bridges bridges;
  private final WiringOrder order;
  private final Layers layers;
  private final Map<String, Double> heights = new LinkedHashMap<>();
  private final Map<Wire, Double> rows = new IdentityHashMap<>();
  private double leftY;
  private double rightY;
  private final List<UnitPanel> panels = new ArrayList<>();

  WiringRows(Plan plan, List<Wire> wires, Bridges bridges, Layers layers) {
    this.language = plan.language();
    this.wires = wires;
    this.bridges = bridges;
    this.layers = layers;
    this.order = WiringOrder.best(leftTerminals(plan), rightTerminals(plan), wires);
    this.leftY = heading(plan.device().title(), EDGE, LEFT, EDGE + 4);
    this.rightY = EDGE;
    placeRows();
  }

  /** Every jack of the instruments that a wire goes to; of the first, where none is used. */
  private List<Terminal> rightTerminals(Plan plan) {
    List<Analyzer> units = plan.instruments().units();
    List<Analyzer> used =
        units.stream().filter(u -> u.terminals().stream().anyMatch(this::isUsed)).toList();
    return (used.isEmpty() ? units.subList(0, 1) : used)
        .stream().flatMap(u -> u.terminals().stream()).toList();
  }

  /** Every terminal of the outlets that a wire goes to, outlet by outlet. */
  private List<Terminal> leftTerminals(Plan plan) {
    return plan.device().outlets().stream()
        .filter(o -> o.terminals().stream().anyMatch(this::isUsed))
        .flatMap(o -> o.terminals().stream())
        .toList();
  }

  /** Whether a wire goes to a terminal. */
  boolean isUsed(Terminal terminal) {
    return wires.stream().anyMatch(w -> w.from().same(terminal) || w.to().same(terminal));
  }

  /** The generator's terminals from top to bottom. */
  List<Terminal> left() {
    return order.left();
  }

  /** The analyzer's jacks from top to bottom. */
  List<Terminal> right() {
    return order.right();
  }

  /** The middle of a terminal. */
  double height(Terminal terminal) {
    return Objects.requireNonNull(heights.get(terminal.id()), terminal.id());
  }

  /** The middle of a lead from one side to the other. */
  double row(Wire wire) {
    return Objects.requireNonNull(rows.get(wire), "a wire on one side");
  }

  /** Where both sides have ended. */
  double bottom() {
    return Math.max(leftY, rightY);
  }

  /** The panels of the instruments, from top to bottom. */
  List<UnitPanel> panels() {
    return panels;
  }

  /** A part of an instrument's front that the drawing has in one piece. */
  static final class UnitPanel {
    private final String owner;
    private final double top;
    private double bottom;

    private UnitPanel(String owner, double top) {
      this.owner = owner;
      this.top = top;
    }

    double top() {
      return top;
    }

    double bottom() {
      return bottom;
    }
  }

  /** Begins the panel of the jack's instrument below the one before, unless it is that one. */
  private void panel(Terminal jack) {
    UnitPanel last = panels.isEmpty() ? null : panels.get(panels.size() - 1);
    if (last != null && last.owner.equals(jack.owner())) {
      return;
    }
    double top = EDGE;
    if (last != null) {
      last.bottom = rightY + 4;
      top = last.bottom + 6;
    }
    boolean again = panels.stream().anyMatch(panel -> panel.owner.equals(jack.owner()));
    panels.add(new UnitPanel(jack.owner(), top));
    String title = again ? language.of("draw.continued", jack.ownerTitle()) : jack.ownerTitle();
    rightY = heading(title, RIGHT, WIDTH - EDGE, top + 4);
  }

  private double heading(String text, double from, double to, double top) {
    double y = top;
    for (String line : TextWidths.wrapped(text, to - from - 10, SIZE, true)) {
      y += LINE;
      layers.text((from + to) / 2, y, SIZE, true, Shape.Anchor.MIDDLE, line);
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
        panel(jack);
        rightY = alone(jack, rightY);
      } else if (panels.size() == 1
          && rows.keySet().stream().anyMatch(w -> WiringOrder.rightEnd(w).same(jack))) {
        heights.put(jack.id(), mean(w -> WiringOrder.rightEnd(w).same(jack)));
      }
    }
    panels.get(panels.size() - 1).bottom = bottom() + 4;
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
    layers.behind(
        new Shape.Line(
            List.of(new Shape.At(EDGE, leftY), new Shape.At(LEFT, leftY)),
            0.8,
            Palette.INK,
            List.of()));
    for (String line : TextWidths.wrapped(title, LEFT - 14, SIZE, true)) {
      leftY += LINE + 2;
      layers.text(EDGE + 6, leftY, SIZE, true, Shape.Anchor.START, line);
    }
    leftY += 4;
  }

  private void placeLeft(Terminal terminal) {
    List<Wire> here =
        wires.stream()
            .filter(w -> WiringOrder.isStraight(w) && WiringOrder.leftEnd(w).same(terminal))
            .toList();
    if (here.isEmpty()) {
      leftY = alone(terminal, leftY);
      return;
    }
    for (Wire wire : here) {
      Terminal jack = WiringOrder.rightEnd(wire);
      placeRightBefore(jack);
      if (!heights.containsKey(jack.id())) {
        panel(jack);
      }
      double half = Math.max(half(terminal), heights.containsKey(jack.id()) ? 0 : half(jack));
      double above = Math.max(half, WiringStrands.label(language, wire.lead()).size() * LINE + 11);
      double y = Math.max(leftY, rightY) + above;
      rows.put(wire, y);
      leftY = y + Math.max(half, 9);
      rightY = leftY;
      heights.putIfAbsent(jack.id(), y);
      rightY = after(jack, rightY);
    }
    heights.put(terminal.id(), mean(w -> WiringOrder.leftEnd(w).same(terminal)));
    leftY = after(terminal, leftY);
  }

  /** Jacks without leads that the order puts above this one. */
  private void placeRightBefore(Terminal jack) {
    if (heights.containsKey(jack.id())) {
      return;
    }
    for (int i = 0; i < WiringOrder.index(order.right(), jack); i++) {
      Terminal above = order.right().get(i);
      boolean waits =
          wires.stream()
              .anyMatch(w -> WiringOrder.isStraight(w) && WiringOrder.rightEnd(w).same(above));
      if (!waits && !heights.containsKey(above.id())) {
        panel(above);
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
    for (Bridge bridge : bridges.on(terminal.onAnalyzer())) {
      boolean first =
          bridge.isAt(terminal)
              && heights.containsKey(bridge.from().id()) != heights.containsKey(bridge.to().id());
      if (first) {
        bridge.labelAt(bottom);
        bottom += bridge.lines(bridges.labelWidth(terminal.onAnalyzer())).size() * LINE + 4;
      }
    }
    return bottom;
  }

  private double half(Terminal terminal) {
    return lines(terminal).size() * LINE / 2.0 + 1;
  }

  /** The printed name of a terminal, in lines as wide as there is room. */
  List<String> lines(Terminal terminal) {
    String text =
        isUsed(terminal) ? terminal.title() : language.of("draw.is-empty", terminal.title());
    return TextWidths.wrapped(text, bridges.labelWidth(terminal.onAnalyzer()), SIZE, false);
  }
}
