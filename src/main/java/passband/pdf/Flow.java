package passband.pdf;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Parts put on pages, top to bottom. Only a part that is higher than a page is broken. */
final class Flow {
  /** A heading that takes more of a page than this is not said again on the next. */
  private static final double MOST_HEADING = 1.0 / 3;

  /** So much of a part that goes over pages is on its first page at least, in points. */
  private static final double BEGINNING = 100;

  private final Paper paper;
  private final List<Page> pages = new ArrayList<>();
  private final List<Part> waiting = new ArrayList<>();
  private String label = "";
  private double used;

  Flow(Paper paper) {
    this.paper = paper;
  }

  /** A part and where its top is; {@code again} for a heading that is said a second time. */
  record Placed(Part part, double y, boolean again) {}

  /** A page with what its upper right corner says. */
  record Page(String label, List<Placed> parts) {}

  /** What follows has this at the top right of its pages; another label starts a page. */
  void label(String next) {
    flush();
    if (!next.equals(label)) {
      label = next;
      used = Double.MAX_VALUE;
    }
  }

  void add(Part part) {
    waiting.add(part);
    if (!part.staysWithNext()) {
      flush();
    }
  }

  private void flush() {
    if (!waiting.isEmpty()) {
      if (pages.isEmpty() || !beginsHere()) {
        newPage();
      }
      waiting.forEach(this::put);
      waiting.clear();
    }
  }

  /** Whether what waits fits on the page; or its last part goes over pages, and can begin here. */
  private boolean beginsHere() {
    double height = waiting.stream().mapToDouble(Part::height).sum();
    double last = waiting.get(waiting.size() - 1).height();
    boolean over = last > paper.room();
    return used + (over ? height - last + BEGINNING : height) <= paper.room();
  }

  private void put(Part part) {
    Part rest = part;
    while (rest.isHigherThan(paper.room() - headingHeight(rest))) {
      Part.Broken broken = rest.broken(paper.room() - used - headingHeight(rest));
      if (broken != null) {
        place(broken.upper());
        rest = broken.lower();
      } else if (used == 0) {
        throw new IllegalStateException("a part that is higher than a page and cannot be broken");
      }
      newPage();
    }
    if (used > 0 && rest.isHigherThan(paper.room() - used - headingHeight(rest))) {
      newPage();
    }
    place(rest);
  }

  private double headingHeight(Part part) {
    Part heading = missingHeading(part);
    return heading == null ? 0 : heading.height();
  }

  /** The part's heading, where it has to be said again on this page; null where it has not. */
  private @Nullable Part missingHeading(Part part) {
    Part heading = part.heading();
    if (heading == null || heading.isHigherThan(paper.room() * MOST_HEADING)) {
      return null;
    }
    for (Placed placed : pages.get(pages.size() - 1).parts()) {
      if (placed.part() == heading) {
        return null;
      }
    }
    return heading;
  }

  private void newPage() {
    pages.add(new Page(label, new ArrayList<>()));
    used = 0;
  }

  /** Puts a part that fits on the page, under its heading. */
  private void place(Part part) {
    Part heading = missingHeading(part);
    if (heading != null) {
      place(heading, true);
    }
    place(part, false);
  }

  private void place(Part part, boolean again) {
    pages.get(pages.size() - 1).parts().add(new Placed(part, Paper.TOP + used, again));
    used += part.height();
  }

  List<Page> pages() {
    flush();
    return pages;
  }
}
