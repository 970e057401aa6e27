package passband.draw;

import static passband.draw.WiringGrid.GAP;
import static passband.draw.WiringGrid.LINE;
import static passband.draw.WiringGrid.NARROWEST;
import static passband.draw.WiringGrid.SIZE;

import java.util.List;
import passband.model.Analyzer;
import passband.model.Device.Outlet;
import passband.model.Terminal;
import passband.plan.Plan;
import passband.plan.Setup;
import passband.plan.Stage;
import passband.plan.Wire;
import passband.words.Language;

/**
 * Whether a wiring drawing fits a page. It is never broken: a lead that goes on over the page's end
 * is soon taken for another.
 */
public final class WiringSize {
  /** In millimetres: under a test's heading and the outlet's name on a page of A4 or Letter. */
  public static final int MOST_HEIGHT = 210;

  /** How many links, loads and meters have room side by side at the terminals of one side. */
  public static final int MOST_LANES = 5;

  private static final String NARROW = "fijlrtIJ .,:;'!()[]/|-";
  private static final String WIDE = "mwMW@%";

  /** Bold letters are at most so much wider. */
  private static final double BOLD = 1.25;

  /** What is not names: edges, what is around headings, the legend. */
  private static final double FRAME = 86;

  private WiringSize() {}

  /** How many links, loads and meters are side by side, on the analyzer or on the generator. */
  public static int lanes(Plan plan, Setup setup, boolean analyzer) {
    return new Bridges(plan.language(), plan.instruments(), setup.wires()).lanes(analyzer);
  }

  /** In millimetres, how high the drawing of a run that has a setup is; 0 where it surely fits. */
  public static int height(Plan plan, Stage.Run run, Setup setup) {
    if (bound(plan, setup) <= MOST_HEIGHT * Drawing.UNITS_PER_MM) {
      return 0;
    }
    return (int) Math.ceil(WiringDrawing.of(plan, run).height() / Drawing.UNITS_PER_MM);
  }

  /**
   * A height in units that the drawing does not exceed: everything one under the other, all letters
   * wide. It needs no widths of the type, so that it is quick enough for every check.
   */
  static double bound(Plan plan, Setup setup) {
    Bridges bridges = new Bridges(plan.language(), plan.instruments(), setup.wires());
    double sum = FRAME + headings(plan.device().title(), bridges, false) * LINE;
    for (Outlet outlet : plan.device().outlets()) {
      if (reaches(setup, outlet.terminals())) {
        double width = bridges.nameWidth(NARROWEST, false) / BOLD;
        sum += 7 + lines(outlet.title(), width) * (LINE + 2);
        sum += unused(plan.language(), setup, outlet.terminals(), bridges);
      }
    }
    sum += instruments(plan.language(), plan.instruments().units(), setup, bridges);
    for (Wire wire : setup.wires()) {
      sum += height(plan.language(), wire, bridges);
    }
    for (Bridge bridge : bridges.all()) {
      sum += lines(bridge.name(), bridges.nameWidth(NARROWEST, bridge.onAnalyzer())) * LINE + GAP;
    }
    return sum;
  }

  private static int headings(String text, Bridges bridges, boolean analyzer) {
    return lines(text, bridges.nameWidth(NARROWEST, analyzer) / BOLD);
  }

  /** The panels of instruments. */
  private static double instruments(
      Language language, List<Analyzer> units, Setup setup, Bridges bridges) {
    double sum = 0;
    boolean none = true;
    for (Analyzer unit : units) {
      none &= !reaches(setup, unit.terminals());
    }
    for (Analyzer unit : units) {
      if ((none && unit == units.get(0)) || reaches(setup, unit.terminals())) {
        sum += unused(language, setup, unit.terminals(), bridges);
        sum += headings(unit.title(), bridges, true) * LINE + 20;
      }
    }
    return sum;
  }

  private static boolean reaches(Setup setup, List<Terminal> terminals) {
    for (Terminal terminal : terminals) {
      if (isUsed(setup, terminal)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isUsed(Setup setup, Terminal terminal) {
    for (Wire wire : setup.wires()) {
      if (wire.from().same(terminal) || wire.to().same(terminal)) {
        return true;
      }
    }
    return false;
  }

  /** Terminals without a lead, one under the other. */
  private static double unused(
      Language language, Setup setup, List<Terminal> terminals, Bridges bridges) {
    double sum = 0;
    for (Terminal terminal : terminals) {
      if (!isUsed(setup, terminal)) {
        double width = bridges.nameWidth(NARROWEST, terminal.onAnalyzer());
        sum += lines(language.of("draw.is-empty", terminal.title()), width) * LINE + 2 + GAP;
      }
    }
    return sum;
  }

  /** A lead with its name over it, and its two terminals; those of a link one under the other. */
  private static double height(Language language, Wire wire, Bridges bridges) {
    double from = half(wire.from(), bridges);
    double to = half(wire.to(), bridges);
    if (!WiringOrder.isStraight(wire)) {
      return 2 * (from + to + GAP);
    }
    double name =
        lines(WiringStrands.printedName(language, wire.lead()), NARROWEST.leadWidth()) * LINE + 11;
    double below = Math.max(9, Math.max(from, to));
    return Math.max(name, below) + below + 2 * GAP;
  }

  private static double half(Terminal terminal, Bridges bridges) {
    double width = bridges.nameWidth(NARROWEST, terminal.onAnalyzer());
    return lines(terminal.title(), width) * LINE / 2.0 + 1;
  }

  private static int lines(String text, double width) {
    return TextWidths.wrapped(text, width, SIZE, WiringSize::widest).size();
  }

  /** No narrower than a letter of the type, in parts of its size. */
  static double widest(int c) {
    if (c < 0x20 || c > 0x7e) {
      return 1.25;
    } else if (NARROW.indexOf(c) >= 0) {
      return 0.4;
    } else if (WIDE.indexOf(c) >= 0) {
      return 0.9;
    }
    boolean common = c >= 'a' && c <= 'z' || c >= '0' && c <= '9';
    return common ? 0.58 : 0.76;
  }
}
