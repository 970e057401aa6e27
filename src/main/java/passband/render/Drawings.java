package passband.render;

import java.util.LinkedHashMap;
import java.util.Map;
import passband.draw.Drawing;
import passband.draw.LimitPicture;
import passband.draw.Svg;
import passband.draw.WiringDrawing;
import passband.plan.Plan;
import passband.plan.Stage;

/** {@code setups/*.svg}, a wiring drawing for each setup on each outlet; {@code limits/*.svg}. */
public final class Drawings {
  private Drawings() {}

  /** Whole files by name, in bench order. */
  public static Map<String, String> setups(Plan plan) {
    Map<String, String> files = new LinkedHashMap<>();
    for (Stage.Run run : plan.runs()) {
      if (run.setup() != null) {
        Drawing drawing = WiringDrawing.of(plan, run);
        files.putIfAbsent(drawing.name() + ".svg", Svg.file(drawing));
      }
    }
    return files;
  }

  /** Where the limits of each test, mode and quantity lie: whole files by name, in bench order. */
  public static Map<String, String> limits(Plan plan) {
    Map<String, String> files = new LinkedHashMap<>();
    for (Drawing drawing : LimitPicture.of(plan)) {
      files.put(drawing.name() + ".svg", Svg.file(drawing));
    }
    return files;
  }
}
