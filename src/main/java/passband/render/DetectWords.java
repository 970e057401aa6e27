package passband.render;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.detect.Detection;
import passband.detect.Detection.Cell;
import passband.detect.Detection.Finding;
import passband.detect.Fault;
import passband.detect.Gain;
import passband.detect.Masked;
import passband.detect.Outcome;
import passband.detect.Place;
import passband.words.Language;

/**
 * The words of what a procedure catches: English at the command line, the procedure's language for
 * the reviewer.
 */
public record DetectWords(Language language) {
  /** Those of the command line. */
  static final DetectWords ENGLISH = new DetectWords(Language.ENGLISH);

  private static final List<String> ASSUMED =
      List.of("given", "spread", "shared", "display", "loads", "nominal", "derived", "asked");

  /** What every figure is under. */
  List<String> assumed() {
    return ASSUMED.stream().map(key -> language.of("detect.assumed." + key)).toList();
  }

  /** What is assumed, and what is left out of this procedure. */
  public List<String> assumptions(Detection detection) {
    List<String> all = new ArrayList<>(assumed());
    all.addAll(notes(detection));
    return all;
  }

  /** What is left out of a procedure. */
  List<String> notes(Detection detection) {
    return detection.notes().stream()
        .map(n -> language.of("detect.note." + n.kind().name().toLowerCase(Locale.ROOT), n.value()))
        .toList();
  }

  /** One line: how many faults go unnoticed, and how small an error is caught. */
  public String summary(Detection detection) {
    int applies = 0;
    int unnoticed = 0;
    for (Finding worst : detection.worst().values()) {
      applies += worst.outcome() == Outcome.NOT_APPLICABLE ? 0 : 1;
      unnoticed += worst.outcome().isUnnoticed() ? 1 : 0;
    }
    List<String> caught = new ArrayList<>();
    for (Gain gain : smallest(detection)) {
      String tolerance = language.of("detect.tolerance", tolerance(gain));
      caught.add(gain.place().mode() + " " + both(gain) + " (" + tolerance + ")");
    }
    String said = language.of("detect.summary", unnoticed, applies);
    return caught.isEmpty()
        ? said
        : language.of("detect.summary.gains", said, String.join(", ", caught));
  }

  /**
   * Of each mode at its worst outlet: there the load tells that shows the smallest error, since the
   * rows of one load are enough.
   */
  private static Collection<Gain> smallest(Detection detection) {
    Map<Place, Gain> byPlace = new LinkedHashMap<>();
    for (Gain gain : detection.gains()) {
      byPlace.merge(gain.place(), gain, (a, b) -> width(b) < width(a) ? b : a);
    }
    Map<String, Gain> byMode = new LinkedHashMap<>();
    for (Gain gain : byPlace.values()) {
      byMode.merge(gain.place().mode(), gain, (a, b) -> width(b) > width(a) ? b : a);
    }
    return byMode.values();
  }

  private static double width(Gain gain) {
    double low = gain.low() == null ? 9 : -gain.low();
    return Math.max(low, gain.high() == null ? 9 : gain.high());
  }

  private String both(Gain gain) {
    return percent(gain.low(), 0) + "/" + percent(gain.high(), 0) + " %";
  }

  /** {@code ±15 %}, or its two ends. */
  String tolerance(Gain gain) {
    double low = gain.toleranceLow();
    double high = gain.toleranceHigh();
    if (Math.abs(low + high) < 0.005) {
      return "\u00b1" + Math.round(high * 100) + " %";
    }
    String open = language.of("detect.open");
    return (Double.isInfinite(low) ? open : percent(low, 0))
        + "/"
        + (Double.isInfinite(high) ? open : percent(high, 0) + " %");
  }

  /** A share in per cent with its sign, rounded away from zero, so that it is caught indeed. */
  String percent(@Nullable Double share, int decimals) {
    if (share == null) {
      return language.of("detect.none");
    }
    double power = Math.pow(10, decimals);
    double value = Math.ceil(Math.abs(share) * 100 * power - 1e-6) / power;
    String digits =
        new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
    return (share < 0 ? "\u2212" : "+") + language.number(digits);
  }

  /** A line for each fault of the bench that hides a gain error, with the one it hides best. */
  public List<String> hidden(Detection detection) {
    Map<String, List<Masked>> byFault = new LinkedHashMap<>();
    for (Masked one : detection.masked()) {
      boolean sized = one.bench().sizes().size() > 1;
      String size = sized ? ", " + language.number(one.size().text()) : "";
      byFault
          .computeIfAbsent(
              one.bench().id() + " " + fault(one.bench()) + size, t -> new ArrayList<>())
          .add(one);
    }
    List<String> lines = new ArrayList<>();
    byFault.forEach((title, some) -> lines.add(hidden(title, some)));
    return lines;
  }

  private String hidden(String title, List<Masked> some) {
    Masked worst = Collections.min(some, Comparator.comparingDouble(one -> one.power().value()));
    long places = some.stream().map(one -> one.place().text() + one.load()).distinct().count();
    String said =
        language.of(
            worst.gain() < 0 ? "detect.hidden.low" : "detect.hidden.high",
            title,
            (worst.place().text() + " " + worst.load()).strip(),
            Math.round(Math.abs(worst.gain()) * 100),
            language.number(worst.power().text()));
    return places == 1 ? said : language.of("detect.hidden.worst", said, places);
  }

  /** A fault's name. */
  public String fault(Fault fault) {
    return language.of("fault." + fault.id());
  }

  /** What becomes of a fault at a place, as the matrix says it. */
  String cell(Cell cell) {
    return switch (cell.outcome()) {
      case CAUGHT -> language.of("detect.is.caught");
      case PARTLY -> language.of("detect.is.partly", language.number(cell.power().text()));
      case MISSED -> language.of("detect.is.missed");
      case INSIDE -> language.of("detect.is.inside");
      default -> "\u2013";
    };
  }
}
