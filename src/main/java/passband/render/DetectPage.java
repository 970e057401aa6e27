package passband.render;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import passband.detect.Detection;
import passband.detect.Detection.Cell;
import passband.detect.Detection.Finding;
import passband.detect.Fault;
import passband.detect.Gain;
import passband.detect.Outcome;
import passband.detect.Place;
import passband.draw.Drawing;
import passband.draw.PowerPicture;
import passband.draw.Svg;
import passband.words.Language;

/** What procedures catch as one page without a network: what is missed first, curves, a matrix. */
public final class DetectPage {
  private static final String STYLE =
      Checklist.resource("diff.css") + Checklist.resource("detect.css");

  private DetectPage() {}

  /**
   * What the template prints of a fault that is not caught everywhere.
   *
   * @param advice numbers in the list of advice
   */
  public record Missed(String id, String title, String said, String where, String advice) {}

  /** The faults that are not caught everywhere, and what would catch them. */
  public record Open(
      List<Missed> missed, List<Missed> partly, List<DetectAdvice.Item> advice, Rest rest) {}

  /** The faults of which nothing is to be done, and why some do not apply. */
  public record Rest(List<String> settled, List<String> exempt) {}

  /** A line of the table of gains. */
  public record GainRow(
      String place,
      String load,
      int rows,
      String low,
      String high,
      String tolerance,
      String shared) {}

  /** A line of the matrix. */
  public record MatrixRow(String id, String name, List<MatrixCell> cells) {}

  /** A cell: its class for the style, and its words. */
  public record MatrixCell(String kind, String text) {}

  /** A line of the false fails. */
  public record FailRow(String share, String low, String high) {}

  /** What a bench that is not in order hides, and the rows that add nothing. */
  public record Limits(List<String> hidden, List<String> idle) {}

  /** What the template prints of a procedure. */
  public record Part(
      String title,
      String summary,
      Open open,
      List<String> plots,
      List<GainRow> gains,
      List<String> places,
      List<MatrixRow> matrix,
      List<FailRow> fails,
      Limits limits,
      List<String> assumptions) {}

  /** The whole file. */
  public static String of(List<Detection> detections) {
    List<Part> parts = new ArrayList<>();
    for (Detection detection : detections) {
      parts.add(part(detection, parts.size() + 1));
    }
    Map<String, Object> model = new HashMap<>();
    model.put("parts", parts);
    model.put("share", DetectReport.SHARE);
    model.put("style", STYLE);
    model.put("styleHash", Checklist.hash(STYLE));
    return Templates.filled("detect.ftlh", model);
  }

  private static Part part(Detection detection, int number) {
    List<Missed> missed = new ArrayList<>();
    List<Missed> partly = new ArrayList<>();
    DetectAdvice advice = new DetectAdvice(detection);
    for (Outcome open : List.of(Outcome.MISSED, Outcome.NOT_READ, Outcome.PARTLY)) {
      for (Finding worst : detection.worst().values()) {
        if (worst.outcome() == open) {
          boolean unnoticed = open.isUnnoticed();
          String numbers = advice.numbers(worst.fault(), unnoticed);
          (unnoticed ? missed : partly).add(missed(detection, worst, numbers));
        }
      }
    }
    for (String place : detection.untested()) {
      missed.add(new Missed("", "output of " + place, "not read", "", advice.number(place)));
    }
    return new Part(
        detection.plan().title() + ", revision " + detection.plan().revision().label(),
        DetectWords.ENGLISH.summary(detection),
        new Open(missed, partly, advice.items(), rest(detection)),
        plots(detection, number),
        gains(detection),
        placeNames(detection),
        matrix(detection, DetectWords.ENGLISH),
        fails(detection),
        new Limits(
            DetectWords.ENGLISH.hidden(detection),
            detection.idle().stream().map(row -> detection.words().of(row.point())).toList()),
        DetectWords.ENGLISH.assumptions(detection));
  }

  private static Rest rest(Detection detection) {
    return new Rest(DetectReport.settled(detection), DetectReport.exempt(detection));
  }

  private static Missed missed(Detection detection, Finding finding, String advice) {
    return new Missed(
        finding.fault().id(),
        DetectReport.title(finding),
        DetectReport.said(finding),
        finding.outcome() == Outcome.NOT_READ ? "" : detection.words().of(finding.where()),
        advice);
  }

  /** Each picture once: modes and outlets that are tested alike have the same curve. */
  private static List<String> plots(Detection detection, int number) {
    List<String> plots = new ArrayList<>();
    for (Drawing drawing : curves(detection, DetectWords.ENGLISH.language())) {
      plots.add(Svg.element(drawing, "power-" + number + "-" + (plots.size() + 1)));
    }
    return plots;
  }

  /** A curve for each mode and load; outlets with the same one share it. */
  public static List<Drawing> curves(Detection detection, Language language) {
    Map<String, List<Gain>> same = new LinkedHashMap<>();
    for (Gain gain : detection.gains()) {
      if (gain.rows() > 1 || detection.gains().size() < 8) {
        String key = gain.place().mode() + gain.load() + gain.curve();
        same.computeIfAbsent(key, k -> new ArrayList<>()).add(gain);
      }
    }
    List<Drawing> drawings = new ArrayList<>();
    same.values().forEach(gains -> drawings.add(PowerPicture.of(gains, language)));
    return drawings;
  }

  private static List<GainRow> gains(Detection detection) {
    List<GainRow> rows = new ArrayList<>();
    for (Gain gain : detection.gains()) {
      rows.add(
          new GainRow(
              gain.place().text(),
              gain.load(),
              gain.rows(),
              DetectReport.percent(gain.low(), 1),
              DetectReport.percent(gain.high(), 1),
              DetectWords.ENGLISH.tolerance(gain),
              DetectReport.percent(gain.shared(), 1)));
    }
    return rows;
  }

  /** The modes on outlets that the matrix has columns for. */
  public static List<String> placeNames(Detection detection) {
    return places(detection).stream().map(Place::text).toList();
  }

  private static List<Place> places(Detection detection) {
    Set<Place> places = new LinkedHashSet<>();
    detection.gains().forEach(gain -> places.add(gain.place()));
    return new ArrayList<>(places);
  }

  /** The worst of each fault at each place, over its sizes. */
  public static List<MatrixRow> matrix(Detection detection, DetectWords words) {
    List<Place> places = places(detection);
    Map<Fault, Map<Place, Cell>> worst = new LinkedHashMap<>();
    for (Finding finding : detection.findings()) {
      Map<Place, Cell> cells = worst.computeIfAbsent(finding.fault(), f -> new HashMap<>());
      finding
          .places()
          .forEach((place, cell) -> cells.merge(place, cell, (a, b) -> b.isWorseThan(a) ? b : a));
    }
    List<MatrixRow> rows = new ArrayList<>();
    worst.forEach(
        (fault, cells) -> {
          if (!cells.isEmpty()) {
            List<MatrixCell> row = new ArrayList<>();
            places.forEach(place -> row.add(cell(cells.get(place), words)));
            rows.add(new MatrixRow(fault.id(), words.fault(fault), row));
          }
        });
    return rows;
  }

  private static MatrixCell cell(@org.jspecify.annotations.Nullable Cell cell, DetectWords words) {
    if (cell == null) {
      return new MatrixCell("none", "\u2013");
    }
    String kind =
        switch (cell.outcome()) {
          case CAUGHT, PARTLY, MISSED, INSIDE ->
              cell.outcome().name().toLowerCase(java.util.Locale.ROOT);
          default -> "none";
        };
    return new MatrixCell(kind, words.cell(cell));
  }

  private static List<FailRow> fails(Detection detection) {
    List<FailRow> rows = new ArrayList<>();
    detection
        .falseFails()
        .forEach(
            fail ->
                rows.add(
                    new FailRow(DetectReport.share(fail), fail.low().text(), fail.high().text())));
    return rows;
  }
}
