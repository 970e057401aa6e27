package passband.judge;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Many reports of one generator: how each point drifts, by the straight line of least squares
 * through its last reading of each day, and whether the line leaves the accepted readings before
 * the next interval ends.
 *
 * @param dates of the reports, the earliest first
 */
public record History(List<LocalDate> dates, List<Drift> drifts) {

  /**
   * One point over time.
   *
   * @param readings one for each date; null where there is none
   * @param perYear the slope in the limit's unit a year; NaN with fewer than two readings
   * @param expected what the line comes to at the end of the next interval; NaN likewise
   * @param crosses whether that is outside what is accepted
   */
  public record Drift(
      PointLimit limit,
      List<BigDecimal> readings,
      double perYear,
      double expected,
      boolean crosses) {}

  /** A report with its day. */
  public record Dated(LocalDate date, Report report) {}

  /**
   * Puts reports together.
   *
   * @param intervalDays how long the next interval is
   */
  public static History of(List<Dated> reports, long intervalDays) {
    List<Dated> sorted = new ArrayList<>(reports);
    sorted.sort(Comparator.comparing(Dated::date));
    List<LocalDate> dates = sorted.stream().map(Dated::date).toList();
    List<Drift> drifts = new ArrayList<>();
    for (PointLimit limit : sorted.get(0).report().table().points()) {
      List<BigDecimal> readings = new ArrayList<>();
      sorted.forEach(d -> readings.add(reading(d.report(), limit)));
      drifts.add(drift(limit, dates, readings, intervalDays));
    }
    return new History(dates, drifts);
  }

  private static BigDecimal reading(Report report, PointLimit limit) {
    for (Judgement j : report.judgements()) {
      boolean judged = j.verdict() == Verdict.PASS || j.verdict() == Verdict.FAIL;
      if (judged && j.limit().id().equals(limit.id())) {
        return Judge.number(j.readings().get(j.readings().size() - 1));
      }
    }
    return null;
  }

  private static Drift drift(
      PointLimit limit, List<LocalDate> dates, List<BigDecimal> readings, long intervalDays) {
    List<Double> days = new ArrayList<>();
    List<Double> values = new ArrayList<>();
    for (int i = 0; i < dates.size(); i++) {
      if (readings.get(i) != null) {
        days.add((double) ChronoUnit.DAYS.between(dates.get(0), dates.get(i)));
        values.add(readings.get(i).doubleValue());
      }
    }
    StraightLine line = StraightLine.fit(days, values);
    if (line == null) {
      return new Drift(limit, readings, Double.NaN, Double.NaN, false);
    }
    double last = ChronoUnit.DAYS.between(dates.get(0), dates.get(dates.size() - 1));
    double expected = line.at(last + intervalDays);
    boolean low = limit.acceptLower() != null && expected < limit.acceptLower().doubleValue();
    boolean high = limit.acceptUpper() != null && expected > limit.acceptUpper().doubleValue();
    return new Drift(limit, readings, line.slope() * 365.25, expected, low || high);
  }

  /** The day in a record or in a file's name; null where neither has one. */
  public static LocalDate date(Readings readings, String fileName) {
    for (String name : List.of("record:date", "record:done-on")) {
      LocalDate date = parsed(readings.records().get(name));
      if (date != null) {
        return date;
      }
    }
    java.util.regex.Matcher in =
        java.util.regex.Pattern.compile("\\d{4}-\\d\\d-\\d\\d").matcher(fileName);
    return in.find() ? parsed(in.group()) : null;
  }

  private static LocalDate parsed(String text) {
    try {
      return text == null ? null : LocalDate.parse(text.strip());
    } catch (DateTimeParseException e) {
      return null;
    }
  }

  /** A table in text, warnings after it. */
  public String text() {
    StringBuilder out = new StringBuilder("dates: " + dates + "\n");
    for (Drift drift : drifts) {
      if (drift.readings().stream().anyMatch(r -> r != null)) {
        out.append(drift.limit().id() + ":");
        drift.readings().forEach(r -> out.append(" " + (r == null ? "-" : r.toPlainString())));
        out.append(" " + drift.limit().unit());
        if (!Double.isNaN(drift.perYear())) {
          out.append(", " + signed(drift.perYear()) + " a year, next " + plain(drift.expected()));
        }
        out.append('\n');
      }
    }
    warnings().forEach(w -> out.append("warning: " + w + "\n"));
    return out.toString();
  }

  /** What will be outside before the next time, a sentence each. */
  public List<String> warnings() {
    return drifts.stream()
        .filter(Drift::crosses)
        .map(
            d ->
                d.limit().id()
                    + " will come to "
                    + plain(d.expected())
                    + " before the next time, accepted is "
                    + d.limit().accepted())
        .toList();
  }

  private static String signed(double value) {
    return (value > 0 ? "+" : "") + plain(value);
  }

  private static String plain(double value) {
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(4));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
