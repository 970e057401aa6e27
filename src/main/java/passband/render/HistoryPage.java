package passband.render;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import passband.draw.Svg;
import passband.evidence.ItemList;
import passband.evidence.ItemNames;
import passband.evidence.ItemWords;
import passband.judge.History;
import passband.judge.Trend;

/** A generator's drift as a page to print: a plot for each point, the warnings first. */
public final class HistoryPage {
  private static final String STYLE = Checklist.resource("diff.css");

  private HistoryPage() {}

  /** The whole file. */
  public static String of(ItemList list, History history) {
    ItemNames names = ItemNames.of(list);
    List<String> plots = new ArrayList<>();
    for (History.Drift drift : history.drifts()) {
      Trend trend = drift.trend();
      if (trend != null) {
        String unit = ItemWords.unit(drift.limit()).strip();
        plots.add(
            Svg.element(
                TrendPicture.of(names.of(drift.limit()), trend, unit, drift.next()),
                "drift-" + (plots.size() + 1)));
      }
    }
    Map<String, Object> model = new HashMap<>();
    model.put("source", list.source());
    model.put("generator", history.device() + " " + history.serial());
    model.put("dates", history.dates().stream().map(Object::toString).toList());
    model.put("warnings", history.warnings(names));
    model.put("suggestion", Objects.requireNonNullElse(history.suggestion(names), ""));
    model.put("plots", plots);
    model.put("style", STYLE);
    model.put("styleHash", Checklist.hash(STYLE));
    return Templates.filled("history.ftlh", model);
  }
}
