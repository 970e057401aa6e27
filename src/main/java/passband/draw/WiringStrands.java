package passband.draw;

import static passband.draw.WiringGrid.LINE;
import static passband.draw.WiringGrid.SIZE;

import java.util.List;
import passband.model.Lead;
import passband.plan.Plan;
import passband.plan.Wire;
import passband.words.Language;

/** The leads of a wiring drawing, and what joins terminals of the same side. */
final class WiringStrands {
  private final Language language;
  private final List<Lead> leads;
  private final List<Wire> wires;
  private final Bridges bridges;
  private final WiringGrid grid;
  private final WiringRows rows;
  private final Layers layers;

  /**
   * @param leads in the order of their letters
   */
  WiringStrands(
      Language language,
      List<Lead> leads,
      List<Wire> wires,
      Bridges bridges,
      WiringGrid grid,
      WiringRows rows,
      Layers layers) {
    this.language = language;
    this.leads = leads;
    this.wires = wires;
    this.bridges = bridges;
    this.grid = grid;
    this.rows = rows;
    this.layers = layers;
  }

  void draw() {
    wires.stream().filter(WiringOrder::isStraight).forEach(this::lead);
    for (Bridge bridge : bridges.all()) {
      if (bridge.wire() != null) {
        sameSideWire(bridge, bridge.wire());
      }
    }
    bridges.all().stream().filter(b -> b.wire() == null).forEach(this::inside);
  }

  /** The letter that the lead has on the sheet. */
  private String letter(Lead lead) {
    return Plan.letter(leads.indexOf(lead));
  }

  /** The lines of a lead's name over it. */
  static List<String> label(Language language, Lead lead, WiringGrid grid) {
    return TextWidths.wrapped(printedName(language, lead), grid.leadWidth(), SIZE, false);
  }

  /** The printed name, with the colour where the name does not say it. */
  static String printedName(Language language, Lead lead) {
    String colour = lead.colour() == null ? "" : language.term(lead.colour());
    boolean said = colour.isEmpty() || lead.title().contains(colour);
    return said ? lead.title() : lead.title() + ", " + colour;
  }

  /** The printed name with the colour in any case, for the description of the drawing. */
  static String withColour(Language language, Lead lead) {
    String colour = lead.colour() == null ? "" : " (" + language.term(lead.colour()) + ")";
    return lead.title() + colour;
  }

  private void lead(Wire wire) {
    double from = rows.height(WiringOrder.leftEnd(wire));
    double to = rows.height(WiringOrder.rightEnd(wire));
    double row = rows.row(wire);
    List<Shape.At> points =
        List.of(
            new Shape.At(grid.left(), from),
            new Shape.At(grid.left() + 12, row),
            new Shape.At(grid.right() - 12, row),
            new Shape.At(grid.right(), to));
    strand(points, wire.lead());
    List<String> lines = label(language, wire.lead(), grid);
    double middle = (grid.left() + grid.right()) / 2;
    double y = row - 11 - (lines.size() - 1) * LINE;
    for (String line : lines) {
      layers.text(middle, y, SIZE, false, Shape.Anchor.MIDDLE, line);
      y += LINE;
    }
    badge(middle, row, letter(wire.lead()));
  }

  /** A line edged in ink, so that a white lead is seen, in the lead's colour and style. */
  private void strand(List<Shape.At> points, Lead lead) {
    List<Double> dash = LineStyle.of(leads.indexOf(lead) + 1);
    layers.behind(new Shape.Line(points, 5, Palette.INK, dash));
    layers.behind(new Shape.Line(points, 3.2, Palette.of(lead.colour()), dash));
  }

  private void badge(double x, double y, String letter) {
    layers.before(new Shape.Circle(x, y, 7.5, Palette.PAPER, Palette.INK, 1.2));
    layers.text(x, y + 4, SIZE, true, Shape.Anchor.MIDDLE, letter);
  }

  private void sameSideWire(Bridge bridge, Wire wire) {
    double x = bridges.laneX(grid, bridge);
    strand(bracket(bridge, x), wire.lead());
    bridgeLabel(bridge);
    badge(x, bridge.middle(), letter(wire.lead()));
  }

  /** A load or a meter of the analyzer. */
  private void inside(Bridge bridge) {
    double x = bridges.laneX(grid, bridge);
    double y = bridge.middle();
    layers.behind(new Shape.Line(bracket(bridge, x), 1.4, Palette.INK, List.of()));
    if (bridge.isLoad()) {
      layers.before(new Shape.Rect(x - 4.5, y - 10, 9, 20, Palette.PAPER, Palette.INK, 1.6));
    } else {
      layers.before(new Shape.Circle(x, y, 7.5, Palette.PAPER, Palette.INK, 1.6));
      pointer(x, y);
    }
    bridgeLabel(bridge);
  }

  /** The pointer of a meter: a letter would be taken for a lead's. */
  private void pointer(double x, double y) {
    layers.before(line(new Shape.At(x - 4, y + 4), new Shape.At(x + 4, y - 4)));
    layers.before(line(new Shape.At(x + 4, y - 4), new Shape.At(x + 4, y)));
    layers.before(line(new Shape.At(x + 4, y - 4), new Shape.At(x, y - 4)));
  }

  private static Shape.Line line(Shape.At from, Shape.At to) {
    return new Shape.Line(List.of(from, to), 1.4, Palette.INK, List.of());
  }

  private List<Shape.At> bracket(Bridge bridge, double x) {
    double edge = bridge.onAnalyzer() ? grid.right() : grid.left();
    double from = rows.height(bridge.from());
    double to = rows.height(bridge.to());
    return List.of(
        new Shape.At(edge, from),
        new Shape.At(x, from),
        new Shape.At(x, to),
        new Shape.At(edge, to));
  }

  private void bridgeLabel(Bridge bridge) {
    boolean analyzer = bridge.onAnalyzer();
    Shape.Anchor anchor = analyzer ? Shape.Anchor.START : Shape.Anchor.END;
    double y = bridge.label() - 2;
    for (String line : bridge.lines(bridges.nameWidth(grid, analyzer))) {
      y += LINE;
      layers.text(bridges.nameX(grid, analyzer), y, SIZE, false, anchor, line);
    }
  }
}
