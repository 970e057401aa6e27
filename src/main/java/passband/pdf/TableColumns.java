package passband.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import passband.render.Sheet;

/** The columns of a table of test points. */
final class TableColumns {
  /** The size of a further setting's value. */
  static final double EXTRA_SIZE = 11;

  private static final double NUMBER = 26;
  private static final double SETTING = 62;
  private static final double RESULT = 92;
  private static final double TIMES = 54;
  private static final double UNIT = 40;

  private final List<String> titles = new ArrayList<>();
  private final List<Double> widths = new ArrayList<>();

  TableColumns(Sheet.Group group, Fonts fonts, double inner) {
    column("No.", NUMBER);
    if (group.hasSetting()) {
      column("Setting", SETTING);
    }
    for (int i = 0; i < group.extras().size(); i++) {
      column(capital(group.extras().get(i)), extra(group, fonts, i));
    }
    if (group.hasLoad()) {
      column("Load", SETTING);
    }
    column("Reading", cells(group) + UNIT);
    int limits = titles.size();
    column("Limits", 0);
    column("Result", RESULT);
    if (group.hasTimes()) {
      column("On, rest", TIMES);
    }
    double used = widths.stream().mapToDouble(w -> w).sum();
    widths.set(limits, Math.max(70, inner - used));
  }

  private void column(String title, double width) {
    titles.add(title);
    widths.add(width);
  }

  /** As wide as its widest value, up to a quarter of a page. */
  private static double extra(Sheet.Group group, Fonts fonts, int column) {
    double most = fonts.width(capital(group.extras().get(column)), 9, true);
    for (Sheet.Line line : group.lines()) {
      most = Math.max(most, fonts.width(line.extras().get(column), EXTRA_SIZE, true));
    }
    return Math.min(most + 9, 130);
  }

  private static double cells(Sheet.Group group) {
    double most = 0;
    for (Sheet.Line line : group.lines()) {
      for (Sheet.Box box : line.boxes()) {
        most = Math.max(most, RowPart.Digits.width(box.cells()));
      }
    }
    return most;
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  List<String> titles() {
    return titles;
  }

  List<Double> widths() {
    return widths;
  }

  double width(int column) {
    return widths.get(column);
  }
}
