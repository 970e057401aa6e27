package passband.judge;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import passband.evidence.BadInput;
import passband.quantity.Unit;
import passband.quantity.Units;

/** Compares readings with limits. */
public final class Judge {
  private static final Pattern NUMBER = Pattern.compile("[+\\-\u2212]?\\d+(\\.\\d+)?");
  private static final List<String> PHASES = List.of("as-found", "as-left");

  private final LimitTable table;
  private final Readings readings;
  private final Map<String, List<Readings.Row>> rows = new HashMap<>();
  private final List<String> warnings = new ArrayList<>();

  private Judge(LimitTable table, Readings readings) {
    this.table = table;
    this.readings = readings;
  }

  /**
   * Judges a set of readings.
   *
   * @param today the day of the judgement as ISO 8601, against which calibrations are held; null
   *     for none: there is no clock here
   */
  public static Report judge(LimitTable table, Readings readings, String today) throws BadInput {
    return new Judge(table, readings).report(today);
  }

  private Report report(String today) throws BadInput {
    if (readings.digest() == null) {
      warnings.add("the readings do not say which limits they were taken by");
    } else if (!readings.digest().equals(table.digest())) {
      throw new BadInput(
          "the readings were taken by another procedure or revision: their digest is "
              + shortened(readings.digest())
              + ", the limits' is "
              + shortened(table.digest()));
    }
    sort();
    List<Judgement> judgements = new ArrayList<>();
    table.points().forEach(limit -> judgements.add(judgement(limit)));
    calibration(today);
    return new Report(
        table,
        readings,
        judgements,
        Report.byPhase(judgements),
        Report.together(Report.counting(judgements)),
        List.copyOf(warnings));
  }

  private static String shortened(String digest) {
    return digest.length() > 12 ? digest.substring(0, 12) : digest;
  }

  // ---- which reading is of which point ----

  private void sort() throws BadInput {
    Set<String> known = new HashSet<>();
    table.points().forEach(p -> known.add(p.id()));
    table.readings().forEach(p -> known.add(p.id()));
    Set<String> strange = new HashSet<>();
    for (Readings.Row row : readings.rows()) {
      String id = known.contains(row.point()) ? row.point() : phased(row);
      if (!known.contains(id)) {
        strange.add(row.point());
      }
      rows.computeIfAbsent(id, k -> new ArrayList<>()).add(row);
    }
    if (!strange.isEmpty()) {
      throw new BadInput(
          "the limits have no point " + String.join(", ", strange.stream().sorted().toList()));
    }
  }

  /** The identity with the row's phase before the quantity. */
  private static String phased(Readings.Row row) {
    int last = row.point().lastIndexOf('/');
    return last < 0 || row.phase().isEmpty()
        ? row.point()
        : row.point().substring(0, last) + "/" + row.phase() + row.point().substring(last);
  }

  private static String phase(PointLimit limit) {
    for (String phase : PHASES) {
      if (limit.id().contains("/" + phase + "/")) {
        return phase;
      }
    }
    return "";
  }

  // ---- one point ----

  private Judgement judgement(PointLimit limit) {
    List<String> written = new ArrayList<>();
    Readings.Row last = null;
    for (Readings.Row row : rows.getOrDefault(limit.id(), List.of())) {
      if (!row.undone() && !row.reading().isEmpty()) {
        written.add(row.reading());
        last = row;
      }
    }
    if (limit.derived() != null) {
      return derived(limit, written);
    }
    if (last == null) {
      return of(limit, written, Verdict.NOT_DONE, "");
    }
    String unclear = unclear(limit, last);
    if (unclear != null) {
      return of(limit, written, Verdict.UNCLEAR, unclear);
    }
    return compared(limit, written, number(last.reading()));
  }

  private static String unclear(PointLimit limit, Readings.Row row) {
    if (!NUMBER.matcher(row.reading()).matches()) {
      return row.reading().contains(",")
          ? "the decimal point is a point"
          : "'" + row.reading() + "' is no number";
    }
    if (number(row.reading()).scale() < limit.decimals()) {
      return "it has fewer decimals than its limits (" + limit.decimals() + ")";
    }
    Unit unit = Units.find(row.unit());
    boolean same =
        row.unit().equals(limit.unit()) || unit != null && unit.ucum().equals(limit.unit());
    if (!same) {
      return row.unit().isEmpty()
          ? "it has no unit"
          : "it is in " + row.unit() + ", its limits are in " + limit.unit();
    }
    return null;
  }

  /** A reading as written, with either minus sign. */
  static BigDecimal number(String written) {
    return new BigDecimal(written.replace('\u2212', '-'));
  }

  private Judgement compared(PointLimit limit, List<String> written, BigDecimal reading) {
    boolean low = limit.acceptLower() != null && reading.compareTo(limit.acceptLower()) < 0;
    boolean high = limit.acceptUpper() != null && reading.compareTo(limit.acceptUpper()) > 0;
    List<String> why = new ArrayList<>();
    if (low) {
      why.add("below " + limit.acceptLower().toPlainString());
    }
    if (high) {
      why.add("above " + limit.acceptUpper().toPlainString());
    }
    boolean fails = low || high;
    if (fails && inTolerance(limit, reading)) {
      why.add("inside the tolerance, outside the guard band");
    }
    if (written.size() > 1) {
      why.add("attempt " + written.size() + ", the first was " + written.get(0));
    }
    double coverage = table.coverage().doubleValue();
    double y = reading.doubleValue();
    double standard = limit.standard(y, coverage);
    return new Judgement(
        limit,
        phase(limit),
        List.copyOf(written),
        fails ? Verdict.FAIL : Verdict.PASS,
        String.join("; ", why),
        standard * coverage,
        Double.isNaN(standard)
            ? Double.NaN
            : Budget.conformity(y, doubled(limit.lower()), doubled(limit.upper()), standard));
  }

  private static Double doubled(BigDecimal value) {
    return value == null ? null : value.doubleValue();
  }

  private static boolean inTolerance(PointLimit limit, BigDecimal reading) {
    return (limit.lower() == null || reading.compareTo(limit.lower()) >= 0)
        && (limit.upper() == null || reading.compareTo(limit.upper()) <= 0);
  }

  private static Judgement of(PointLimit limit, List<String> written, Verdict verdict, String why) {
    return new Judgement(
        limit, phase(limit), List.copyOf(written), verdict, why, Double.NaN, Double.NaN);
  }

  // ---- derived quantities ----

  /** Worked out from the readings of its point; what was written for it has to agree. */
  private Judgement derived(PointLimit limit, List<String> written) {
    Map<String, Readings.Row> parts = new HashMap<>();
    List<PointLimit> around = new ArrayList<>(table.readings());
    around.addAll(table.points());
    for (PointLimit part : around) {
      List<Readings.Row> here = rows.getOrDefault(part.id(), List.of());
      boolean beside = part.place().equals(limit.place()) && part.derived() == null;
      if (beside && !here.isEmpty() && !here.get(here.size() - 1).reading().isEmpty()) {
        Readings.Row last = here.get(here.size() - 1);
        String unclear = unclear(part, last);
        if (unclear != null) {
          return of(limit, written, Verdict.UNCLEAR, part.quantity() + ": " + unclear);
        }
        parts.put(part.quantity(), last);
      }
    }
    Derivation derivation = new Derivation(limit, parts);
    BigDecimal value = derivation.value();
    if (value == null) {
      return written.isEmpty()
          ? of(limit, written, Verdict.NOT_DONE, "")
          : of(limit, written, Verdict.UNCLEAR, "what it is worked out from is not read");
    }
    if (!written.isEmpty()) {
      String last = written.get(written.size() - 1);
      boolean agrees =
          NUMBER.matcher(last).matches()
              && number(last).subtract(value).abs().compareTo(limit.resolution()) <= 0;
      if (!agrees) {
        return of(
            limit,
            written,
            Verdict.UNCLEAR,
            "it was written as " + last + " and comes to " + shown(limit, value));
      }
    }
    return compared(limit, List.of(shown(limit, value)), value);
  }

  /** Two decimals more than its limits have. */
  private static String shown(PointLimit limit, BigDecimal value) {
    int decimals = Math.min(value.scale(), limit.decimals() + 2);
    return value.setScale(decimals, java.math.RoundingMode.HALF_EVEN).toPlainString();
  }

  // ---- calibration ----

  private void calibration(String today) {
    if (today == null) {
      return;
    }
    readings
        .records()
        .forEach(
            (name, text) -> {
              java.util.regex.Matcher date = Pattern.compile("\\d{4}-\\d\\d-\\d\\d").matcher(text);
              if (name.contains("due") && date.find() && date.group().compareTo(today) < 0) {
                warnings.add("the analyzer's calibration was due on " + date.group());
              }
            });
  }
}
