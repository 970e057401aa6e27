package passband.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Page breaks against all ways there are, tried one by one. */
class PageBreaksTest {
  private static final double ROOM = 100;

  @Test
  void noOtherWayIsBetter() {
    Random random = new Random(20261127);
    int withChoice = 0;
    for (int i = 0; i < 2_000; i++) {
      List<PageBreaks.Piece> pieces = new ArrayList<>();
      int count = 1 + random.nextInt(9);
      for (int p = 0; p < count; p++) {
        boolean goesOn = p > 0 && random.nextInt(4) == 0;
        pieces.add(
            new PageBreaks.Piece(
                5 + random.nextInt(80),
                goesOn ? 10 : 0,
                random.nextInt(4),
                random.nextInt(4) == 0,
                goesOn));
      }
      double used = random.nextBoolean() ? ROOM : random.nextInt(100);
      int lines = used < ROOM ? random.nextInt(4) : 0;
      double[] best = null;
      int ways = 0;
      for (int way = 0; way < 1 << count; way++) {
        double[] cost = cost(pieces, starts(way, count), used, lines);
        ways += cost == null ? 0 : 1;
        best = cost != null && (best == null || less(cost, best)) ? cost : best;
      }
      double[] found = cost(pieces, PageBreaks.of(pieces, ROOM, used, lines), used, lines);
      String what = pieces + " after " + used + ", " + lines;
      assertTrue(found != null && best != null, what);
      for (int c = 0; c < best.length; c++) {
        assertEquals(best[c], found[c], 1e-9, what);
      }
      withChoice += ways > 1 ? 1 : 0;
    }
    assertTrue(withChoice > 1_000, "only " + withChoice);
  }

  private static List<Integer> starts(int way, int count) {
    List<Integer> starts = new ArrayList<>();
    for (int p = 0; p < count; p++) {
      if ((way >> p & 1) == 1) {
        starts.add(p);
      }
    }
    return starts;
  }

  private static boolean less(double[] a, double[] b) {
    int at = Arrays.mismatch(a, b);
    return at >= 0 && a[at] < b[at];
  }

  /** Pages, pages with one or two lines, what is untidy, emptiness; null where it cannot be. */
  private static double[] cost(
      List<PageBreaks.Piece> pieces, List<Integer> starts, double used, int before) {
    boolean begun = used < ROOM;
    if (!begun && (starts.isEmpty() || starts.get(0) != 0)) {
      return null;
    }
    double[] cost = new double[4];
    double height = begun ? used : 0;
    int lines = before;
    boolean open = begun;
    for (int p = 0; p < pieces.size(); p++) {
      PageBreaks.Piece piece = pieces.get(p);
      boolean top = starts.contains(p);
      if (top && open) {
        close(cost, height, lines);
      }
      height = top ? piece.heading() + piece.height() : height + piece.height();
      lines = top ? piece.lines() : lines + piece.lines();
      open = true;
      if (height > ROOM) {
        return null;
      }
      cost[2] += (top ? piece.goesOn() : piece.begins()) ? 1 : 0;
    }
    close(cost, height, lines);
    return cost;
  }

  private static void close(double[] cost, double height, int lines) {
    cost[0]++;
    cost[1] += lines > 0 && lines < 3 ? 1 : 0;
    cost[2] += 1 - height / ROOM > 2 / 3.0 ? 1 : 0;
    cost[3] += Math.pow(1 - height / ROOM, 2);
  }
}
