package passband.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.detect.Chance;
import passband.detect.Detection;
import passband.detect.Detection.FalseFail;
import passband.detect.Detection.Finding;
import passband.detect.Gain;
import passband.detect.Outcome;

/** What a procedure catches, for people: what is missed first. */
public final class DetectReport {
  /** What every figure is under. */
  static final List<String> ASSUMPTIONS =
      List.of(
          "Every probability is given the fault: nothing here says how likely a fault is.",
          "Errors are spread over their limits as their instrument's profile says, rectangular where"
              + " it says nothing.",
          "All readings of one range of an instrument share one error in a visit, and so do all"
              + " readings into one value of a load.",
          "A display rounds to its resolution; readings do not scatter otherwise (no repeatability"
              + " is stated).",
          "The generator keeps its power over loads beside the one that is set.",
          "A mode without a nominal value is taken to deliver the middle of its limits.");

  private DetectReport() {}

  /** The whole report. */
  public static String text(Detection detection) {
    StringBuilder out = new StringBuilder();
    out.append(detection.plan().name())
        .append(", revision ")
        .append(detection.plan().revision().label())
        .append(": ")
        .append(summary(detection))
        .append("\n");
    unnoticed(detection, out);
    rest(detection, out);
    gains(detection, out);
    falseFails(detection, out);
    idle(detection, out);
    out.append("\nAssumed\n");
    assumptions(detection).forEach(line -> out.append("  ").append(line).append('\n'));
    return out.toString();
  }

  /** What is assumed, and what is left out of this procedure. */
  public static List<String> assumptions(Detection detection) {
    List<String> all = new ArrayList<>(ASSUMPTIONS);
    all.addAll(detection.notes());
    return all;
  }

  /** One line: how many faults go unnoticed, and how small an error is caught. */
  public static String summary(Detection detection) {
    int applies = 0;
    int unnoticed = 0;
    for (Finding worst : detection.worst().values()) {
      applies += worst.outcome() == Outcome.NOT_APPLICABLE ? 0 : 1;
      unnoticed += worst.outcome().isUnnoticed() ? 1 : 0;
    }
    List<String> caught = new ArrayList<>();
    Map<String, Gain> widest = new LinkedHashMap<>();
    for (Gain gain : detection.gains()) {
      widest.merge(gain.place().mode(), gain, (a, b) -> width(b) > width(a) ? b : a);
    }
    widest
        .values()
        .forEach(
            gain ->
                caught.add(gain.place().mode() + " " + both(gain) + " (" + tolerance(gain) + ")"));
    return unnoticed
        + " of "
        + applies
        + " faults missed or not read"
        + (caught.isEmpty() ? "" : "; smallest gain error caught: " + String.join(", ", caught));
  }

  private static double width(Gain gain) {
    double low = gain.low() == null ? 9 : -gain.low();
    return Math.max(low, gain.high() == null ? 9 : gain.high());
  }

  static String both(Gain gain) {
    return percent(gain.low(), 0) + "/" + percent(gain.high(), 0) + " %";
  }

  static String tolerance(Gain gain) {
    double low = gain.toleranceLow();
    double high = gain.toleranceHigh();
    if (Math.abs(low + high) < 0.005) {
      return "tolerance \u00b1" + Math.round(high * 100) + " %";
    }
    return "tolerance "
        + (Double.isInfinite(low) ? "open" : percent(low, 0))
        + "/"
        + (Double.isInfinite(high) ? "open" : percent(high, 0) + " %");
  }

  /** A share in per cent with its sign, rounded away from zero, so that it is caught indeed. */
  static String percent(@Nullable Double share, int decimals) {
    if (share == null) {
      return "none";
    }
    double power = Math.pow(10, decimals);
    double value = Math.ceil(Math.abs(share) * 100 * power - 1e-6) / power;
    String digits =
        new java.math.BigDecimal(value)
            .setScale(decimals, java.math.RoundingMode.HALF_EVEN)
            .toPlainString();
    return (share < 0 ? "\u2212" : "+") + digits;
  }

  static String said(Finding finding) {
    Chance power = finding.power();
    return switch (finding.outcome()) {
      case CAUGHT -> power.sure() ? "caught, sure" : "caught " + power.text();
      case PARTLY -> "partly " + power.text();
      case MISSED -> power.never() ? "missed, sure" : "missed " + power.text();
      case INSIDE -> power.never() ? "inside tolerance" : "inside tolerance " + power.text();
      default -> finding.outcome().word();
    };
  }

  static String title(Finding finding) {
    return finding.fault().name()
        + (finding.size().text().isEmpty() ? "" : ", " + finding.size().text());
  }

  private static void unnoticed(Detection detection, StringBuilder out) {
    out.append("\nMissed or not read\n");
    boolean none = true;
    for (Finding worst : detection.worst().values()) {
      if (worst.outcome().isUnnoticed()) {
        none = false;
        line(worst, out);
        out.append("       add: ").append(advice(worst)).append('\n');
      }
    }
    if (none) {
      out.append("  nothing of the catalogue\n");
    }
    for (String place : detection.untested()) {
      out.append("  no output is read of ").append(place).append('\n');
    }
  }

  /** The row that would catch it; else what would, in words. */
  static String advice(Finding finding) {
    return finding.proposal() == null ? finding.fault().advice() : finding.proposal();
  }

  private static void line(Finding finding, StringBuilder out) {
    out.append("  ").append(finding.fault().id()).append("  ").append(title(finding));
    out.append(": ").append(said(finding));
    if (!finding.where().isEmpty() && finding.outcome() != Outcome.NOT_READ) {
      out.append(" (").append(finding.where()).append(')');
    }
    out.append('\n');
  }

  private static void rest(Detection detection, StringBuilder out) {
    out.append("\nPartly caught, at the worst place\n");
    List<String> caught = new ArrayList<>();
    List<String> inside = new ArrayList<>();
    List<String> none = new ArrayList<>();
    boolean any = false;
    for (Finding worst : detection.worst().values()) {
      switch (worst.outcome()) {
        case PARTLY -> {
          any = true;
          line(worst, out);
          if (worst.proposal() != null) {
            out.append("       add: ").append(worst.proposal()).append('\n');
          }
        }
        case CAUGHT -> caught.add(worst.fault().id());
        case INSIDE -> inside.add(worst.fault().id());
        case NOT_APPLICABLE -> none.add(worst.fault().id());
        default -> {}
      }
    }
    out.append(any ? "" : "  none\n");
    out.append("\nCaught everywhere: ").append(joined(caught)).append('\n');
    out.append("Inside tolerance: ").append(joined(inside)).append('\n');
    out.append("Does not apply: ").append(joined(none)).append('\n');
  }

  private static String joined(List<String> words) {
    return words.isEmpty() ? "none" : String.join(" ", words);
  }

  private static void gains(Detection detection, StringBuilder out) {
    out.append("\nSmallest gain error (of the power) caught with 95 %\n");
    out.append(
        String.format(
            java.util.Locale.ROOT,
            "  %-22s %8s %5s %8s %8s  %-20s %s%n",
            "mode outlet",
            "load",
            "rows",
            "low",
            "high",
            "",
            "low, if the ranges share their error"));
    for (Gain gain : detection.gains()) {
      out.append(
          String.format(
              java.util.Locale.ROOT,
              "  %-22s %8s %5d %8s %8s  %-20s %s%n",
              gain.place().text(),
              gain.load(),
              gain.rows(),
              percent(gain.low(), 1),
              percent(gain.high(), 1),
              tolerance(gain),
              percent(gain.shared(), 1)));
    }
  }

  private static void falseFails(Detection detection, StringBuilder out) {
    out.append("\nFalse fail of a good generator, every row at one share of its tolerance\n");
    for (FalseFail fail : detection.falseFails()) {
      out.append("  ")
          .append(share(fail))
          .append(": low ")
          .append(fail.low().text())
          .append(", high ")
          .append(fail.high().text())
          .append('\n');
    }
  }

  static String share(FalseFail fail) {
    return fail.share() == 0 ? "nominal" : new java.math.BigDecimal(fail.share() + "").toString();
  }

  private static void idle(Detection detection, StringBuilder out) {
    out.append("\nRows that add nothing against this catalogue: ");
    if (detection.idle().isEmpty()) {
      out.append("none\n");
      return;
    }
    out.append(detection.idle().size())
        .append(
            "; they may go together (failures now and then are left out: there every activation counts)\n");
    detection.idle().forEach(row -> out.append("  ").append(row.point()).append('\n'));
  }
}
