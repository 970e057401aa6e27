package passband.compile;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A point's identity in its parts: {@code TEST/OUTLET/MODE/SETTING/LOAD[/COLUMN=VALUE…][/PHASE]},
 * with a hyphen for what a point does not have.
 *
 * @param parts by the name of the column
 */
record PointId(Map<String, String> parts) {
  private static final String NONE = "-";
  private static final String TEST = "test";
  private static final String PHASE = "phase";

  static PointId of(String test, RowSpec spec, PointLoads loads, Points.Place place) {
    Map<String, String> parts = new LinkedHashMap<>();
    parts.put(TEST, test);
    parts.put("outlet", place.outlet() == null ? NONE : place.outlet().name().text());
    parts.put("mode", spec.mode() == null ? NONE : spec.mode().name().text());
    parts.put("setting", spec.setting() == null ? NONE : spec.setting().id());
    parts.put("load", loads.id());
    loads.others().forEach((role, load) -> further(parts, role + ".load", load.id()));
    spec.extras().forEach((name, extra) -> further(parts, name, extra.id()));
    if (spec.activation() != null) {
      further(parts, "activation", spec.activation().text());
    }
    if (spec.driven() != null) {
      further(parts, "driven", spec.driven().name().text());
    }
    for (RowSpec also : spec.also()) {
      String outlet = also.driven() == null ? "" : also.driven().name().text() + ".";
      further(parts, outlet + "mode", also.mode() == null ? NONE : also.mode().name().text());
      if (also.setting() != null) {
        further(parts, outlet + "setting", also.setting().id());
      }
      String load = Simultaneous.loadId(also);
      if (load != null) {
        further(parts, outlet + "load", load);
      }
      if (also.activation() != null) {
        further(parts, outlet + "activation", also.activation().text());
      }
    }
    if (spec.repeat() != null) {
      further(parts, "repeat", spec.repeat().toPlain());
    }
    if (place.phase() != null) {
      parts.put(PHASE, place.phase());
    }
    return new PointId(parts);
  }

  private static void further(Map<String, String> parts, String column, String value) {
    parts.put(column, column + "=" + value);
  }

  String text() {
    return String.join("/", parts.values());
  }

  /** Whether a column tells the point apart from others. */
  boolean has(String column) {
    return !column.equals(TEST)
        && !column.equals(PHASE)
        && !parts.getOrDefault(column, NONE).equals(NONE);
  }

  /** The identity that the point has in common with those that differ in one column. */
  String starred(String column) {
    Map<String, String> other = new LinkedHashMap<>(parts);
    other.computeIfPresent(
        column, (name, part) -> part.startsWith(column + "=") ? column + "=*" : "*");
    return String.join("/", other.values());
  }
}
