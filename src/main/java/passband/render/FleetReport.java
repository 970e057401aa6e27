package passband.render;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import passband.draw.Drawing;
import passband.draw.Svg;
import passband.evidence.ItemWords;
import passband.judge.Cell;
import passband.judge.Trend;
import passband.record.Fleet;
import passband.record.RecordSummary;

/** The records of many generators as text, as a table and as a page. */
public final class FleetReport {
  /** So many generators that drift and so many points are listed, the worst ones. */
  public static final int WORST = 12;

  private FleetReport() {}

  /** For a terminal. */
  public static String text(Fleet fleet, LocalDate today) {
    StringBuilder out = new StringBuilder(head(fleet, today) + "\n");
    fleet.left().forEach(left -> out.append("left out: " + left.file() + ": " + left.why() + "\n"));
    fleet.doubts().forEach(doubt -> out.append("in doubt: " + doubt + "\n"));
    for (Fleet.Unit unit : fleet.units()) {
      out.append(
          unit.device()
              + " "
              + unit.serial()
              + " by "
              + unit.last().visit().procedure()
              + ": "
              + unit.last().date()
              + " "
              + unit.last().overall()
              + ", due "
              + unit.due()
              + (unit.overdue(today) ? ", OVERDUE" : "")
              + "\n");
    }
    for (Fleet.Rate rate : fleet.models()) {
      out.append(
          "failed as found: "
              + rate.device()
              + ": "
              + share(rate)
              + (rate.visits() == 1 ? " visit" : " visits")
              + "\n");
    }
    for (Fleet.Rate rate : worst(fleet.points())) {
      out.append(
          "failed as found: " + rate.device() + " " + rate.what() + ": " + share(rate) + "\n");
    }
    out.append(more(fleet.points().size(), "point", "failed as found at least once"));
    List<Fleet.Drift> drifts = worstOfEach(fleet);
    for (Fleet.Drift drift : worst(drifts)) {
      out.append("drift: " + sentence(drift(drift, others(fleet, drift))) + "\n");
    }
    out.append(more(drifts.size(), "generator", "with three readings or more of a point"));
    return out.toString();
  }

  private static String more(int all, String what, String which) {
    return all > WORST ? "(" + counted(all - WORST, "more " + what) + " " + which + ")\n" : "";
  }

  private static String head(Fleet fleet, LocalDate today) {
    long overdue = fleet.units().stream().filter(unit -> unit.overdue(today)).count();
    int visits = fleet.units().stream().mapToInt(unit -> unit.visits().size()).sum();
    return counted(fleet.generators(), "generator")
        + ", "
        + counted(visits, "visit")
        + ", "
        + fleet.units().stream().filter(unit -> !unit.passed()).count()
        + " not passed at the last visit, "
        + overdue
        + " overdue on "
        + today
        + ", "
        + counted(fleet.left().size(), "file")
        + " left out";
  }

  /** A number of things, more of which have an s at the end of their name. */
  private static String counted(long number, String one) {
    return number + " " + one + (number == 1 ? "" : "s");
  }

  private static <T> List<T> worst(List<T> all) {
    return all.subList(0, Math.min(WORST, all.size()));
  }

  private static String share(Fleet.Rate rate) {
    return rate.failed() + " of " + rate.visits();
  }

  private static String sentence(DriftRow drift) {
    return drift.device()
        + " "
        + drift.serial()
        + ", "
        + drift.point()
        + ": "
        + drift.visits()
        + " visits, last "
        + drift.last()
        + ", "
        + drift.until()
        + (drift.others() == 0
            ? ""
            : " (and " + counted(drift.others(), "more point") + " of it in ten years)");
  }

  /** Of each generator the point that leaves its limits first. */
  private static List<Fleet.Drift> worstOfEach(Fleet fleet) {
    Map<String, Fleet.Drift> first = new LinkedHashMap<>();
    fleet.drifts().forEach(drift -> first.putIfAbsent(drift.unit().key(), drift));
    return List.copyOf(first.values());
  }

  /** How many other points of a generator may leave their limits too. */
  private static int others(Fleet fleet, Fleet.Drift worst) {
    return (int)
        fleet.drifts().stream()
            .filter(d -> d != worst && d.unit() == worst.unit() && d.inside() < Trend.LONGEST)
            .count();
  }

  private static DriftRow drift(Fleet.Drift drift, int others) {
    return new DriftRow(
        drift.unit().device(),
        drift.unit().serial(),
        drift.name(),
        drift.trend().readings().size(),
        plain(drift.last().value()) + ItemWords.unit(drift.last().unit()),
        drift.isOutside()
            ? "outside on " + drift.lastDay()
            : drift.inside() >= Trend.LONGEST
                ? "stays inside for ten years"
                : "may be outside from " + drift.until(),
        others);
  }

  private static String plain(double value) {
    return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
  }

  /** The columns of {@link #csv}. */
  public static final List<String> COLUMNS =
      List.of(
          "device",
          "serial",
          "procedure",
          "revision",
          "visits",
          "last",
          "result",
          "due",
          "overdue",
          "record");

  /** The columns of {@link #usesCsv}. */
  public static final List<String> USES_COLUMNS =
      List.of("date", "device", "serial", "procedure", "revision", "result", "record");

  /** A line for each generator. */
  public static String csv(Fleet fleet, LocalDate today) {
    return table(
        COLUMNS,
        fleet.units().stream()
            .map(
                unit ->
                    List.of(
                        unit.device(),
                        unit.serial(),
                        unit.last().visit().procedure(),
                        unit.last().visit().revision(),
                        String.valueOf(unit.visits().size()),
                        unit.last().date().toString(),
                        unit.last().overall(),
                        unit.due().toString(),
                        unit.overdue(today) ? "yes" : "no",
                        unit.last().file()))
            .toList());
  }

  /** A line for each visit in which an instrument was used. */
  public static String usesCsv(List<RecordSummary> visits) {
    return table(
        USES_COLUMNS,
        visits.stream()
            .map(
                visit ->
                    List.of(
                        visit.date().toString(),
                        visit.visit().device(),
                        visit.serial(),
                        visit.visit().procedure(),
                        visit.visit().revision(),
                        visit.overall(),
                        visit.file()))
            .toList());
  }

  /** The same for a terminal. */
  public static String usesText(Fleet.Uses uses) {
    StringBuilder out = new StringBuilder(counted(uses.visits().size(), "record") + "\n");
    for (RecordSummary visit : uses.visits()) {
      out.append(
          visit.date()
              + " "
              + visit.visit().device()
              + " "
              + visit.serial()
              + ": "
              + visit.overall()
              + " ("
              + visit.file()
              + ")\n");
    }
    uses.doubtful().forEach(one -> out.append("perhaps: " + one.file() + ": " + one.why() + "\n"));
    return out.toString();
  }

  private static String table(List<String> heading, List<List<String>> rows) {
    StringWriter out = new StringWriter();
    try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(out)) {
      csv.writeRecord(heading);
      rows.forEach(row -> csv.writeRecord(row.stream().map(Cell::written).toList()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  /** What the template prints of a generator. */
  public record Row(
      String device,
      String serial,
      String procedure,
      int visits,
      String last,
      String result,
      String due,
      boolean overdue) {}

  /** What is printed of a drift. */
  public record DriftRow(
      String device,
      String serial,
      String point,
      int visits,
      String last,
      String until,
      int others) {}

  /** A page that needs nothing else, with a plot for each of the worst drifts. */
  public static String html(Fleet fleet, LocalDate today) {
    String style = Checklist.resource("diff.css");
    Map<String, Object> model = new HashMap<>();
    model.put("head", head(fleet, today));
    model.put("left", fleet.left());
    model.put("doubts", fleet.doubts());
    model.put("units", fleet.units().stream().map(unit -> row(unit, today)).toList());
    model.put("models", fleet.models());
    model.put("points", worst(fleet.points()));
    model.put("morePoints", fleet.points().size() - worst(fleet.points()).size());
    List<Fleet.Drift> all = worstOfEach(fleet);
    List<Fleet.Drift> drifts = worst(all);
    model.put("drifts", drifts.stream().map(d -> drift(d, others(fleet, d))).toList());
    model.put("moreDrifts", all.size() - drifts.size());
    model.put(
        "plots",
        drifts.stream().map(d -> Svg.element(picture(d), "drift-" + drifts.indexOf(d))).toList());
    model.put("style", style);
    model.put("styleHash", Checklist.hash(style));
    return Templates.filled("fleet.ftlh", model);
  }

  private static Row row(Fleet.Unit unit, LocalDate today) {
    return new Row(
        unit.device(),
        unit.serial(),
        unit.last().visit().procedure() + ", " + unit.last().visit().revision(),
        unit.visits().size(),
        unit.last().date().toString(),
        unit.last().overall(),
        unit.due().toString(),
        unit.overdue(today));
  }

  /** The next reading is expected a year after the last. */
  private static Drawing picture(Fleet.Drift drift) {
    return TrendPicture.of(
        drift.unit().serial() + ": " + drift.name(),
        drift.trend(),
        ItemWords.unit(drift.last().unit()).strip(),
        drift.lastDay().plusYears(1));
  }
}
