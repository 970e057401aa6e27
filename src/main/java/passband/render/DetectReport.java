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
import passband.detect.Fault;
import passband.detect.Gain;
import passband.detect.Outcome;

/** What a procedure catches, for people: what is missed first. */
public final class DetectReport {
  /** What a share of a tolerance is, in the false fails. */
  static final String SHARE =
      "Counted are all readings with limits, of output, peaks, leakage, times and alarms alike, and"
          + " what is worked out from them. Each lies at this share of the way from its nominal"
          + " value (the middle of its limits where none is stated) to its lower or upper tolerance"
          + " limit, in the quantity that is read (a current, not its power), before guard band and"
          + " rounding; of a computed and a stated limit the tighter counts. With one limit and no"
          + " nominal value, the smaller of reading and limit is this share of the greater; on an"
          + " open side nothing fails.";

  private DetectReport() {}

  /** The whole report. */
  public static String text(Detection detection) {
    StringBuilder out = new StringBuilder();
    out.append(detection.plan().name())
        .append(", revision ")
        .append(detection.plan().revision().label())
        .append(": ")
        .append(DetectWords.ENGLISH.summary(detection))
        .append("\n");
    unnoticed(detection, out);
    rest(detection, out);
    gains(detection, out);
    falseFails(detection, out);
    out.append("\nHidden by a fault of the bench, of gain errors a quarter over tolerance\n");
    List<String> hidden = DetectWords.ENGLISH.hidden(detection);
    hidden.forEach(line -> out.append("  ").append(line).append('\n'));
    out.append(hidden.isEmpty() ? "  none\n" : "");
    idle(detection, out);
    out.append("\nAssumed\n");
    DetectWords.ENGLISH
        .assumptions(detection)
        .forEach(line -> out.append("  ").append(line).append('\n'));
    return out.toString();
  }

  static String tolerance(Gain gain) {
    return DetectWords.ENGLISH
        .language()
        .of("detect.tolerance", DetectWords.ENGLISH.tolerance(gain));
  }

  static String percent(@Nullable Double share, int decimals) {
    return DetectWords.ENGLISH.percent(share, decimals);
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
    return title(finding.fault(), finding.size());
  }

  private static String title(Fault fault, Fault.Size size) {
    return fault.name() + (size.text().isEmpty() ? "" : ", " + size.text());
  }

  private static void unnoticed(Detection detection, StringBuilder out) {
    out.append("\nMissed or not read\n");
    boolean none = true;
    for (Finding worst : detection.worst().values()) {
      if (worst.outcome().isUnnoticed()) {
        none = false;
        line(detection, worst, out);
        advice(detection, worst, true, out);
      }
    }
    if (none) {
      out.append("  nothing of the catalogue\n");
    }
    for (String place : detection.untested()) {
      out.append("  no output is read of ").append(place).append('\n');
      out.append("       add: ").append(DetectAdvice.UNTESTED).append('\n');
    }
  }

  /**
   * What would catch it, a line each: lines of the source with the sizes and places that they are
   * for; else in words.
   */
  private static void advice(
      Detection detection, Finding finding, boolean always, StringBuilder out) {
    DetectAdvice advice = new DetectAdvice(detection);
    var proposals = advice.proposals(finding.fault());
    proposals.forEach(
        (proposal, reason) ->
            out.append("       add: ")
                .append(proposal.text())
                .append(reason.isEmpty() ? "" : ", for " + reason)
                .append('\n'));
    if (always && !advice.isWhole(finding.fault())) {
      out.append("       add: ")
          .append(proposals.isEmpty() ? "" : "at other places: ")
          .append(detection.advice(finding.fault()))
          .append('\n');
    }
  }

  private static void line(Detection detection, Finding finding, StringBuilder out) {
    out.append("  ").append(finding.fault().id()).append("  ").append(title(finding));
    out.append(": ").append(said(finding));
    if (!finding.where().isEmpty() && finding.outcome() != Outcome.NOT_READ) {
      out.append(" (").append(detection.words().of(finding.where())).append(')');
    }
    out.append('\n');
  }

  private static void rest(Detection detection, StringBuilder out) {
    out.append("\nPartly caught, at the worst place\n");
    boolean any = false;
    for (Finding worst : detection.worst().values()) {
      if (worst.outcome() == Outcome.PARTLY) {
        any = true;
        line(detection, worst, out);
        advice(detection, worst, false, out);
      }
    }
    out.append(any ? "" : "  none\n").append('\n');
    settled(detection).forEach(line -> out.append(line).append('\n'));
    List<String> exempt = exempt(detection);
    out.append("Does not apply").append(exempt.isEmpty() ? ": none\n" : "\n");
    exempt.forEach(line -> out.append("  ").append(line).append('\n'));
  }

  /** The faults by number that leave nothing to be done. */
  static List<String> settled(Detection detection) {
    return List.of(
        "Caught everywhere: " + numbers(detection, Outcome.CAUGHT),
        "Inside tolerance: " + numbers(detection, Outcome.INSIDE));
  }

  private static String numbers(Detection detection, Outcome outcome) {
    List<String> numbers = new ArrayList<>();
    for (Finding worst : detection.worst().values()) {
      if (worst.outcome() == outcome) {
        numbers.add(worst.fault().id());
      }
    }
    return joined(numbers);
  }

  /** The faults that do not apply, with the reason: a line for each reason. */
  static List<String> exempt(Detection detection) {
    Map<String, List<String>> reasons = new LinkedHashMap<>();
    for (Finding worst : detection.worst().values()) {
      if (worst.outcome() == Outcome.NOT_APPLICABLE) {
        reasons
            .computeIfAbsent(worst.fault().unless(), reason -> new ArrayList<>())
            .add(worst.fault().id() + " " + worst.fault().name());
      }
    }
    List<String> lines = new ArrayList<>();
    reasons.forEach((reason, faults) -> lines.add(String.join(", ", faults) + ": " + reason));
    return lines;
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
    out.append("\nFalse fail of a good generator, every reading at one share of its tolerance\n");
    for (FalseFail fail : detection.falseFails()) {
      out.append("  ")
          .append(share(fail))
          .append(": low ")
          .append(fail.low().text())
          .append(", high ")
          .append(fail.high().text())
          .append('\n');
    }
    out.append("  ").append(SHARE).append('\n');
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
    detection
        .idle()
        .forEach(row -> out.append("  ").append(detection.words().of(row.point())).append('\n'));
  }
}
