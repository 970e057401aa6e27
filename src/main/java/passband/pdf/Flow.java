package passband.pdf;

import java.util.ArrayList;
import java.util.List;

/** Parts put on pages, top to bottom. */
final class Flow {
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
    double height = waiting.stream().mapToDouble(Part::height).sum();
    boolean fits = !pages.isEmpty() && used + height <= paper.room();
    if (!fits && !waiting.isEmpty()) {
      newPage(waiting.get(0));
    }
    for (Part part : waiting) {
      if (used + part.height() > paper.room() && used > 0) {
        newPage(part);
      }
      place(part, false);
    }
    waiting.clear();
  }

  private void newPage(Part first) {
    pages.add(new Page(label, new ArrayList<>()));
    used = 0;
    if (first.heading() != null) {
      place(first.heading(), true);
    }
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
