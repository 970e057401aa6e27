package passband.pdf;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.StringTokenizer;
import java.util.function.ToDoubleFunction;
import passband.render.Sheet;

/** The table of a wiring: a box, the letter, the lead, its two ends and what is done with it. */
final class WiringTable {
  private static final double SIZE = PartWriter.HEAD_SIZE;

  /** What a cell leaves free at its sides. */
  private static final double SIDES = 7;

  private static final double TICK = 17;
  private static final double AFTER = 2;

  private final PartWriter write;
  private final List<String> table;
  private final Sheet.SetupLines setup;
  private final List<Double> widths;

  private WiringTable(PartWriter write, List<String> path, Sheet.SetupLines setup, double width) {
    this.write = write;
    this.table = new ArrayList<>(path);
    this.table.add("Table:wiring");
    this.setup = setup;
    this.widths = widths(width);
  }

  /**
   * Its rows.
   *
   * @param path of the element that it is in
   * @param width of the whole table, in points
   */
  static List<Part> of(PartWriter write, List<String> path, Sheet.SetupLines setup, double width) {
    return new WiringTable(write, path, setup, width).rows();
  }

  private List<Part> rows() {
    RowPart head = write.headRow(table, widths, titles());
    List<Part> rows = new ArrayList<>(List.of(head));
    for (int i = 0; i < setup.wires().size(); i++) {
      double after = i + 1 == setup.wires().size() ? AFTER : 0;
      rows.add(
          new RowPart(
              table, "w" + i, widths, cells(setup.wires().get(i)), Part.Heading.of(head), after));
    }
    return rows;
  }

  private List<String> titles() {
    return List.of(
        "",
        "",
        write.says("wiring.lead"),
        write.says("wiring.terminal"),
        setup.jacks(),
        write.says("wiring.change"));
  }

  private List<TableCell> cells(Sheet.WireLine wire) {
    List<TableCell> cells = new ArrayList<>();
    cells.add(
        wire.move() == null
            ? write.words("", false, widths.get(0), SIZE)
            : write.ticks(List.of(List.of("")), widths.get(0), wire.move().id()));
    for (int c = 1; c < widths.size(); c++) {
      List<TextBlock> blocks = new ArrayList<>();
      for (TextBlock.Span text : texts(wire, c)) {
        blocks.add(write.block(SIZE, text.bold(), widths.get(c) - SIDES, text.text()));
      }
      cells.add(new WordsCell(blocks, "TD"));
    }
    return cells;
  }

  /** What stands in a column, under each other. */
  private static List<TextBlock.Span> texts(Sheet.WireLine wire, int column) {
    return switch (column) {
      case 1 -> List.of(new TextBlock.Span(wire.mark(), true));
      case 2 -> List.of(new TextBlock.Span(wire.lead(), false));
      case 3 -> ends(wire.terminals());
      case 4 -> ends(wire.jacks());
      default -> List.of(new TextBlock.Span(wire.change(), wire.move() != null));
    };
  }

  private static List<TextBlock.Span> ends(List<Sheet.WireEnd> ends) {
    List<TextBlock.Span> texts = new ArrayList<>();
    for (Sheet.WireEnd end : ends) {
      texts.add(new TextBlock.Span(end.at(), end.from() != null));
      if (end.from() != null) {
        texts.add(new TextBlock.Span(end.from(), false));
      }
    }
    return texts;
  }

  // ---- the columns ----

  /**
   * The letters have what they need. No other column is narrower than what stays on one line in it,
   * or else than its longest word, where that can be; what is left is shared so that the table is
   * as low as can be.
   */
  private List<Double> widths(double width) {
    List<List<List<TextBlock.Span>>> columns = new ArrayList<>();
    List<Double> unbroken = new ArrayList<>();
    List<Double> words = new ArrayList<>();
    List<Double> lines = new ArrayList<>();
    for (int c = 1; c < titles().size(); c++) {
      List<List<TextBlock.Span>> cells = new ArrayList<>();
      cells.add(List.of(new TextBlock.Span(titles().get(c), true)));
      for (Sheet.WireLine wire : setup.wires()) {
        cells.add(texts(wire, c));
      }
      columns.add(cells);
      unbroken.add(widest(cells, this::unbroken) + SIDES);
      words.add(widest(cells, this::longestWord) + SIDES);
      lines.add(widest(cells, text -> lineWidth(text.text(), text)) + SIDES);
    }
    double letters = unbroken.remove(0);
    words.remove(0);
    lines.remove(0);
    columns.remove(0);
    double room = width - TICK - letters;
    double together = unbroken.stream().mapToDouble(one -> one).sum();
    List<Double> least = shared(room, together <= room ? unbroken : words);
    List<Double> widths = new ArrayList<>(List.of(TICK, letters));
    widths.addAll(new LowestColumns(this::lines, columns, lines).of(least, room));
    return widths;
  }

  private static double widest(
      List<List<TextBlock.Span>> cells, ToDoubleFunction<TextBlock.Span> width) {
    return cells.stream().flatMap(List::stream).mapToDouble(width).max().orElse(0);
  }

  /** How many lines texts under each other have in a column. */
  private int lines(List<TextBlock.Span> texts, double width) {
    int sum = 0;
    for (TextBlock.Span text : texts) {
      sum += write.block(SIZE, text.bold(), width - SIDES, text.text()).lines();
    }
    return sum;
  }

  private double unbroken(TextBlock.Span text) {
    return Unbroken.widest(text.text(), one -> lineWidth(one, text));
  }

  private double longestWord(TextBlock.Span text) {
    double most = 0;
    StringTokenizer words = new StringTokenizer(text.text());
    while (words.hasMoreTokens()) {
      most = Math.max(most, lineWidth(words.nextToken(), text));
    }
    return most;
  }

  private double lineWidth(String text, TextBlock.Span span) {
    return write.fonts().width(text, SIZE, span.bold()) + 0.1;
  }

  /** What each gets of a width: the least wishes first, each at most its share of what is left. */
  private static List<Double> shared(double width, List<Double> wishes) {
    List<Integer> order = new ArrayList<>();
    for (int c = 0; c < wishes.size(); c++) {
      order.add(c);
    }
    order.sort(Comparator.comparing(wishes::get));
    List<Double> given = new ArrayList<>(wishes);
    double left = width;
    for (int i = 0; i < order.size(); i++) {
      double own = Math.min(wishes.get(order.get(i)), left / (order.size() - i));
      given.set(order.get(i), own);
      left -= own;
    }
    return given;
  }
}
