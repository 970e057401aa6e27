package passband.render;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.check.Coverage;
import passband.plan.Plan;

/** The coverage of a device as a text table: modes on their outlets, low, middle and high. */
public final class CoverageReport {
  private static final List<String> HEAD = List.of("mode", "outlet", "low", "middle", "high");

  private CoverageReport() {}

  public static String of(Plan plan) {
    List<List<String>> rows = new ArrayList<>();
    rows.add(HEAD);
    for (Coverage.Cell cell : Coverage.cells(plan)) {
      rows.add(
          List.of(
              cell.mode().name().text(),
              cell.outlet().name().text(),
              text(cell, cell.low()),
              text(cell, cell.middle()),
              text(cell, cell.high())));
    }
    StringBuilder out =
        new StringBuilder(
            plan.name().text() + ": coverage of " + plan.device().name().text() + "\n");
    int[] widths = new int[rows.get(0).size()];
    for (int i = 0; i < widths.length; i++) {
      widths[i] = width(rows, i);
    }
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder("  ");
      for (int i = 0; i < row.size(); i++) {
        line.append(row.get(i)).append(" ".repeat(widths[i] - row.get(i).length() + 2));
      }
      out.append(line.toString().stripTrailing()).append('\n');
    }
    return out.toString();
  }

  private static String text(Coverage.Cell cell, @Nullable List<String> settings) {
    if (!cell.tested()) {
      return "MISSING";
    }
    return settings == null
        ? "tested"
        : settings.isEmpty() ? "MISSING" : String.join(", ", settings);
  }

  private static int width(List<List<String>> rows, int column) {
    return rows.stream().mapToInt(r -> r.get(column).length()).max().orElse(0);
  }
}
