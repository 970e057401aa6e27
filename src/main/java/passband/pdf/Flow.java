package passband.pdf;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

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
      newPage();
    }
    for (Part part : waiting) {
      if (used + needed(part) > paper.room() && used > 0) {
        newPage();
      }
      Part heading = missingHeading(part);
      if (heading != null) {
        place(heading, true);
      }
      place(part, false);
    }
    waiting.clear();
  }

  private double needed(Part part) {
    Part heading = missingHeading(part);
    return part.height() + (heading == null ? 0 : heading.height());
  }

  /** The part's heading, where it is not on the page yet; null where it is or there is none. */
  private @Nullable Part missingHeading(Part part) {
    Part heading = part.heading();
    if (heading == null) {
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

  private void place(Part part, boolean again) {
    pages.get(pages.size() - 1).parts().add(new Placed(part, Paper.TOP + used, again));
    used += part.height();
  }

  List<Page> pages() {
    flush();
    return pages;
  }
}
