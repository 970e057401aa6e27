package passband.detect;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.model.Device.Mode;
import passband.model.Instruments;
import passband.plan.Figure;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Units;
import passband.syntax.Step;
import passband.syntax.Tree;

/** Proposed lines as they stand in a source. */
final class RowText {
  private RowText() {}

  /** Whether nothing else is set, done or chosen at a row than mode, setting and load. */
  static boolean isPlain(SheetLine line) {
    Point point = line.point();
    return !Instruments.DEVICE.equals(line.limit().read().by())
        && point.setting() != null
        && line.ohms() != null
        && point.extras().keySet().stream().allMatch("activation"::equals)
        && point.otherLoads().isEmpty()
        && point.also().isEmpty()
        && point.values().isEmpty()
        && line.run().when().condition().option() == null
        && line.run().setup() != null
        && line.run().tree().steps().stream().allMatch(RowText::onlyAsks);
  }

  /** A tick is the row's own: another row does without it. */
  private static boolean onlyAsks(Tree.Steps block) {
    return block.replacing() == null
        && block.steps().stream().allMatch(Step.Confirm.class::isInstance);
  }

  /** A test of its own with one row, read as another one is. */
  static List<String> test(
      SheetLine like, Figure setting, Figure load, @Nullable Rational onTime, SheetLines lines) {
    Point.Activation by = like.point().activation();
    return test(like, setting, load, onTime, by == null ? null : by.written().text(), lines);
  }

  /** The same by a contact; null where nothing has to say which. */
  static List<String> test(
      SheetLine like,
      Figure setting,
      Figure load,
      @Nullable Rational onTime,
      @Nullable String by,
      SheetLines lines) {
    Stage.Run run = like.run();
    List<String> text = new ArrayList<>();
    text.add("test " + name("more", lines) + " \"One row more\" {");
    if (run.outlet() != null) {
      text.add("  outlet " + run.outlet().name().text());
    }
    if (run.setup() != null) {
      text.add("  setup " + run.setup().name().text());
    }
    if (run.state() != null) {
      text.add("  inside device." + run.state().name().text());
    }
    var written = run.tree().onTime();
    if (onTime != null) {
      text.add("  on-time " + amount(new Figure(onTime, Units.of("s"))));
    } else if (written != null) {
      text.add("  on-time " + written.span().text());
    }
    text.add("  accept " + accept(like));
    Mode mode = like.mode();
    if (mode.loads() != null && !mode.loads().contains(load.si())) {
      text.add("  allow load-off-rated because \"It is read off the rated load on purpose.\"");
    }
    text.add("  table {");
    text.add("    mode | setting | load" + (by == null ? "" : " | activation"));
    text.add(
        "    "
            + mode.name().text()
            + " | "
            + amount(setting)
            + " | "
            + amount(load)
            + (by == null ? "" : " | " + by));
    text.add("  }");
    text.add("}");
    return text;
  }

  /** A name that no test has. */
  static String name(String wanted, SheetLines lines) {
    String name = wanted;
    for (int i = 2; isTaken(name, lines); i++) {
      name = wanted + "-" + i;
    }
    return name;
  }

  private static boolean isTaken(String name, SheetLines lines) {
    return lines.plan().runs().stream().anyMatch(run -> run.test().text().equals(name));
  }

  private static String accept(SheetLine like) {
    String written = like.limit().rule().span().text().strip();
    return written.startsWith("accept ") ? written.substring("accept ".length()).strip() : written;
  }

  static String amount(Figure figure) {
    String symbol = figure.unit().symbol();
    return figure.number().toPlain() + (symbol.isEmpty() ? "" : " " + symbol);
  }

  /** Whether lines can be put into a test: it is written by itself, not as a row of several. */
  static boolean isOpen(Stage.Run run) {
    return run.tree().span().text().startsWith("test ");
  }
}
