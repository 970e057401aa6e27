package passband.edit;

import java.util.ArrayList;
import java.util.List;
import passband.plan.Point;
import passband.syntax.Tree;

/**
 * What is shown at the end of a table's row: its computed limits.
 *
 * @param offset where
 */
public record Inlay(int offset, String text) {

  /** The hints of rows that begin between two offsets. */
  public static List<Inlay> between(Analysis analysis, int from, int to) {
    List<Inlay> inlays = new ArrayList<>();
    for (Tree.Row row : Hover.rows(analysis.file())) {
      if (from <= row.span().start() && row.span().start() <= to) {
        List<Point> points = analysis.points(row);
        if (!points.isEmpty()) {
          inlays.add(new Inlay(row.span().end(), PointText.brief(points)));
        }
      }
    }
    return inlays;
  }
}
