package passband.detect;

import java.util.List;
import passband.model.Analyzer;
import passband.model.Analyzer.LoadBank;
import passband.model.Device.Mode;
import passband.model.Instruments;
import passband.model.Series;
import passband.plan.Plan;

/** What this bench, or the generator's profile, lacks of what would catch a fault. */
final class Lacking {
  private final Plan plan;

  Lacking(Plan plan) {
    this.plan = plan;
  }

  /** In words; empty where it lacks nothing, or nobody can tell. */
  String of(Fault fault) {
    return switch (fault.effect()) {
      case "waveform" -> measured("the peak voltage", List.of("peak-voltage"));
      case "without-contact", "elsewhere" ->
          measured("the current", List.of("current", "voltage", "power"));
      case "voltage-limit" -> load(true);
      case "current-limit" -> load(false);
      case "gain" -> fault.over().equals("high-load") ? load(true) : "";
      case "above-limit", "no-value" -> limited(fault.over());
      default -> "";
    };
  }

  private String limited(String over) {
    return switch (over) {
      case "peak" -> measured("the peak voltage", List.of("peak-voltage"));
      case "hf-leakage" -> measured("it", List.of("hf-leakage"));
      case "mains-leakage" -> measured("it", SheetLines.MAINS);
      case "time" -> time();
      default -> "";
    };
  }

  private String time() {
    boolean stated =
        plan.device().outlets().stream().anyMatch(o -> plan.device().bound(o, "time") != null);
    String unmeasured = measured("the time", List.of("time"));
    return !unmeasured.isEmpty() || stated ? unmeasured : "this profile states no time";
  }

  private String measured(String what, List<String> quantities) {
    Instruments bench = plan.instruments();
    return quantities.stream().allMatch(quantity -> bench.measuring(quantity).isEmpty())
        ? "no instrument of this bench measures " + what
        : "";
  }

  private String load(boolean above) {
    for (Mode mode : plan.device().modes()) {
      Series rated = mode.loads();
      if (rated != null && hasBeyond(rated, above)) {
        return "";
      }
    }
    return "this bench has no load " + (above ? "above" : "below") + " a rated one";
  }

  private boolean hasBeyond(Series rated, boolean above) {
    for (Analyzer unit : plan.instruments().units()) {
      for (LoadBank bank : unit.loads()) {
        boolean beyond =
            above
                ? bank.values().highest().compareTo(rated.highest()) > 0
                : bank.values().lowest().compareTo(rated.lowest()) < 0;
        if (beyond) {
          return true;
        }
      }
    }
    return false;
  }
}
