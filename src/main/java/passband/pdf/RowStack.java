package passband.pdf;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Rows of a table that stay together: what one line of a wide table takes. */
record RowStack(List<Part> rows) implements Part {
  @Override
  public double height() {
    double sum = 0;
    for (Part row : rows) {
      sum += row.height();
    }
    return sum;
  }

  @Override
  public Part.@Nullable Heading heading() {
    return rows.get(0).heading();
  }

  @Override
  public boolean isLine() {
    for (Part row : rows) {
      if (row.isLine()) {
        return true;
      }
    }
    return false;
  }

  @Override
  public boolean staysWithNext() {
    return rows.get(rows.size() - 1).staysWithNext();
  }

  /** Between two rows where that can be, else within the first. */
  @Override
  public @Nullable Broken broken(double room) {
    int count = 0;
    double used = 0;
    while (count < rows.size() - 1 && !rows.get(count).isHigherThan(room - used)) {
      used += rows.get(count).height();
      count++;
    }
    if (count > 0) {
      return new Broken(
          new RowStack(rows.subList(0, count)), new RowStack(rows.subList(count, rows.size())));
    }
    Broken broken = rows.get(0).broken(room);
    if (broken == null) {
      return null;
    }
    List<Part> rest = new ArrayList<>(rows);
    rest.set(0, broken.lower());
    return new Broken(broken.upper(), new RowStack(rest));
  }

  @Override
  public void draw(Canvas canvas, double x, double y) throws IOException {
    double top = y;
    for (Part row : rows) {
      row.draw(canvas, x, top);
      top += row.height();
    }
  }
}
