package passband.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Parts on pages: what fits stays whole, what does not goes on, and nothing is looked at often. */
class FlowTest {
  private static int asked;

  /** Lines of a point each. */
  private record Lines(double height, boolean breaks, boolean staysWithNext) implements Part {
    @Override
    public boolean isHigherThan(double room) {
      asked++;
      return height > room;
    }

    @Override
    public void draw(Canvas canvas, double x, double y) {}

    @Override
    public Broken broken(double room) {
      asked++;
      double upper = Math.floor(room);
      return breaks && upper >= 1
          ? new Broken(
              new Lines(upper, true, false), new Lines(height - upper, true, staysWithNext))
          : null;
    }
  }

  private static List<Flow.Page> pages(double... heights) {
    Flow flow = new Flow(Paper.A4);
    for (double height : heights) {
      flow.add(new Lines(height, height > Paper.A4.room(), false));
    }
    return flow.pages();
  }

  private static double filled(Flow.Page page) {
    Flow.Placed last = page.parts().get(page.parts().size() - 1);
    return last.y() - Paper.TOP + last.part().height();
  }

  @Test
  void onlyWhatIsHigherThanAPageIsBroken() {
    double room = Math.floor(Paper.A4.room());
    List<Flow.Page> pages = pages(500, 300, room, 2.5 * room, 100);
    assertEquals(List.of(1, 1, 1, 1, 1, 2), pages.stream().map(p -> p.parts().size()).toList());
    pages = pages(500, 2 * room);
    assertEquals(List.of(2, 1, 1), pages.stream().map(p -> p.parts().size()).toList());
    pages.forEach(page -> assertTrue(filled(page) <= Paper.A4.room(), "on the page"));
  }

  @Test
  void theWorkGrowsWithThePages() {
    for (int pages : List.of(1_000, 4_000)) {
      asked = 0;
      assertEquals(pages, pages(pages * Math.floor(Paper.A4.room())).size());
      assertTrue(asked <= 6 * pages, asked + " for " + pages);
    }
  }

  @Test
  void nothingIsLostInSilence() {
    Flow flow = new Flow(Paper.LETTER);
    Lines tall = new Lines(10_000, false, false);
    flow.add(tall);
    assertThrows(IllegalStateException.class, flow::pages);
  }
}
