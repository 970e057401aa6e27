package passband.render;

import java.math.BigDecimal;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.draw.DriftPicture;
import passband.draw.Svg;
import passband.evidence.ItemList;
import passband.judge.History;

/** A generator's drift as a page to print: a plot for each point, the warnings first. */
public final class HistoryPage {
  private static final String STYLE = Checklist.resource("diff.css");

  private HistoryPage() {}

  /** The whole file. */
  public static String of(ItemList list, History history) {
    List<String> plots = new ArrayList<>();
    for (History.Drift drift : history.drifts()) {
      List<Double> days = new ArrayList<>();
      List<Double> readings = new ArrayList<>();
      for (int i = 0; i < history.dates().size(); i++) {
        if (drift.readings().get(i) != null) {
          days.add(
              (double) ChronoUnit.DAYS.between(history.dates().get(0), history.dates().get(i)));
          readings.add(drift.readings().get(i).doubleValue());
        }
      }
      if (days.size() > 1) {
        double low = orNan(drift.limits().acceptLower());
        double high = orNan(drift.limits().acceptUpper());
        plots.add(
            Svg.element(
                DriftPicture.of(
                    drift.limit().id(), days, readings, low, high, drift.limit().scale().unit()),
                "drift-" + (plots.size() + 1)));
      }
    }
    Map<String, Object> model = new HashMap<>();
    model.put("source", list.source());
    model.put("dates", history.dates().stream().map(Object::toString).toList());
    model.put("warnings", history.warnings());
    model.put("plots", plots);
    model.put("style", STYLE);
    model.put("styleHash", Checklist.hash(STYLE));
    return Templates.filled("history.ftlh", model);
  }

  private static double orNan(@Nullable BigDecimal value) {
    return value == null ? Double.NaN : value.doubleValue();
  }
}
