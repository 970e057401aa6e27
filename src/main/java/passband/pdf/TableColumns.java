package passband.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import passband.render.Sheet;

/**
 * The columns of a table of test points. Where they do not fit beside each other the ones of
 * further settings become narrower; where that is not enough, further settings stand in rows of
 * their own.
 */
final class TableColumns {
  /** The size of a further setting's value. */
  static final double EXTRA_SIZE = 11;

  /** The size of a line's number. */
  static final double NUMBER_SIZE = 11;

  private static final double NUMBER = 26;
  private static final double SETTING = 62;
  private static final double MOST_EXTRA = 130;
  private static final double MOST_DIGITS = 150;
  private static final double LEAST_LIMITS = 70;

  /** The size of limits. */
  static final double LIMITS_SIZE = 11;

  /** The size of the tolerance under limits. */
  static final double TOLERANCE_SIZE = 9;

  private static final double MOST_TOLERANCE = 160;

  /** The height of the boxes to tick beside a reading. */
  private static final double TICKS = 24;

  /** What the limits can spare is taken in so many parts. */
  private static final int PARTS = 8;

  private static final double RESULT = 92;
  private static final double UNIT = 40;

  /** A column of words is never narrower. */
  private static final double LEAST = 40;

  /** What cells leave free at their sides. */
  private static final double SIDES = 7;

  private final Sheet.Group group;
  private final PartWriter write;
  private final Fonts fonts;
  private final boolean beside;
  private final List<Column> columns = new ArrayList<>();

  /**
   * A column.
   *
   * @param least how narrow it can be
   */
  private record Column(String title, double width, double least) {
    double spare() {
      return width - least;
    }
  }

  TableColumns(Sheet.Group group, PartWriter write) {
    double inner = write.inner();
    this.group = group;
    this.write = write;
    this.fonts = write.fonts();
    addAll(true);
    beside = columns.stream().mapToDouble(Column::least).sum() <= inner;
    if (!beside) {
      columns.clear();
      addAll(false);
    }
    fit(inner);
  }

  private void addAll(boolean extras) {
    fixed(write.says("number"), numberWidth());
    if (group.hasSetting()) {
      columns.add(amount(write.says("setting")));
    }
    for (int i = 0; extras && i < group.extras().size(); i++) {
      double width = extraWidth(i);
      columns.add(new Column(title(i), width, Math.min(width, Math.max(LEAST, wordWidth(i)))));
    }
    if (group.hasLoad()) {
      columns.add(amount(write.says("load")));
    }
    fixed(write.says("reading"), readingWidth());
    double limits = limitsWidth();
    columns.add(new Column(write.says("limits"), Math.max(limits, toleranceWidth()), limits));
    fixed(write.says("result"), RESULT);
  }

  /** Of amounts: its heading is never broken. */
  private Column amount(String title) {
    double word = fonts.width(title, PartWriter.HEAD_SIZE, true) + SIDES + 1;
    return new Column(title, Math.max(SETTING, word), Math.max(LEAST, word));
  }

  private void fixed(String title, double width) {
    columns.add(new Column(title, width, width));
  }

  /**
   * Takes what is too much from the columns that can be narrower, from the limits and the others so
   * that the lines are lowest; what is left over the limits get.
   */
  private void fit(double inner) {
    double excess = columns.stream().mapToDouble(Column::width).sum() - inner;
    List<Column> best = narrowed(excess, 0);
    for (int part = 1; excess > 0 && part <= PARTS; part++) {
      List<Column> next = narrowed(excess, part / (double) PARTS);
      best = height(next) < height(best) ? next : best;
    }
    columns.clear();
    columns.addAll(best);
  }

  /** The columns with a part of what the limits can spare taken from them, and more if needed. */
  private List<Column> narrowed(double excess, double part) {
    double most = columns.stream().filter(c -> !isLimits(c)).mapToDouble(Column::spare).sum();
    double own = columns.stream().filter(this::isLimits).mapToDouble(Column::spare).sum() * part;
    double others = Math.max(0, excess - own);
    double share = most <= 0 ? 0 : Math.min(1, others / most);
    double more = most * share - excess;
    List<Column> narrowed = new ArrayList<>();
    for (Column c : columns) {
      double width = isLimits(c) ? Math.max(c.least, c.width + more) : c.width - c.spare() * share;
      narrowed.add(new Column(c.title, width, c.least));
    }
    return narrowed;
  }

  /** How high all lines are by their further settings and limits, in points. */
  private double height(List<Column> some) {
    int extra = group.hasSetting() ? 2 : 1;
    double limits = some.get(some.size() - 2).width - SIDES;
    double sum = 0;
    for (Sheet.Line line : group.lines()) {
      double most = 0;
      for (Sheet.Box box : line.boxes()) {
        double of = high(LIMITS_SIZE, box.judged(), limits, box.limits());
        of += high(TOLERANCE_SIZE, false, limits, tolerance(box));
        most += Math.max(of, TICKS);
      }
      for (int i = 0; beside && i < line.extras().size(); i++) {
        double width = some.get(extra + i).width - SIDES;
        most = Math.max(most, high(EXTRA_SIZE, true, width, line.extras().get(i)));
      }
      sum += most;
    }
    return sum;
  }

  private double high(double size, boolean bold, double width, String text) {
    return text.isEmpty() ? 0 : write.block(size, bold, width, text).height();
  }

  private String tolerance(Sheet.Box box) {
    return box.tolerance() == null ? "" : write.says("limits.tolerance", box.tolerance());
  }

  private boolean isLimits(Column column) {
    return column.title.equals(write.says("limits"));
  }

  private double numberWidth() {
    int last = group.lines().get(group.lines().size() - 1).number();
    return Math.max(NUMBER, fonts.width(Integer.toString(last), NUMBER_SIZE, true) + SIDES + 1);
  }

  /** As wide as its widest value, up to a quarter of a page. */
  private double extraWidth(int extra) {
    double most = fonts.width(title(extra), 9, true);
    for (Sheet.Line line : group.lines()) {
      most = Math.max(most, fonts.width(line.extras().get(extra), EXTRA_SIZE, true));
    }
    return Math.min(most + 9, MOST_EXTRA);
  }

  /** As wide as its widest word. */
  private double wordWidth(int extra) {
    double most = fonts.width(title(extra), 9, true);
    for (Sheet.Line line : group.lines()) {
      most =
          Math.max(
              most,
              Unbroken.widest(
                  line.extras().get(extra), word -> fonts.width(word, EXTRA_SIZE, true)));
    }
    return most + SIDES + 1;
  }

  private double readingWidth() {
    double boxes = 0;
    double unit = UNIT;
    for (Sheet.Line line : group.lines()) {
      for (Sheet.Box box : line.boxes()) {
        boxes = Math.max(boxes, DigitsCell.width(box.cells()));
        unit = Math.max(unit, DigitsCell.unitWidth(fonts, box.unit()) + SIDES);
      }
    }
    return Math.min(boxes, MOST_DIGITS) + unit;
  }

  /** As wide as its widest limits, so that they stand on one line, up to a quarter of a page. */
  private double limitsWidth() {
    double most = LEAST_LIMITS;
    for (Sheet.Line line : group.lines()) {
      for (Sheet.Box box : line.boxes()) {
        most = Math.max(most, fonts.width(box.limits(), LIMITS_SIZE, true) + SIDES + 1);
      }
    }
    return Math.min(most, MOST_EXTRA);
  }

  /** As wide as its widest tolerance in one line, up to a third of a page. */
  private double toleranceWidth() {
    double most = 0;
    for (Sheet.Line line : group.lines()) {
      for (Sheet.Box box : line.boxes()) {
        double width = fonts.width(tolerance(box), TOLERANCE_SIZE, false);
        most = Math.max(most, width + SIDES + 1);
      }
    }
    return Math.min(most, MOST_TOLERANCE);
  }

  private String title(int extra) {
    String name = group.extras().get(extra);
    return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1);
  }

  List<String> titles() {
    return columns.stream().map(Column::title).toList();
  }

  List<Double> widths() {
    return columns.stream().map(Column::width).toList();
  }

  double width(int column) {
    return columns.get(column).width;
  }

  /** The headings of the further settings. */
  List<String> extraTitles() {
    return IntStream.range(0, group.extras().size()).mapToObj(this::title).toList();
  }

  /** Whether further settings stand in the line's own row. */
  boolean extrasBeside() {
    return beside;
  }
}
