package passband.draw;

import static passband.draw.WiringGrid.DOT;
import static passband.draw.WiringGrid.EDGE;
import static passband.draw.WiringGrid.LINE;
import static passband.draw.WiringGrid.SIZE;

import java.util.List;
import java.util.Objects;
import passband.model.Lead;
import passband.model.Terminal;
import passband.plan.Plan;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.words.Language;

/**
 * How a setup is wired on an outlet: the generator's terminals at the left, the instruments' jacks
 * at the right, each lead with its letter, printed name, colour and line style between them. 90 mm
 * wide, wider where a word needs it; as high as it needs to be.
 */
public final class WiringDrawing {
  private final List<Lead> leads;
  private final List<Wire> wires;
  private final Language language;
  private final Layers layers = new Layers();
  private final WiringEnds ends;
  private final Bridges bridges;
  private final WiringGrid grid;
  private final WiringRows rows;

  private WiringDrawing(Plan plan, Setup setup) {
    this.leads = plan.usedLeads();
    this.wires = setup.wires();
    this.language = plan.language();
    this.bridges = new Bridges(language, plan.instruments(), wires);
    this.ends = WiringEnds.of(plan, wires);
    this.grid = ends.grid(bridges);
    this.rows = new WiringRows(ends, bridges, grid, layers);
  }

  /** The drawing of a run that has a setup. */
  public static Drawing of(Plan plan, Stage.Run run) {
    Setup setup = Objects.requireNonNull(run.setup(), "a run without a setup");
    String outlet = run.outlet() == null ? "" : "." + run.outlet().name().text();
    String title =
        run.outlet() == null
            ? plan.language().of("draw.wiring", setup.title())
            : plan.language().of("draw.wiring.on", setup.title(), run.outlet().title());
    return new WiringDrawing(plan, setup).draw(setup.name().text() + outlet, title);
  }

  private Drawing draw(String name, String title) {
    new WiringStrands(language, leads, wires, bridges, grid, rows, layers).draw();
    rows.left().forEach(t -> terminal(t, true));
    rows.right().forEach(t -> terminal(t, false));
    double bottom = rows.bottom() + 4;
    panel(EDGE, grid.left(), EDGE, bottom);
    rows.panels().forEach(u -> panel(grid.right(), grid.width() - EDGE, u.top(), u.bottom()));
    double height = legend(bottom);
    return new Drawing(name, title, description(), grid.width(), height, layers.shapes());
  }

  private void terminal(Terminal terminal, boolean left) {
    double x = left ? grid.left() : grid.right();
    double y = rows.height(terminal);
    String fill = ends.isUsed(terminal) ? Palette.INK : Palette.PAPER;
    if (terminal.kind().carriesOutput()) {
      layers.before(new Shape.Circle(x, y, DOT, fill, Palette.INK, 1.4));
    } else {
      layers.before(new Shape.Rect(x - DOT, y - DOT, 2 * DOT, 2 * DOT, fill, Palette.INK, 1.4));
    }
    List<String> lines = rows.lines(terminal);
    double base = y - (lines.size() - 1) * LINE / 2 + 4;
    Shape.Anchor anchor = left ? Shape.Anchor.END : Shape.Anchor.START;
    for (String line : lines) {
      layers.text(bridges.nameX(grid, !left), base, SIZE, false, anchor, line);
      base += LINE;
    }
  }

  private void panel(double from, double to, double top, double bottom) {
    layers.behindAll(
        new Shape.Rect(from, top, to - from, bottom - top, Palette.PANEL, Palette.INK, 1.4));
  }

  /** What the signs of terminals mean, in as many lines as there is room for; gives its bottom. */
  private double legend(double bottom) {
    double y = bottom + 16;
    double x = EDGE + 6;
    for (Meaning sign : Meaning.values()) {
      String text = language.of(sign.word);
      double wide = 9 + TextWidths.width(text, SIZE, false) * WiringGrid.OTHER_TYPE;
      if (x > EDGE + 6 && x + wide > grid.width()) {
        x = EDGE + 6;
        y += LINE + 2;
      }
      sign(sign, x, y - 4);
      layers.text(x + 9, y, SIZE, false, Shape.Anchor.START, text);
      x += wide + 14;
    }
    return y + 6;
  }

  /** What the sign of a terminal means. */
  private enum Meaning {
    OUTPUT("draw.output"),
    CONTACT("draw.contact"),
    EMPTY("draw.empty");

    private final String word;

    Meaning(String word) {
      this.word = word;
    }
  }

  private void sign(Meaning meaning, double x, double y) {
    String fill = meaning == Meaning.EMPTY ? Palette.PAPER : Palette.INK;
    if (meaning == Meaning.CONTACT) {
      layers.before(new Shape.Rect(x - DOT, y - DOT, 2 * DOT, 2 * DOT, fill, Palette.INK, 1.4));
    } else {
      layers.before(new Shape.Circle(x, y, DOT, fill, Palette.INK, 1.4));
    }
  }

  private String description() {
    StringBuilder said = new StringBuilder();
    for (Wire wire : wires) {
      String lead = WiringStrands.withColour(language, wire.lead());
      said.append(said.isEmpty() ? "" : " ")
          .append(
              language.of(
                  "draw.wire",
                  Plan.letter(leads.indexOf(wire.lead())),
                  lead,
                  place(wire.from()),
                  place(wire.to())));
    }
    return said.toString();
  }

  private static String place(Terminal terminal) {
    return terminal.ownerTitle() + ", " + terminal.title();
  }
}
