package passband.pdf;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.render.Sheet;
import passband.words.Language;

/**
 * Writes headings, text, lists and tables of words as parts, each with its place in the structure.
 */
final class PartWriter {
  private static final double SIZE = TextPart.SIZE;
  private static final double LIST_INDENT = 34;

  /** The size of a column's heading. */
  static final double HEAD_SIZE = 9;

  /** What a cell leaves free at its sides. */
  private static final double CELL_SIDES = 7;

  /** How high a row is that is written in by hand. */
  static final double BY_HAND = 20;

  /** The number of an entry that stands alone, and prints none. */
  static final int ALONE = 0;

  /** So many rows of a table stay together at its beginning and at its end. */
  private static final int TOGETHER = 3;

  private final Language language;
  private final Fonts fonts;
  private final double inner;
  private final Flow flow;
  private String section = "Sect:front";
  private int number;
  private int serial;

  PartWriter(Language language, Fonts fonts, Paper paper) {
    this.language = language;
    this.fonts = fonts;
    this.inner = paper.inner();
    this.flow = new Flow(paper);
  }

  /** The pages of what has been written. */
  List<Flow.Page> pages() {
    return flow.pages();
  }

  /** Words of the sheet's language. */
  String says(String key, Object... values) {
    return language.of(key, values);
  }

  Fonts fonts() {
    return fonts;
  }

  /** The width of the text. */
  double inner() {
    return inner;
  }

  void add(Part part) {
    flow.add(part);
  }

  /** What follows stays on one page where it fits, until {@link #end}. */
  void begin() {
    flow.begin();
  }

  /** Ends what {@link #begin} began. */
  void end() {
    flow.end();
  }

  /** Whether what is added from here on stays on one page, with what waits for it. */
  void together(boolean stays) {
    flow.together(stays);
  }

  /** What is printed in the corner of the pages that follow. */
  void label(String label) {
    flow.label(label);
  }

  /** Begins a section of the structure, whose steps are counted from one. */
  void section(String name) {
    section = name;
    number = 0;
  }

  /** A number that no other part has. */
  int next() {
    return serial++;
  }

  TextBlock block(double size, boolean bold, double width, String text) {
    return TextBlock.of(fonts, size, width, bold, text);
  }

  List<String> path(String... more) {
    List<String> path = new ArrayList<>(List.of(section));
    path.addAll(List.of(more));
    return path;
  }

  /** Writes a heading and gives it back. */
  TextPart heading(String text) {
    TextPart heading =
        TextPart.of(path("H2:" + next()), block(13, true, inner, text), 7, 3, inner)
            .ruled(1.4)
            .kept();
    add(heading);
    return heading;
  }

  void small(String text) {
    add(smallPart(text));
  }

  /** A heading of the third level. */
  TextPart smallPart(String text) {
    return TextPart.of(path("H3:" + next()), block(10.5, true, inner, text), 4, 2, inner).kept();
  }

  void note(@Nullable String text) {
    if (text != null) {
      add(paragraph(text, false));
    }
  }

  TextPart paragraph(String text, boolean bold) {
    return TextPart.of(path("P:" + next()), block(SIZE, bold, inner, text), 2, 3, inner);
  }

  void caution(List<String> path, String text) {
    add(cautionPart(path, text));
  }

  /** A caution in its frame. */
  TextPart cautionPart(List<String> path, String text) {
    List<TextBlock.Span> spans =
        List.of(new TextBlock.Span(says("caution"), true), new TextBlock.Span(text, false));
    TextBlock words = new TextBlock(fonts, 10.5, inner - 20, spans);
    return TextPart.of(path, words, 2, 3, inner).framed(2);
  }

  void listed(String list, int number, String text) {
    add(item(list, number, text, false));
  }

  private TextPart item(String list, int number, String text, boolean tick) {
    return item(list, number, text, tick, inner);
  }

  /** An entry of a list. */
  TextPart item(String list, int number, String text, boolean tick, double width) {
    double indent = (tick ? LIST_INDENT : LIST_INDENT - 14) + overhang(number);
    TextBlock words = block(SIZE, false, width - indent, text);
    List<String> path = path("L:" + list, "LI:" + number);
    if (number == ALONE) {
      path.add("LBody");
    }
    return TextPart.of(path, words, 1, width < inner ? 1.5 : 2, width)
        .marked(number == ALONE ? null : number + ".", tick, indent);
  }

  /** How much more room a number takes than one of two digits. */
  private double overhang(int number) {
    double width = number == ALONE ? 0 : fonts.width(number + ".", SIZE, false);
    return width < 15 ? 0 : width - 12;
  }

  /**
   * Counts so many further steps of the section, in which no number stands twice; gives the number
   * of the step before them.
   */
  int numbered(int count) {
    number += count;
    return number - count;
  }

  void steps(List<Sheet.StepLine> steps) {
    String list = "steps-" + next();
    for (Sheet.StepLine step : steps) {
      if (step.kind().equals("caution")) {
        caution(path("P:" + next()), step.text());
      } else if (step.ask() == null) {
        listed(list, numbered(1) + 1, step.text());
      } else {
        ask(list, numbered(1) + 1, step.ask());
      }
    }
  }

  void asks(List<Sheet.Ask> asks) {
    String list = "asks-" + next();
    asks.forEach(ask -> ask(list, numbered(1) + 1, ask));
  }

  /** A blank, the outcomes or a box, whatever it asks for. */
  void ask(String list, int number, Sheet.Ask ask) {
    switch (ask.kind()) {
      case "record" ->
          add(item(list, number, ask.text() + ": " + blank(ask), false).asking(ask.id()));
      case "choice" -> choose(list, number, ask);
      default -> add(item(list, number, ask.text(), true).asking(ask.id()));
    }
  }

  /** A line to write on; where there are limits, shorter, with them and what they are for. */
  private String blank(Sheet.Ask ask) {
    String unit = ask.unit() == null ? "" : " " + ask.unit();
    return ask.limits() == null
        ? "_".repeat(40) + unit
        : "_".repeat(20)
            + unit
            + "   "
            + ask.limits()
            + "   \u2610 "
            + says("pass")
            + " \u2610 "
            + says("fails");
  }

  private void choose(String list, int number, Sheet.Ask ask) {
    ChoicePart line = inLine(list, number, ask);
    if (line.width() <= inner) {
      add(line);
      return;
    }
    add(item(list, number, ask.text(), false).asking(ask.id()).kept());
    for (int i = 0; i < ask.options().size(); i++) {
      String printed = outcome(ask, i);
      TextPart part =
          TextPart.of(
                  path("L:" + list, "LI:" + number, "LBody", "L:outcomes", "LI:" + i, "LBody"),
                  block(SIZE, false, inner - 60, printed),
                  1,
                  2,
                  inner)
              .marked(null, true, LIST_INDENT + 14);
      add(i + 1 < ask.options().size() ? part.kept() : part);
    }
  }

  private String outcome(Sheet.Ask ask, int place) {
    String outcome = ask.options().get(place);
    return outcome.equals(ask.pass()) ? says("passes", outcome) : outcome;
  }

  private ChoicePart inLine(String list, int number, Sheet.Ask ask) {
    List<ChoicePart.Word> outcomes = new ArrayList<>();
    for (int i = 0; i < ask.options().size(); i++) {
      outcomes.add(word(outcome(ask, i)));
    }
    List<String> path = path("L:" + list, "LI:" + number);
    if (number == ALONE) {
      path.add("LBody");
    }
    return new ChoicePart(
        path,
        number == ALONE ? null : number + ".",
        LIST_INDENT - 14 + overhang(number),
        word(ask.text()),
        outcomes,
        ask.id());
  }

  private ChoicePart.Word word(String text) {
    double width = fonts.width(text, SIZE, false);
    return new ChoicePart.Word(block(SIZE, false, width + 1, text), width);
  }

  TableCell words(String text, boolean bold, double width, double size) {
    return WordsCell.of(block(size, bold, width - CELL_SIDES, text));
  }

  /** Boxes to tick, each with a word; line by line. */
  TableCell ticks(List<List<String>> words, double width, @Nullable String item) {
    List<List<TicksCell.Tick>> ticks = new ArrayList<>();
    for (List<String> line : words) {
      List<Double> rooms = TicksCell.rooms(tickWords(line), width - CELL_SIDES);
      List<TicksCell.Tick> boxes = new ArrayList<>();
      for (int i = 0; i < rooms.size(); i++) {
        double room = TicksCell.wordWidth(rooms.get(i));
        TextBlock word = block(TicksCell.WORD_SIZE, false, room, line.get(i));
        boxes.add(new TicksCell.Tick(word, rooms.get(i)));
      }
      ticks.add(boxes);
    }
    return new TicksCell(ticks, item);
  }

  /** How wide words beside boxes are, in points. */
  List<Double> tickWords(List<String> words) {
    return words.stream().map(word -> fonts.width(word, TicksCell.WORD_SIZE, false)).toList();
  }

  private TableCell head(String text, double width) {
    return new WordsCell(List.of(block(HEAD_SIZE, true, width - CELL_SIDES, text)), "TH");
  }

  RowPart headRow(List<String> table, List<Double> widths, List<String> titles) {
    List<TableCell> cells = new ArrayList<>();
    for (int i = 0; i < titles.size(); i++) {
      cells.add(head(titles.get(i), widths.get(i)));
    }
    return new RowPart(table, "head", widths, cells, null, 0);
  }

  /** A table of words; blank rows are as high as a signature. */
  void table(List<Double> widths, List<String> titles, List<List<String>> rows) {
    table(widths, titles, rows, 1);
  }

  /** The same for a reader at a desk: its first rows stay together, and its last. */
  void listing(List<Double> widths, List<String> titles, List<List<String>> rows) {
    table(widths, titles, rows, TOGETHER);
  }

  private void table(
      List<Double> wishes, List<String> titles, List<List<String>> rows, int together) {
    List<Double> widths = wideEnough(wishes, titles, rows);
    List<String> table = path("Table:" + next());
    RowPart row = headRow(table, widths, titles);
    Part.Heading head = Part.Heading.of(row);
    add(row);
    for (int i = 0; i < rows.size(); i++) {
      List<TableCell> cells = new ArrayList<>();
      for (int c = 0; c < widths.size(); c++) {
        String text = rows.get(i).get(c);
        cells.add(
            text.isEmpty()
                ? new BlankCell(BY_HAND, null)
                : words(text, false, widths.get(c), SIZE));
      }
      int after = i + 1 == rows.size() ? 4 : 0;
      boolean keep = isKept(i, rows.size(), together);
      add(new RowPart(table, "r" + i, widths, cells, List.of(), head, after, keep, 0));
    }
  }

  /** Widths by which no column is narrower than its longest word, where that can be. */
  private List<Double> wideEnough(
      List<Double> wishes, List<String> titles, List<List<String>> rows) {
    List<Double> least = new ArrayList<>();
    for (int c = 0; c < wishes.size(); c++) {
      double most = Unbroken.widest(titles.get(c), one -> fonts.width(one, HEAD_SIZE, true));
      for (List<String> row : rows) {
        most = Math.max(most, Unbroken.widest(row.get(c), one -> fonts.width(one, SIZE, false)));
      }
      least.add(most + CELL_SIDES);
    }
    double missing = 0;
    double spare = 0;
    for (int c = 0; c < wishes.size(); c++) {
      missing += Math.max(0, least.get(c) - wishes.get(c));
      spare += Math.max(0, wishes.get(c) - least.get(c));
    }
    if (missing > spare) {
      return wishes;
    }
    List<Double> widths = new ArrayList<>();
    for (int c = 0; c < wishes.size(); c++) {
      double over = wishes.get(c) - least.get(c);
      widths.add(over <= 0 ? least.get(c) : wishes.get(c) - over * missing / spare);
    }
    return widths;
  }

  /** Whether a row stays with the next: a short table is whole, of a long one the ends are. */
  private static boolean isKept(int row, int rows, int together) {
    boolean end = row < together - 1 || row > rows - together - 1;
    return row + 1 < rows && together > 1 && (rows <= 2 * together || end);
  }

  List<Double> shares(double... shares) {
    List<Double> widths = new ArrayList<>();
    for (double share : shares) {
      widths.add(inner * share);
    }
    return widths;
  }
}
