package passband.compile;

import java.util.SortedMap;
import passband.limit.Stated;
import passband.limit.Value;
import passband.model.Device.Mode;
import passband.plan.Figure;
import passband.plan.Point;
import passband.source.Span;

/**
 * What one row's combination asks for, on whatever outlet. Parts are null when the table has no
 * such column.
 *
 * @param extras other settings by name
 * @param stated the manual's limits; null when the row has none
 * @param places where its parts are written
 */
record RowSpec(
    Mode mode,
    Figure setting,
    Figure load,
    Figure target,
    SortedMap<String, Extra> extras,
    Stated stated,
    Point.Places places,
    Span span) {

  /**
   * A value of another setting.
   *
   * @param text as printed
   * @param id as in identities
   * @param value null when it is a name
   */
  record Extra(String text, String id, Value value) {}
}
