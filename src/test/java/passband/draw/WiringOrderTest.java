package passband.draw;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.junit.jupiter.api.Test;
import passband.model.Lead;
import passband.model.Terminal;
import passband.plan.Wire;
import passband.syntax.LeadKind;
import passband.syntax.TerminalKind;
import passband.syntax.Word;

/** No crossing that can be avoided; widths as the type has them. */
class WiringOrderTest {

  private static Terminal terminal(String owner, int number, TerminalKind kind) {
    return new Terminal(
        kind, owner, owner, new Word("t" + number, null), "t" + number, 9, null, false);
  }

  private static <T> List<List<T>> permutations(List<T> items) {
    if (items.isEmpty()) {
      return List.of(List.of());
    }
    List<List<T>> all = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      List<T> rest = new ArrayList<>(items);
      T first = rest.remove(i);
      for (List<T> tail : permutations(rest)) {
        List<T> one = new ArrayList<>(List.of(first));
        one.addAll(tail);
        all.add(one);
      }
    }
    return all;
  }

  /** Against every order of both sides in which outlets stay together. */
  @Test
  void noOrderHasFewerCrossings() {
    Random random = new Random(11);
    for (int round = 0; round < 150; round++) {
      List<List<Terminal>> outlets = new ArrayList<>();
      List<Terminal> left = new ArrayList<>();
      for (int o = 0; o < 1 + random.nextInt(2); o++) {
        List<Terminal> outlet = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(3); i++) {
          outlet.add(terminal("outlet" + o, i, TerminalKind.POLE));
        }
        outlets.add(outlet);
        left.addAll(outlet);
      }
      List<Terminal> right = new ArrayList<>();
      for (int i = 0; i < 2 + random.nextInt(3); i++) {
        right.add(terminal("analyzer", i, TerminalKind.JACK));
      }
      List<Wire> wires = new ArrayList<>();
      for (int i = 0; i < 2 + random.nextInt(4); i++) {
        Lead lead =
            new Lead(LeadKind.LEAD, new Word("l" + i, null), "l" + i, null, null, null, null);
        wires.add(
            new Wire(
                lead,
                left.get(random.nextInt(left.size())),
                right.get(random.nextInt(right.size())),
                null));
      }
      int least = Integer.MAX_VALUE;
      for (List<List<Terminal>> groups : permutations(outlets)) {
        for (List<Terminal> leftOrder : within(groups)) {
          for (List<Terminal> rightOrder : permutations(right)) {
            least = Math.min(least, crossings(new WiringOrder(leftOrder, rightOrder), wires));
          }
        }
      }
      assertEquals(least, crossings(WiringOrder.best(left, right, wires), wires), "round " + round);
    }
  }

  private static List<List<Terminal>> within(List<List<Terminal>> groups) {
    List<List<Terminal>> all = List.of(List.of());
    for (List<Terminal> group : groups) {
      List<List<Terminal>> longer = new ArrayList<>();
      for (List<Terminal> start : all) {
        for (List<Terminal> order : permutations(group)) {
          List<Terminal> joined = new ArrayList<>(start);
          joined.addAll(order);
          longer.add(joined);
        }
      }
      all = longer;
    }
    return all;
  }

  /** The table of widths against the type itself, read by FontBox. */
  @Test
  void widthsAreThoseOfTheType() throws IOException {
    String[] names = {"DejaVuSansCondensed.ttf", "DejaVuSansCondensed-Bold.ttf"};
    for (int i = 0; i < 2; i++) {
      try (InputStream in = getClass().getResourceAsStream("/passband/fonts/" + names[i]);
          TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(in))) {
        var glyphs = font.getUnicodeCmapLookup();
        for (int c = 0x20; c < 0x250; c++) {
          int glyph = glyphs.getGlyphId(c);
          boolean printable = c < 0x7f || c >= 0xa0 && c < 0x180;
          if (glyph != 0 && printable) {
            double width = font.getAdvanceWidth(glyph) * 1000.0 / font.getUnitsPerEm();
            assertEquals(
                width, TextWidths.width(Character.toString(c), 1000, i == 1), 0.51, "U+" + c);
          }
        }
      }
    }
  }

  @Test
  void wrappedLinesFit() {
    Random random = new Random(5);
    for (int i = 0; i < 300; i++) {
      StringBuilder text = new StringBuilder("a");
      for (int j = 0; j < random.nextInt(60); j++) {
        text.append(random.nextInt(6) == 0 ? " " : Character.toString('A' + random.nextInt(40)));
      }
      for (String line : TextWidths.wrapped(text.toString(), 80, 11, false)) {
        assertTrue(
            TextWidths.width(line, 11, false) <= 80 || line.codePointCount(0, line.length()) == 1,
            line);
      }
      assertEquals(
          text.toString().replaceAll("\\s+", ""),
          String.join("", TextWidths.wrapped(text.toString(), 80, 11, false)).replace(" ", ""));
    }
  }

  /** How many pairs of leads cross. */
  private static int crossings(WiringOrder order, List<Wire> wires) {
    List<int[]> ends = new ArrayList<>();
    for (Wire wire : wires) {
      if (WiringOrder.isStraight(wire)) {
        ends.add(
            new int[] {
              WiringOrder.index(order.left(), WiringOrder.leftEnd(wire)),
              WiringOrder.index(order.right(), WiringOrder.rightEnd(wire))
            });
      }
    }
    int crossings = 0;
    for (int i = 0; i < ends.size(); i++) {
      for (int j = 0; j < i; j++) {
        int l = Integer.compare(ends.get(i)[0], ends.get(j)[0]);
        int r = Integer.compare(ends.get(i)[1], ends.get(j)[1]);
        crossings += l * r < 0 ? 1 : 0;
      }
    }
    return crossings;
  }
}
