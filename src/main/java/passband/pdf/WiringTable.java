package passband.pdf;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.StringTokenizer;
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
   * The letters have what they need. No other column is narrower than its longest word where that
   * can be; what is left goes to those that need little more to have each text in one line.
   */
  private List<Double> widths(double width) {
    List<Double> words = new ArrayList<>();
    List<Double> more = new ArrayList<>();
    for (int c = 1; c < titles().size(); c++) {
      List<TextBlock.Span> texts = new ArrayList<>();
      texts.add(new TextBlock.Span(titles().get(c), true));
      for (Sheet.WireLine wire : setup.wires()) {
        texts.addAll(texts(wire, c));
      }
      double word = texts.stream().mapToDouble(this::longestWord).max().orElse(0);
      double line =
          texts.stream().mapToDouble(text -> lineWidth(text.text(), text)).max().orElse(0);
      words.add(word + SIDES);
      more.add(line - word);
    }
    double letters = words.remove(0);
    more.remove(0);
    List<Double> least = shared(width - TICK - letters, words);
    List<Double> given = shared(width - TICK - letters - sum(least), more);
    List<Double> widths = new ArrayList<>(List.of(TICK, letters));
    for (int c = 0; c < least.size(); c++) {
      widths.add(least.get(c) + given.get(c));
    }
    return widths;
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

  private static double sum(List<Double> widths) {
    return widths.stream().mapToDouble(one -> one).sum();
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
