package passband.render;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.draw.Drawing;
import passband.draw.DriftPicture;
import passband.draw.Svg;
import passband.evidence.ItemList;
import passband.evidence.ItemWords;
import passband.judge.History;

/** A generator's drift as a page to print: a plot for each point, the warnings first. */
public final class HistoryPage {
  private static final String STYLE = Checklist.resource("diff.css");

  private HistoryPage() {}

  /**
   * The whole file.
   *
   * @param intervalDays until the next test
   */
  public static String of(ItemList list, History history, long intervalDays) {
    LocalDate next = history.dates().get(history.dates().size() - 1).plusDays(intervalDays);
    List<String> plots = new ArrayList<>();
    for (History.Drift drift : history.drifts()) {
      if (drift.line() != null) {
        plots.add(
            Svg.element(picture(history.dates(), drift, next), "drift-" + (plots.size() + 1)));
      }
    }
    Map<String, Object> model = new HashMap<>();
    model.put("source", list.source());
    model.put("dates", history.dates().stream().map(Object::toString).toList());
    model.put("warnings", history.warnings());
    model.put("suggestion", Objects.requireNonNullElse(history.suggestion(), ""));
    model.put("plots", plots);
    model.put("style", STYLE);
    model.put("styleHash", Checklist.hash(STYLE));
    return Templates.filled("history.ftlh", model);
  }

  private static Drawing picture(List<LocalDate> all, History.Drift drift, LocalDate next) {
    List<LocalDate> dates = new ArrayList<>();
    List<Double> readings = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      BigDecimal reading = drift.readings().get(i);
      if (reading != null) {
        dates.add(all.get(i));
        readings.add(reading.doubleValue());
      }
    }
    double half = Double.isNaN(drift.halfWidth()) ? 0 : drift.halfWidth();
    return DriftPicture.of(
        drift.limit().id(),
        dates,
        readings,
        orNan(drift.limits().acceptLower()),
        orNan(drift.limits().acceptUpper()),
        ItemWords.unit(drift.limit()).strip(),
        new DriftPicture.Next(next, drift.expected() - half, drift.expected() + half));
  }

  private static double orNan(@Nullable BigDecimal value) {
    return value == null ? Double.NaN : value.doubleValue();
  }
}
