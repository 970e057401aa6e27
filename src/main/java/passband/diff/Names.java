package passband.diff;

import java.util.HashMap;
import java.util.Map;
import passband.model.Device;
import passband.plan.Plan;
import passband.plan.Stage;

/** The names that {@code renamed from} pairs: what an old name is called now. */
public final class Names {
  public static final Names SAME = new Names();

  private final Map<String, String> tests = new HashMap<>();
  private final Map<String, String> outlets = new HashMap<>();
  private final Map<String, String> modes = new HashMap<>();

  private Names() {}

  /** From the old procedure's names to the new one's. */
  static Names of(Plan was, Plan now) {
    Names names = new Names();
    for (Stage.Run run : now.runs()) {
      pair(names.tests, run.renamedFrom(), run.test().text());
    }
    for (Device.Outlet outlet : now.device().outlets()) {
      pair(names.outlets, outlet.renamedFrom(), outlet.name().text());
    }
    for (Device.Mode mode : now.device().modes()) {
      pair(names.modes, mode.renamedFrom(), mode.name().text());
    }
    was.runs().forEach(r -> names.tests.values().removeIf(r.test().text()::equals));
    was.device().outlets().forEach(o -> names.outlets.values().removeIf(o.name().text()::equals));
    was.device().modes().forEach(m -> names.modes.values().removeIf(m.name().text()::equals));
    return names;
  }

  private static void pair(Map<String, String> names, String from, String to) {
    if (from != null) {
      names.put(from, to);
    }
  }

  String test(String name) {
    return tests.getOrDefault(name, name);
  }

  String outlet(String name) {
    return outlets.getOrDefault(name, name);
  }

  String mode(String name) {
    return modes.getOrDefault(name, name);
  }

  /** A point's or limit's identity, {@code TEST/OUTLET/MODE/…}, in new names. */
  String point(String id) {
    String[] parts = id.split("/", -1);
    parts[0] = test(parts[0]);
    parts[1] = outlet(parts[1]);
    parts[2] = mode(parts[2]);
    return String.join("/", parts);
  }

  /** A terminal's name, {@code OUTLET.TERMINAL}, in new names. */
  String terminal(String id) {
    int dot = id.indexOf('.');
    return outlet(id.substring(0, dot)) + id.substring(dot);
  }
}
