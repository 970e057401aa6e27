package passband.pdf;

import java.util.ArrayList;
import java.util.List;

/** Shares a width among the columns of a table so that its rows have the fewest lines together. */
final class LowestColumns {
  /** What is left over is shared in so many equal parts. */
  private static final int PARTS = 10;

  /** How many lines a cell has in a width. */
  interface Lines {
    int of(List<TextBlock.Span> texts, double width);
  }

  private final Lines measure;
  private final List<List<List<TextBlock.Span>>> columns;
  private final List<Double> wishes;
  private List<Integer> best = List.of();
  private long lowest;

  /**
   * Of a table.
   *
   * @param columns the cells of each, from the head down
   * @param wishes the widths in which no text is broken
   */
  LowestColumns(Lines measure, List<List<List<TextBlock.Span>>> columns, List<Double> wishes) {
    this.measure = measure;
    this.columns = columns;
    this.wishes = wishes;
  }

  /**
   * The widths of the columns.
   *
   * @param least none is narrower
   * @param width of all together
   */
  List<Double> of(List<Double> least, double width) {
    double part = Math.max(0, width - least.stream().mapToDouble(one -> one).sum()) / PARTS;
    List<List<int[]>> lines = new ArrayList<>();
    for (int c = 0; c < columns.size(); c++) {
      lines.add(lines(columns.get(c), least.get(c), part, wishes.get(c)));
    }
    lowest = Long.MAX_VALUE;
    search(lines, new int[columns.get(0).size()], new ArrayList<>(), PARTS);
    List<Double> widths = new ArrayList<>();
    for (int c = 0; c < least.size(); c++) {
      widths.add(least.get(c) + best.get(c) * part);
    }
    return widths;
  }

  /** The lines of each cell of a column with no part more than the least, with one and so on. */
  private List<int[]> lines(
      List<List<TextBlock.Span>> cells, double least, double part, double wish) {
    List<int[]> all = new ArrayList<>();
    for (int p = 0; p <= PARTS; p++) {
      double width = least + p * part;
      boolean same = p > 0 && (part == 0 || width - part > wish);
      all.add(same ? all.get(p - 1) : cells.stream().mapToInt(c -> measure.of(c, width)).toArray());
    }
    return all;
  }

  /** Tries every way to share what is left; of ways with as many lines takes the most even. */
  private void search(List<List<int[]>> lines, int[] rows, List<Integer> given, int left) {
    int column = given.size();
    if (column == lines.size()) {
      long cost = 0;
      for (int row : rows) {
        cost += row;
      }
      cost *= (long) PARTS * PARTS + 1;
      for (int parts : given) {
        cost += (long) parts * parts;
      }
      if (cost < lowest) {
        lowest = cost;
        best = List.copyOf(given);
      }
      return;
    }
    for (int p = column + 1 == lines.size() ? left : 0; p <= left; p++) {
      int[] higher = rows.clone();
      for (int r = 0; r < rows.length; r++) {
        higher[r] = Math.max(rows[r], lines.get(column).get(p)[r]);
      }
      given.add(p);
      search(lines, higher, given, left - p);
      given.remove(column);
    }
  }
}
