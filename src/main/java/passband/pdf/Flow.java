package passband.pdf;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Parts put on pages, top to bottom, by {@link PageBreaks}. Only what is higher than a page is
 * broken; what fits one stays whole. An outlet that fills half a page or more starts one, where
 * that takes no more pages.
 */
final class Flow {
  /** A heading that takes more of a page than this is not said again on the next. */
  private static final double MOST_HEADING = 1.0 / 3;

  /** So much of a page an outlet fills that begins one. */
  private static final double OWN_PAGE = 1.0 / 2;

  /** So much of a part that goes over pages is on its first page at least, in points. */
  private static final double BEGINNING = 100;

  private final Paper paper;
  private final List<Labelled> written = new ArrayList<>();
  private final List<Part> waiting = new ArrayList<>();
  private final Deque<Stretch> open = new ArrayDeque<>();
  private String label = "";
  private boolean together;

  private final List<Page> pages = new ArrayList<>();
  private double used;

  Flow(Paper paper) {
    this.paper = paper;
  }

  /** A part and where its top is; {@code again} for a heading that is said a second time. */
  record Placed(Part part, double y, boolean again) {}

  /** A page with what its upper right corner says. */
  record Page(List<String> labels, List<Placed> parts) {
    /** The outlets that are on it. */
    String label() {
      return String.join(", ", labels);
    }
  }

  private record Labelled(String label, Stretch stretch) {}

  private record Piece(String label, Stretch stretch, boolean begins) {}

  // ---- what is to be placed ----

  /** What follows has this at the top right of its pages. */
  void label(String next) {
    flush();
    label = next;
  }

  /** What follows stays on one page where it fits, until {@link #end}. */
  void begin() {
    flush();
    Stretch inner = new Stretch();
    if (!open.isEmpty()) {
      open.peek().add(inner);
    }
    open.push(inner);
  }

  /** Ends what {@link #begin} began. */
  void end() {
    flush();
    Stretch ended = open.pop();
    if (open.isEmpty()) {
      written.add(new Labelled(label, ended));
    }
  }

  void add(Part part) {
    waiting.add(part);
    if (!part.staysWithNext() && !together) {
      flush();
    }
  }

  /** Whether what is added from here on stays on one page. */
  void together(boolean stays) {
    together = stays;
    if (!stays) {
      flush();
    }
  }

  private void flush() {
    if (waiting.isEmpty()) {
      return;
    }
    Stretch leaf = new Stretch(waiting);
    waiting.clear();
    if (open.isEmpty()) {
      written.add(new Labelled(label, leaf));
    } else {
      open.peek().add(leaf);
    }
  }

  // ---- placing it ----

  List<Page> pages() {
    flush();
    List<Piece> pieces = new ArrayList<>();
    for (int i = 0; i < written.size(); i++) {
      Labelled one = written.get(i);
      boolean begins = fillsPage(i);
      for (Stretch whole : one.stretch.whole(paper.room())) {
        pieces.add(new Piece(one.label, whole, begins));
        begins = false;
      }
    }
    used = paper.room();
    place(pieces);
    return pages;
  }

  /** Whether another outlet begins here that fills a good part of a page. */
  private boolean fillsPage(int at) {
    String own = written.get(at).label;
    if (at == 0 || own.isEmpty() || own.equals(written.get(at - 1).label)) {
      return false;
    }
    double height = 0;
    for (int i = at; i < written.size() && written.get(i).label.equals(own); i++) {
      height += written.get(i).stretch.height();
    }
    return height >= paper.room() * OWN_PAGE;
  }

  /** Places pieces, going on where the last page ends; one that is too high by itself. */
  private void place(List<Piece> pieces) {
    List<Piece> some = new ArrayList<>();
    for (Piece piece : pieces) {
      if (isTooHigh(piece.stretch)) {
        placeWhole(some);
        some.clear();
        placeBroken(piece);
      } else {
        some.add(piece);
      }
    }
    placeWhole(some);
  }

  private boolean isTooHigh(Stretch stretch) {
    return stretch.height() + headingHeight(stretch) > paper.room();
  }

  private void placeWhole(List<Piece> some) {
    List<PageBreaks.Piece> pieces = new ArrayList<>();
    for (Piece one : some) {
      Stretch stretch = one.stretch;
      pieces.add(
          new PageBreaks.Piece(
              stretch.height(),
              headingHeight(stretch),
              stretch.lines(),
              one.begins,
              stretch.goesOn()));
    }
    Set<Integer> starts = new HashSet<>(PageBreaks.of(pieces, paper.room(), used, linesOnPage()));
    for (int i = 0; i < some.size(); i++) {
      if (starts.contains(i)) {
        newPage();
      }
      for (Part part : some.get(i).stretch.parts()) {
        place(part, some.get(i).label);
      }
    }
  }

  private int linesOnPage() {
    int lines = 0;
    for (Placed placed : used < paper.room() ? lastPage().parts() : List.<Placed>of()) {
      lines += placed.part.isLine() ? 1 : 0;
    }
    return lines;
  }

  private void placeBroken(Piece piece) {
    double last = piece.stretch.parts().get(piece.stretch.parts().size() - 1).height();
    if (used + piece.stretch.height() - last + BEGINNING > paper.room()) {
      newPage();
    }
    for (Part part : piece.stretch.parts()) {
      broken(part, piece.label);
    }
  }

  private void broken(Part part, String named) {
    Part rest = part;
    while (rest.isHigherThan(paper.room() - headingHeight(rest))) {
      double heading = used == 0 ? headingHeight(rest) : 0;
      Part.Broken broken = rest.broken(paper.room() - used - heading);
      if (broken != null) {
        place(broken.upper(), named);
        rest = broken.lower();
      } else if (used == 0) {
        throw new IllegalStateException("a part that is higher than a page and cannot be broken");
      }
      newPage();
    }
    if (used > 0 && rest.isHigherThan(paper.room() - used)) {
      newPage();
    }
    place(rest, named);
  }

  private double headingHeight(Stretch stretch) {
    return headingHeight(stretch.parts().get(0));
  }

  /** How high what is said again above a part at the top of a page is, in points. */
  private double headingHeight(Part part) {
    Part.Heading heading = part.heading();
    return heading == null || isTooHigh(heading) ? 0 : heading.again().height();
  }

  private boolean isTooHigh(Part.Heading heading) {
    return heading.again().isHigherThan(paper.room() * MOST_HEADING);
  }

  private Page lastPage() {
    return pages.get(pages.size() - 1);
  }

  private void newPage() {
    pages.add(new Page(new ArrayList<>(), new ArrayList<>()));
    used = 0;
  }

  /** Puts a part that fits on the page, under its heading. */
  private void place(Part part, String named) {
    if (!named.isEmpty() && !lastPage().labels().contains(named)) {
      lastPage().labels().add(named);
    }
    Part.Heading heading = part.heading();
    if (used == 0 && heading != null && !isTooHigh(heading)) {
      put(heading.again(), true);
    }
    put(part, false);
  }

  private void put(Part part, boolean again) {
    lastPage().parts().add(new Placed(part, Paper.TOP + used, again));
    used += part.height();
  }
}
