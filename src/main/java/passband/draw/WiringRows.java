package passband.draw;

import static passband.draw.WiringGrid.EDGE;
import static passband.draw.WiringGrid.GAP;
import static passband.draw.WiringGrid.LINE;
import static passband.draw.WiringGrid.SIZE;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Predicate;
import passband.model.Terminal;
import passband.plan.Wire;

/** Where the terminals and leads of a wiring drawing are, from top to bottom, under headings. */
final class WiringRows {
  private final WiringEnds ends;
  private final Bridges bridges;
  private final WiringGrid grid;
  private final WiringOrder order;
  private final Layers layers;
  private final Map<String, Double> heights = new LinkedHashMap<>();
  private final Map<Wire, Double> rows = new IdentityHashMap<>();
  private double leftY;
  private double rightY;
  private final List<UnitPanel> panels = new ArrayList<>();

  WiringRows(WiringEnds ends, Bridges bridges, WiringGrid grid, Layers layers) {
    this.ends = ends;
    this.bridges = bridges;
    this.grid = grid;
    this.layers = layers;
    this.order = WiringOrder.best(ends.left(), ends.right(), ends.wires());
    this.leftY = heading(ends.generator(), false, EDGE + 4);
    this.rightY = EDGE;
    placeRows();
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
    panels.add(new UnitPanel(jack.owner(), top));
    rightY = heading(jack.ownerTitle(), true, top + 4);
  }

  private double heading(String text, boolean analyzer, double top) {
    double y = top;
    double x = bridges.headingX(grid, analyzer);
    double width = bridges.headingWidth(grid, analyzer);
    for (String line : TextWidths.wrapped(text, width, SIZE, true)) {
      y += LINE;
      layers.text(x, y, SIZE, true, Shape.Anchor.MIDDLE, line);
    }
    return y + 6;
  }

  private void placeRows() {
    boolean apart = order.crosses(ends.wires()) && order.units() > 1;
    String owner = null;
    for (Terminal terminal : order.left()) {
      if (!terminal.owner().equals(owner)) {
        owner = terminal.owner();
        outletHeading(terminal.ownerTitle());
      }
      placeLeft(terminal, apart);
    }
    for (Terminal jack : order.right()) {
      if (heights.containsKey(jack.id())) {
        toItsLeads(jack);
      } else {
        panel(jack);
        rightY = apart ? atItsLeads(jack) : alone(jack, rightY);
      }
    }
    panels.get(panels.size() - 1).bottom = bottom() + 4;
  }

  /** A jack of several leads stands between them, where nothing is under it. */
  private void toItsLeads(Terminal jack) {
    boolean plain = bridges.on(true).stream().noneMatch(b -> b.isAt(jack));
    if (plain && panels.size() == 1 && isReached(jack)) {
      heights.put(jack.id(), mean(w -> WiringOrder.rightEnd(w).same(jack)));
    }
  }

  /** A jack as low as its leads, or lower where those above it need the room. */
  private double atItsLeads(Terminal jack) {
    double half = half(jack);
    double y = rightY + half;
    if (isReached(jack)) {
      y = Math.max(y, mean(w -> WiringOrder.rightEnd(w).same(jack)));
    }
    return alone(jack, y - half);
  }

  /** Whether a lead from the generator goes to a jack. */
  private boolean isReached(Terminal jack) {
    return rows.keySet().stream().anyMatch(w -> WiringOrder.rightEnd(w).same(jack));
  }

  private double mean(Predicate<Wire> which) {
    double sum = 0;
    int count = 0;
    for (Wire wire : ends.wires()) {
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
            List.of(new Shape.At(EDGE, leftY), new Shape.At(grid.left(), leftY)),
            0.8,
            Palette.INK,
            List.of()));
    for (String line : TextWidths.wrapped(title, bridges.headingWidth(grid, false), SIZE, true)) {
      leftY += LINE + 2;
      layers.text(EDGE + 6, leftY, SIZE, true, Shape.Anchor.START, line);
    }
    leftY += 4;
  }

  /**
   * A terminal of the generator with its leads, and their jacks beside them.
   *
   * @param apart whether the jacks are placed later
   */
  private void placeLeft(Terminal terminal, boolean apart) {
    List<Wire> here = order.from(terminal, ends.wires());
    if (here.isEmpty()) {
      leftY = alone(terminal, leftY);
      return;
    }
    for (Wire wire : here) {
      Terminal jack = WiringOrder.rightEnd(wire);
      double half = half(terminal);
      if (!apart) {
        placeRightBefore(jack);
      }
      if (!apart && !heights.containsKey(jack.id())) {
        panel(jack);
        half = Math.max(half, half(jack));
      }
      double above = Math.max(half, nameHeight(wire) + 11);
      double y = Math.max(leftY, rightY) + above;
      rows.put(wire, y);
      leftY = y + Math.max(half, 9);
      if (!apart) {
        rightY = leftY;
        boolean first = heights.putIfAbsent(jack.id(), y) == null;
        rightY = first ? after(jack, rightY) : rightY;
      }
    }
    heights.put(terminal.id(), mean(w -> WiringOrder.leftEnd(w).same(terminal)));
    leftY = after(terminal, leftY);
  }

  private double nameHeight(Wire wire) {
    return WiringStrands.label(ends.language(), wire.lead(), grid).size() * LINE;
  }

  /** Jacks without leads that the order puts above this one. */
  private void placeRightBefore(Terminal jack) {
    if (heights.containsKey(jack.id())) {
      return;
    }
    for (int i = 0; i < WiringOrder.index(order.right(), jack); i++) {
      Terminal above = order.right().get(i);
      boolean waits =
          ends.wires().stream()
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
        int lines = bridge.lines(bridges.nameWidth(grid, terminal.onAnalyzer())).size();
        bridge.labelAt(bottom, lines);
        bottom += lines * LINE + 4;
      }
    }
    return bottom;
  }

  private double half(Terminal terminal) {
    return lines(terminal).size() * LINE / 2.0 + 1;
  }

  /** The printed name of a terminal, in lines as wide as there is room. */
  List<String> lines(Terminal terminal) {
    double width = bridges.nameWidth(grid, terminal.onAnalyzer());
    return TextWidths.wrapped(ends.name(terminal), width, SIZE, false);
  }
}
