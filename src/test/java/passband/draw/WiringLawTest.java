package passband.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import passband.model.Terminal;
import passband.plan.Plan;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.testing.GeneratedProcedures;
import passband.testing.Sheets;
import passband.testing.WiredBenches;

/**
 * What a wiring drawing has to keep whatever its names are, by the drawing's own shapes: words
 * whole, no text over another or over a line, none out of its panel, each symbol at its own name.
 */
class WiringLawTest {
  /** Of another type that a browser shows; letters' height over the base line and below. */
  private static final double WIDER = 1.05;

  private static final double UP = 0.76;
  private static final double DOWN = 0.18;

  /** Words that no panel has room for, with the most lanes beside them. */
  private static final double WIDEST_WORD = 90;

  private record Box(String text, double left, double top, double right, double bottom) {
    static Box of(Shape.Text text) {
      double wide = TextWidths.width(text.text(), text.size(), text.bold()) * WIDER;
      double left =
          switch (text.anchor()) {
            case START -> text.x();
            case MIDDLE -> text.x() - wide / 2;
            case END -> text.x() - wide;
          };
      double size = text.size();
      return new Box(text.text(), left, text.y() - UP * size, left + wide, text.y() + DOWN * size);
    }

    static Box of(Shape.Rect rect) {
      return new Box("", rect.x(), rect.y(), rect.x() + rect.width(), rect.y() + rect.height());
    }

    boolean meets(Box other) {
      return Math.min(right, other.right) - Math.max(left, other.left) > 0.1
          && Math.min(bottom, other.bottom) - Math.max(top, other.top) > 0.1;
    }

    boolean contains(Box other) {
      return left <= other.left
          && other.right <= right
          && top <= other.top
          && other.bottom <= bottom;
    }
  }

  private static Map<String, Drawing> drawings(List<Plan> plans) {
    Map<String, Drawing> drawings = new LinkedHashMap<>();
    for (Plan plan : plans) {
      for (Stage.Run run : plan.runs()) {
        if (run.setup() != null) {
          Drawing drawing = WiringDrawing.of(plan, run);
          List<String> faults = faults(plan, run.setup().wires(), drawing);
          assertEquals(List.of(), faults, plan.name() + ": " + drawing.name());
          drawings.put(plan.digest() + drawing.name(), drawing);
        }
      }
    }
    return drawings;
  }

  @Test
  void theDemoLibraryKeepsIt() {
    assertTrue(drawings(Sheets.demo()).size() >= 20);
    assertTrue(drawings(List.of(Sheets.TEASEL, Sheets.YARROW, Sheets.SUNDEW)).size() >= 4);
  }

  @Test
  void generatedProceduresKeepIt() {
    drawings(LongStream.range(0, 60).mapToObj(GeneratedProcedures::plan).toList());
  }

  /** One and two instruments, long and short names, links at both sides. */
  @Test
  void inventedBenchesKeepIt() {
    List<Plan> plans =
        IntStream.range(0, 300).mapToObj(seed -> WiredBenches.plan(new Random(seed))).toList();
    assertTrue(drawings(plans).size() >= 300);
  }

  private static List<String> faults(Plan plan, List<Wire> wires, Drawing drawing) {
    List<Box> texts = new ArrayList<>();
    List<Box> panels = new ArrayList<>();
    List<Shape.Line> lines = new ArrayList<>();
    for (Shape shape : drawing.shapes()) {
      if (shape instanceof Shape.Text text) {
        texts.add(Box.of(text));
      } else if (shape instanceof Shape.Rect rect && rect.fill().equals(Palette.PANEL)) {
        panels.add(Box.of(rect));
      } else if (shape instanceof Shape.Line line) {
        lines.add(line);
      }
    }
    List<String> faults = new ArrayList<>();
    whole(plan, wires, texts, faults);
    clear(texts, panels, lines, new Box("", 0, 0, drawing.width(), drawing.height()), faults);
    symbols(plan, wires, drawing, faults);
    return faults;
  }

  /** Every word that is printed is a word that somebody wrote, or a piece of one without room. */
  private static void whole(Plan plan, List<Wire> wires, List<Box> texts, List<String> faults) {
    Set<String> words = new HashSet<>();
    List<String> names = new ArrayList<>(List.of(plan.device().title()));
    plan.device().outlets().forEach(o -> names.add(o.title()));
    plan.instruments().units().forEach(u -> names.add(u.title()));
    WiringEnds ends = WiringEnds.of(plan, wires);
    ends.left().forEach(t -> names.add(ends.name(t)));
    ends.right().forEach(t -> names.add(ends.name(t)));
    wires.forEach(w -> names.add(WiringStrands.printedName(plan.language(), w.lead())));
    new Bridges(plan.language(), plan.instruments(), wires).all().forEach(b -> names.add(b.name()));
    plan.usedLeads().forEach(l -> words.add(Plan.letter(plan.usedLeads().indexOf(l))));
    for (String word : List.of("draw.output", "draw.contact", "draw.empty")) {
      names.add(plan.language().of(word));
    }
    names.forEach(name -> words.addAll(List.of(name.split(" "))));
    for (Box text : texts) {
      for (String word : text.text.split(" ")) {
        boolean piece =
            words.stream()
                .anyMatch(w -> w.contains(word) && TextWidths.width(w, 12.7, false) > WIDEST_WORD);
        if (!words.contains(word) && !piece) {
          faults.add("a piece of a word: " + text.text);
        }
      }
    }
  }

  private static void clear(
      List<Box> texts, List<Box> panels, List<Shape.Line> lines, Box all, List<String> faults) {
    for (int i = 0; i < texts.size(); i++) {
      Box text = texts.get(i);
      for (int j = 0; j < i; j++) {
        if (text.meets(texts.get(j))) {
          faults.add(text.text + " over " + texts.get(j).text);
        }
      }
      if (!all.contains(text)) {
        faults.add("out of the drawing: " + text.text);
      }
      for (Box panel : panels) {
        if (panel.meets(text) && !panel.contains(text)) {
          faults.add("over the edge of a panel: " + text.text);
        }
      }
      for (Shape.Line line : lines) {
        for (int p = 1; p < line.points().size(); p++) {
          if (crosses(line.points().get(p - 1), line.points().get(p), text)) {
            faults.add("a line through " + text.text);
          }
        }
      }
    }
  }

  /** Lines along the page's edges only; a letter in its circle lies on its lead. */
  private static boolean crosses(Shape.At a, Shape.At b, Box text) {
    boolean upright = a.x() == b.x();
    boolean level = a.y() == b.y();
    boolean badge = text.text.length() <= 2 && text.right - text.left < 15;
    double from = upright ? Math.min(a.y(), b.y()) : Math.min(a.x(), b.x());
    double to = upright ? Math.max(a.y(), b.y()) : Math.max(a.x(), b.x());
    if (badge || !upright && !level) {
      return false;
    }
    return upright
        ? text.left < a.x() && a.x() < text.right && from < text.bottom && text.top < to
        : text.top < a.y() && a.y() < text.bottom && from < text.right && text.left < to;
  }

  /** A load, meter or link has its symbol in its lane beside its name, between its own ends. */
  private static void symbols(Plan plan, List<Wire> wires, Drawing drawing, List<String> faults) {
    Bridges bridges = new Bridges(plan.language(), plan.instruments(), wires);
    WiringEnds ends = WiringEnds.of(plan, wires);
    WiringGrid grid = ends.grid(bridges);
    WiringRows rows = new WiringRows(ends, bridges, grid, new Layers());
    for (Bridge bridge : bridges.all()) {
      double one = rows.height(bridge.from());
      double other = rows.height(bridge.to());
      double y = bridge.middle();
      double lane = bridges.laneX(grid, bridge);
      boolean between = Math.min(one, other) < y && y < Math.max(one, other);
      boolean drawn =
          drawing.shapes().stream()
              .anyMatch(
                  s ->
                      s instanceof Shape.Circle c && c.x() == lane && c.y() == y
                          || s instanceof Shape.Rect r
                              && Math.abs(r.x() + r.width() / 2 - lane) < 0.01
                              && Math.abs(r.y() + r.height() / 2 - y) < 0.01);
      List<String> said = bridge.lines(bridges.nameWidth(grid, bridge.onAnalyzer()));
      boolean named =
          drawing.shapes().stream()
              .anyMatch(
                  s ->
                      s instanceof Shape.Text t
                          && t.text().equals(said.get(0))
                          && t.x() == bridges.nameX(grid, bridge.onAnalyzer())
                          && Math.abs(t.y() - y) <= said.size() * 14 / 2.0 + 4);
      if (!between || !drawn || !named || !isAtItsOwn(bridge, bridges, ends, rows)) {
        faults.add("the symbol of " + bridge.name() + " is not at its own name");
      }
    }
  }

  /** No other terminal of the side is nearer above it than the one that it begins at. */
  private static boolean isAtItsOwn(
      Bridge bridge, Bridges bridges, WiringEnds ends, WiringRows rows) {
    List<Terminal> side = bridge.onAnalyzer() ? ends.right() : ends.left();
    Terminal above = null;
    for (Terminal terminal : side) {
      boolean higher = rows.height(terminal) < bridge.middle();
      if (higher && (above == null || rows.height(terminal) > rows.height(above))) {
        above = terminal;
      }
    }
    return above != null && bridge.isAt(above);
  }
}
