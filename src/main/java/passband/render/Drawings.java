package passband.render;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import passband.draw.Drawing;
import passband.draw.Svg;
import passband.plan.Plan;

/** {@code setups/*.svg}, a wiring drawing for each setup on each outlet; {@code limits/*.svg}. */
public final class Drawings {
  private Drawings() {}

  /** Whole files by name, in bench order. */
  public static Map<String, String> setups(Plan plan) {
    return setups(SheetMaker.sheet(plan));
  }

  /** The same of a sheet; each drawing is on it once at the least. */
  public static Map<String, String> setups(Sheet sheet) {
    return files(
        sheet.blocks().stream()
            .filter(b -> b.run() != null && b.run().setup() != null)
            .map(b -> b.run().setup().drawing())
            .filter(Objects::nonNull)
            .toList());
  }

  /** Where the limits of each test, mode and quantity lie: whole files by name, in bench order. */
  public static Map<String, String> limits(Plan plan) {
    return limits(SheetMaker.sheet(plan));
  }

  /** The same of a sheet. */
  public static Map<String, String> limits(Sheet sheet) {
    return files(sheet.pictures());
  }

  private static Map<String, String> files(List<Drawing> drawings) {
    Map<String, String> files = new LinkedHashMap<>();
    for (Drawing drawing : drawings) {
      files.computeIfAbsent(drawing.name() + ".svg", name -> Svg.file(drawing));
    }
    return files;
  }
}
