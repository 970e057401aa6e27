package passband.render;

import java.util.Map;
import passband.plan.Plan;

/** {@code checklist.html}: the technician's sheet, one self-contained file. */
public final class Checklist {
  private Checklist() {}

  /** The whole file. */
  public static String of(Plan plan) {
    return Templates.filled("checklist.ftlh", Map.of("sheet", SheetMaker.sheet(plan)));
  }
}
