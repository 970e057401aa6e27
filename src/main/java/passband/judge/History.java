package passband.judge;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import passband.evidence.BadInput;
import passband.evidence.Blank;
import passband.evidence.Item;
import passband.evidence.ItemWords;

/**
 * Many reports of one generator: how each point drifts, by the straight line of least squares
 * through its last reading of each day, and whether the line leaves the accepted readings before
 * the next interval ends.
 *
 * @param dates of the reports, the earliest first
 * @param drifts of the points of the latest report
 */
public record History(List<LocalDate> dates, List<Drift> drifts) {

  /**
   * One point over time.
   *
   * @param readings one for each date; null where there is none, or where the point of that
   *     revision meant something else
   * @param perYear the slope in the limit's unit a year; NaN with fewer than two readings
   * @param expected the line's value at the end of the next interval; NaN likewise
   * @param crosses whether that is outside what is accepted
   */
  public record Drift(
      Item.Measured limit,
      List<BigDecimal> readings,
      double perYear,
      double expected,
      boolean crosses) {

    /** What is accepted of the point: only points with limits have a drift. */
    public Item.Limits limits() {
      return Objects.requireNonNull(limit.limits(), "a drift without limits");
    }
  }

  /** A report with its day. */
  public record Dated(LocalDate date, Report report) {}

  /**
   * Puts reports together, across revisions.
   *
   * @param intervalDays how long the next interval is
   * @throws BadInput when the reports are not all of one generator
   */
  public static History of(List<Dated> reports, long intervalDays) throws BadInput {
    oneGenerator(reports);
    List<Dated> sorted = new ArrayList<>(reports);
    sorted.sort(Comparator.comparing(Dated::date));
    List<LocalDate> dates = sorted.stream().map(Dated::date).toList();
    List<Map<String, Judgement>> byId = sorted.stream().map(d -> byId(d.report())).toList();
    List<Drift> drifts = new ArrayList<>();
    for (Item item : sorted.get(sorted.size() - 1).report().list().items()) {
      if (item instanceof Item.Measured limit && limit.limits() != null) {
        List<BigDecimal> readings = new ArrayList<>();
        byId.forEach(judgements -> readings.add(reading(judgements.get(limit.id()), limit)));
        drifts.add(drift(limit, dates, readings, intervalDays));
      }
    }
    return new History(dates, drifts);
  }

  private static void oneGenerator(List<Dated> reports) throws BadInput {
    Set<String> serials = new TreeSet<>();
    Set<String> devices = new TreeSet<>();
    for (Dated dated : reports) {
      String serial = dated.report().readings().record("generator-serial");
      if (serial == null || Blank.isFiller(serial)) {
        throw new BadInput(
            "the readings of "
                + dated.date()
                + " do not give the generator's serial number (record 'generator-serial')");
      }
      serials.add(serial.strip());
      devices.add(dated.report().list().source().device());
    }
    if (devices.size() > 1) {
      throw new BadInput("these are limits of several devices: " + String.join(", ", devices));
    }
    if (serials.size() > 1) {
      throw new BadInput("these are readings of several generators: " + String.join(", ", serials));
    }
  }

  private static Map<String, Judgement> byId(Report report) {
    Map<String, Judgement> byId = new HashMap<>();
    report.judgements().forEach(j -> byId.put(j.item().id(), j));
    return byId;
  }

  /** The value of a judged reading of equal meaning; null where there is none. */
  private static @Nullable BigDecimal reading(@Nullable Judgement judgement, Item.Measured limit) {
    if (judgement == null) {
      return null;
    }
    boolean judged = judgement.verdict() == Verdict.PASS || judgement.verdict() == Verdict.FAIL;
    return judged
            && judgement.item() instanceof Item.Measured measured
            && sameMeaning(measured, limit)
        ? judgement.value()
        : null;
  }

  /** Whether it is the same measurement held to the same limits, whatever it is called. */
  private static boolean sameMeaning(Item.Measured one, Item.Measured other) {
    return one.where().equals(other.where())
        && one.scale().equals(other.scale())
        && sameLimits(one.limits(), other.limits())
        && formula(one).equals(formula(other));
  }

  private static boolean sameLimits(Item.@Nullable Limits one, Item.@Nullable Limits other) {
    if (one == null || other == null) {
      return one == other;
    }
    return Objects.equals(one.lower(), other.lower())
        && Objects.equals(one.upper(), other.upper())
        && Objects.equals(one.acceptLower(), other.acceptLower())
        && Objects.equals(one.acceptUpper(), other.acceptUpper());
  }

  private static String formula(Item.Measured item) {
    return item instanceof Item.Derived derived ? derived.calculation().formula().text() : "";
  }

  private static Drift drift(
      Item.Measured limit, List<LocalDate> dates, List<BigDecimal> readings, long intervalDays) {
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
    return new Drift(
        limit, readings, line.slope() * 365.25, expected, crosses(limit.limits(), expected));
  }

  private static boolean crosses(Item.@Nullable Limits limits, double expected) {
    BigDecimal low = limits == null ? null : limits.acceptLower();
    BigDecimal high = limits == null ? null : limits.acceptUpper();
    return low != null && expected < low.doubleValue()
        || high != null && expected > high.doubleValue();
  }

  /** The day in a record or in a file's name; null where neither has one. */
  public static @Nullable LocalDate date(Readings readings, String fileName) {
    LocalDate date = parsed(readings.record("date"));
    if (date != null) {
      return date;
    }
    java.util.regex.Matcher in =
        java.util.regex.Pattern.compile("\\d{4}-\\d\\d-\\d\\d").matcher(fileName);
    return in.find() ? parsed(in.group()) : null;
  }

  private static @Nullable LocalDate parsed(@Nullable String text) {
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
        out.append(" " + drift.limit().scale().unit());
        if (!Double.isNaN(drift.perYear())) {
          out.append(", " + signed(drift.perYear()) + " per year, next " + plain(drift.expected()));
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
                    + " is projected to reach "
                    + plain(d.expected())
                    + ItemWords.unit(d.limit())
                    + " before the next test (accepted: "
                    + ItemWords.accepted(d.limit())
                    + ")")
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
