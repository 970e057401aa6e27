package passband.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import passband.render.Sheet;

/**
 * The columns of a table of test points. Where they do not fit beside each other the ones of
 * further settings become narrower; where that is not enough, further settings stand in rows of
 * their own.
 */
final class TableColumns {
  /** The size of a further setting's value. */
  static final double EXTRA_SIZE = 11;

  /** The size of a setting's value and of a load's. */
  static final double AMOUNT_SIZE = 12;

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

  /** The size of what is read. */
  private static final double TITLE_SIZE = 9;

  /** What is read has so many lines at most where it stands beside its box. */
  private static final int TITLE_LINES = 3;

  private static final double MOST_RESULT = 92;
  private static final double UNIT = 40;

  /** A column of words is never narrower. */
  private static final double LEAST = 40;

  /** What cells leave free at their sides. */
  private static final double SIDES = 7;

  private final Sheet.Group group;
  private final PartWriter write;
  private final Fonts fonts;
  private boolean beside;

  /** How much of a reading's cell what is read takes, in points; 0 where it is above the boxes. */
  private double titles;

  private List<Column> columns = List.of();

  /**
   * A column.
   *
   * @param least how narrow it can be
   * @param whole whether its words stand in one line in any of these widths
   */
  private record Column(String title, double width, double least, boolean whole) {
    double spare() {
      return width - least;
    }

    Column of(double other) {
      return new Column(title, other, least, whole);
    }
  }

  TableColumns(Sheet.Group group, PartWriter write) {
    double inner = write.inner();
    this.group = group;
    this.write = write;
    this.fonts = write.fonts();
    lay(inner);
    for (int lines = 2; lines <= TITLE_LINES && isTitled(); lines++) {
      titlesBeside(inner, titleWidth(lines));
    }
  }

  private void lay(double inner) {
    columns = all(true);
    beside = columns.stream().mapToDouble(Column::least).sum() <= inner;
    if (!beside) {
      columns = all(false);
    }
    fit(inner);
  }

  /** What is read, beside its box if the lines become lower by that. */
  private void titlesBeside(double inner, OptionalDouble width) {
    List<Column> columnsBefore = columns;
    double titlesBefore = titles;
    double heightBefore = height(columns);
    boolean before = beside;
    if (width.isEmpty()) {
      return;
    }
    titles = width.getAsDouble() + DigitsCell.GAP;
    lay(inner);
    double most = columns.stream().mapToDouble(Column::width).sum();
    if (beside != before || most > inner + 0.01 || height(columns) >= heightBefore) {
      columns = columnsBefore;
      titles = titlesBefore;
      beside = before;
    }
  }

  private List<Column> all(boolean extras) {
    List<Column> all = new ArrayList<>();
    all.add(fixed(write.says("number"), numberWidth()));
    if (group.hasSetting()) {
      all.add(amount(write.says("setting"), Sheet.Line::setting));
    }
    for (int i = 0; extras && i < group.extras().size(); i++) {
      double width = extraWidth(i);
      double least = Math.min(width, Math.max(LEAST, wordWidth(i)));
      all.add(new Column(title(i), width, least, false));
    }
    if (group.hasLoad()) {
      all.add(amount(write.says("load"), Sheet.Line::load));
    }
    all.add(fixed(write.says("reading"), readingWidth()));
    double limits = limitsWidth();
    double tolerance = Math.max(limits, toleranceWidth());
    all.add(new Column(write.says("limits"), tolerance, limits, false));
    all.add(fixed(write.says("result"), resultWidth()));
    return all;
  }

  /** Of amounts: its heading is never broken, nor are they where they are not long. */
  private Column amount(String title, Function<Sheet.Line, @Nullable String> amount) {
    double word = headWidth(title);
    double width = Math.max(SETTING, word);
    double most = word;
    for (Sheet.Line line : group.lines()) {
      String text = amount.apply(line);
      most = Math.max(most, text == null ? 0 : fonts.width(text, AMOUNT_SIZE, true) + SIDES + 1);
    }
    return new Column(title, width, Math.min(width, Math.max(LEAST, most)), true);
  }

  private static Column fixed(String title, double width) {
    return new Column(title, width, width, true);
  }

  /**
   * Takes what is too much from the columns whose words stay in one line, then from the limits and
   * the others so that the lines are lowest; what is left over the limits get.
   */
  private void fit(double inner) {
    double excess = columns.stream().mapToDouble(Column::width).sum() - inner;
    double whole = columns.stream().filter(Column::whole).mapToDouble(Column::spare).sum();
    double taken = Math.max(0, Math.min(excess, whole));
    columns = columns.stream().map(c -> c.whole ? less(c, taken, whole) : c).toList();
    List<Column> best = narrowed(excess - taken, 0);
    for (int part = 1; excess > taken && part <= PARTS; part++) {
      List<Column> next = narrowed(excess - taken, part / (double) PARTS);
      best = height(next) < height(best) ? next : best;
    }
    columns = best;
  }

  /** A column narrower by its part of what is taken from all of its kind. */
  private static Column less(Column column, double taken, double spare) {
    return spare <= 0 ? column : column.of(column.width - column.spare() * taken / spare);
  }

  /** The columns with a part of what the limits can spare taken from them, and more if needed. */
  private List<Column> narrowed(double excess, double part) {
    double most = 0;
    double own = 0;
    for (Column c : columns) {
      most += c.whole || isLimits(c) ? 0 : c.spare();
      own += isLimits(c) ? c.spare() * part : 0;
    }
    double taken = Math.min(most, Math.max(0, excess - own));
    List<Column> narrowed = new ArrayList<>();
    for (Column c : columns) {
      if (isLimits(c)) {
        narrowed.add(c.of(Math.max(c.least, c.width + taken - excess)));
      } else {
        narrowed.add(c.whole ? c : less(c, taken, most));
      }
    }
    return narrowed;
  }

  /** How high all lines are by their further settings, boxes and limits, in points. */
  private double height(List<Column> some) {
    int extra = group.hasSetting() ? 2 : 1;
    double limits = some.get(some.size() - 2).width - SIDES;
    double sum = 0;
    for (Sheet.Line line : group.lines()) {
      double most = 0;
      for (Sheet.Box box : line.boxes()) {
        double of = high(LIMITS_SIZE, box.judged(), limits, box.limits());
        of += high(TOLERANCE_SIZE, false, limits, tolerance(box));
        most += Math.max(Math.max(of, TICKS), reading(line, box).height());
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
    double unit = titles > 0 ? 0 : UNIT;
    for (Sheet.Line line : group.lines()) {
      for (Sheet.Box box : line.boxes()) {
        boxes = Math.max(boxes, DigitsCell.width(box.cells()));
        unit = Math.max(unit, DigitsCell.unitWidth(fonts, box.unit()) + SIDES);
      }
    }
    return titles + Math.min(boxes, MOST_DIGITS) + unit;
  }

  /** Whether a line has several boxes, so that what is read has to be said. */
  private boolean isTitled() {
    return group.lines().stream().anyMatch(line -> line.boxes().size() > 1);
  }

  /** The least width in which what is read has so many lines at most; empty for none. */
  private OptionalDouble titleWidth(int lines) {
    return IntStream.range((int) LEAST, (int) MOST_EXTRA)
        .filter(width -> linesOfTitles(width) <= lines)
        .asDoubleStream()
        .findFirst();
  }

  private int linesOfTitles(double width) {
    int most = 0;
    for (Sheet.Line line : group.lines()) {
      for (Sheet.Box box : line.boxes()) {
        most = Math.max(most, write.block(TITLE_SIZE, false, width, box.title()).lines());
      }
    }
    return most;
  }

  /** A reading's boxes with what is read, where that has to be said. */
  DigitsCell reading(Sheet.Line line, Sheet.Box box) {
    double width = width(titles().indexOf(write.says("reading"))) - SIDES;
    double unit = DigitsCell.unitWidth(fonts, box.unit());
    boolean named = titles > 0 || line.boxes().size() > 1;
    double room = titles > 0 ? titles - DigitsCell.GAP : width;
    TextBlock title = named ? write.block(TITLE_SIZE, false, room, box.title()) : null;
    List<String> boxes = DigitsCell.lines(box.cells(), width - titles - unit);
    return new DigitsCell(title, titles, boxes, box.unit(), box.id());
  }

  /** As wide as its words with their boxes to tick. */
  private double resultWidth() {
    double most = headWidth(write.says("result"));
    for (List<String> line : ticks(true)) {
      most = Math.max(most, TicksCell.width(write.tickWords(line)) + SIDES);
    }
    return Math.min(most, MOST_RESULT);
  }

  /** The words beside the boxes to tick of a result, line by line. */
  List<List<String>> ticks(boolean judged) {
    List<String> notDone = List.of(write.says("not-done"));
    return judged
        ? List.of(List.of(write.says("pass"), write.says("fails")), notDone)
        : List.of(notDone);
  }

  private double headWidth(String title) {
    return fonts.width(title, PartWriter.HEAD_SIZE, true) + SIDES + 1;
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
