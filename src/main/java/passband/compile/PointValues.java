package passband.compile;

import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import passband.limit.RowValues;
import passband.limit.Value;
import passband.plan.Figure;

/** What the names in an expression stand for on a row: its columns that hold numbers. */
final class PointValues implements RowValues {
  private final Map<String, Value> values = new TreeMap<>();

  PointValues(RowSpec spec) {
    put("setting", spec.setting());
    put("load", spec.load());
    put("target", spec.target());
    for (RowSpec.Extra extra : spec.extras().values()) {
      if (extra.value() != null) {
        values.put(extra.setting().name().text(), extra.value());
      }
    }
  }

  private void put(String name, Figure figure) {
    if (figure != null) {
      values.put(name, Value.of(figure.si(), figure.unit().dimension()));
    }
  }

  @Override
  public Value value(String name) {
    return values.get(name);
  }

  @Override
  public Collection<String> names() {
    return values.keySet();
  }
}
