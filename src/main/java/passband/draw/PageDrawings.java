package passband.draw;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * The drawings of one page. What several of them have alike, such as the sockets of a generator, is
 * written once, where it first stands, and used by the others.
 */
public final class PageDrawings {
  /** As many shapes make it worth while to give them an identifier. */
  private static final int FEWEST = 2;

  private final Map<Shape, BitSet> drawn = new HashMap<>();

  /** The identifiers of the stretches that stand more than once. */
  private final Map<List<Shape>, String> shared = new HashMap<>();

  private PageDrawings() {}

  /**
   * The elements of the drawings, in their order, for a page that has {@link Svg#STYLE} in its own
   * style.
   *
   * @param ids what the identifiers in each begin with; no other one in the page begins so
   */
  public static List<String> of(List<Drawing> drawings, List<String> ids) {
    PageDrawings page = new PageDrawings();
    for (int i = 0; i < drawings.size(); i++) {
      for (Shape shape : drawings.get(i).shapes()) {
        page.drawn.computeIfAbsent(shape, s -> new BitSet()).set(i);
      }
    }
    List<List<List<Shape>>> stretches = new ArrayList<>();
    drawings.forEach(d -> stretches.add(page.stretches(d.shapes())));
    page.name(stretches, ids);
    Set<String> written = new HashSet<>();
    List<String> elements = new ArrayList<>();
    for (int i = 0; i < drawings.size(); i++) {
      Svg svg = Svg.styled(drawings.get(i), ids.get(i));
      for (List<Shape> stretch : stretches.get(i)) {
        String id = page.shared.get(stretch);
        if (id == null) {
          svg.shapes(stretch);
        } else if (written.add(id)) {
          svg.shapes(id, stretch);
        } else {
          svg.use(id);
        }
      }
      elements.add(svg.end());
    }
    return elements;
  }

  /** The shapes one after another that stand in the same drawings. */
  private List<List<Shape>> stretches(List<Shape> shapes) {
    List<List<Shape>> stretches = new ArrayList<>();
    List<Shape> stretch = new ArrayList<>();
    for (Shape shape : shapes) {
      if (!stretch.isEmpty() && !Objects.equals(drawn.get(stretch.get(0)), drawn.get(shape))) {
        stretches.add(stretch);
        stretch = new ArrayList<>();
      }
      stretch.add(shape);
    }
    stretches.add(stretch);
    return stretches;
  }

  private void name(List<List<List<Shape>>> stretches, List<String> ids) {
    Set<List<Shape>> before = new HashSet<>();
    for (int i = 0; i < stretches.size(); i++) {
      for (List<Shape> stretch : stretches.get(i)) {
        if (stretch.size() >= FEWEST && !before.add(stretch)) {
          shared.putIfAbsent(stretch, ids.get(i) + "-" + shared.size());
        }
      }
    }
  }
}
