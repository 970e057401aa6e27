package passband.pdf;

import java.util.ArrayList;
import java.util.List;

/**
 * Where pages end so that they are few, none has only one or two lines, outlets begin pages and
 * modes stay whole, and no page is much emptier than others: in this order. The best way from each
 * place on is found once, from the last place to the first.
 */
final class PageBreaks {
  /** A page with lines has so many at least, where it can be. */
  private static final int FEW = 3;

  /** A page of which more is empty, in parts of it, is no better than one that ends in a mode. */
  private static final double MOST_EMPTY = 2 / 3.0;

  /**
   * A piece that is not broken.
   *
   * @param height in points, at most a page's room with its heading
   * @param heading the height of what stands again above it at the top of a page, in points
   * @param lines how many lines with readings it has
   * @param begins whether it should begin a page
   * @param goesOn whether it should not
   */
  record Piece(double height, double heading, int lines, boolean begins, boolean goesOn) {}

  private record Cost(int pages, int few, int untidy, double empty) implements Comparable<Cost> {
    Cost plus(Cost other) {
      return new Cost(
          pages + other.pages, few + other.few, untidy + other.untidy, empty + other.empty);
    }

    @Override
    public int compareTo(Cost other) {
      int byPages = Integer.compare(pages, other.pages);
      int byFew = byPages != 0 ? byPages : Integer.compare(few, other.few);
      int byTidy = byFew != 0 ? byFew : Integer.compare(untidy, other.untidy);
      return byTidy != 0 ? byTidy : Double.compare(empty, other.empty);
    }
  }

  /** A page being filled, with the pieces from a place on. */
  private final class Filling {
    private final boolean begun;
    private double height;
    private int lines;
    private int untidy;
    private int count;

    Filling(double used, int lines, boolean begun) {
      this.height = used;
      this.lines = lines;
      this.begun = begun;
    }

    void add(Piece piece) {
      boolean top = count == 0 && !begun;
      height += piece.height() + (top ? piece.heading() : 0);
      lines += piece.lines();
      untidy += (top ? piece.goesOn() : piece.begins()) ? 1 : 0;
      count++;
    }

    boolean fits() {
      return height <= room;
    }

    Cost cost() {
      double empty = Math.max(0, 1 - height / room);
      int bare = empty > MOST_EMPTY ? 1 : 0;
      return new Cost(1, lines > 0 && lines < FEW ? 1 : 0, untidy + bare, empty * empty);
    }
  }

  private final List<Piece> pieces;
  private final double room;

  /** The least cost from each place on, where a page begins there, and where the next one does. */
  private final Cost[] from;

  private final int[] next;

  private PageBreaks(List<Piece> pieces, double room) {
    this.pieces = pieces;
    this.room = room;
    this.from = new Cost[pieces.size() + 1];
    this.next = new int[pieces.size() + 1];
  }

  /**
   * The places, from 0, of the pieces that begin a page.
   *
   * @param room of a page, in points
   * @param used of the page that the first pieces may go on, in points; all of it for none
   * @param lines how many lines that page has already
   */
  static List<Integer> of(List<Piece> pieces, double room, double used, int lines) {
    return new PageBreaks(pieces, room).best(used, lines);
  }

  private List<Integer> best(double used, int lines) {
    int count = pieces.size();
    from[count] = new Cost(0, 0, 0, 0);
    for (int start = count - 1; start >= 0; start--) {
      // The first piece has a page even where that is too small.
      Filling page = new Filling(0, 0, false);
      page.add(pieces.get(start));
      Choice choice = filled(page, start + 1);
      from[start] = choice.cost;
      next[start] = choice.end;
    }
    int at = used < room ? filled(new Filling(used, lines, true), 0).end : 0;
    List<Integer> starts = new ArrayList<>();
    while (at < count) {
      starts.add(at);
      at = next[at];
    }
    return starts;
  }

  /** Where a page ends best, and what it costs with all after it. */
  private record Choice(Cost cost, int end) {}

  /** The best of ending a page here or after any of the pieces that still fit. */
  private Choice filled(Filling page, int here) {
    Choice best = new Choice(page.cost().plus(from[here]), here);
    for (int end = here + 1; end <= pieces.size(); end++) {
      page.add(pieces.get(end - 1));
      if (!page.fits()) {
        break;
      }
      Cost cost = page.cost().plus(from[end]);
      best = cost.compareTo(best.cost) < 0 ? new Choice(cost, end) : best;
    }
    return best;
  }
}
