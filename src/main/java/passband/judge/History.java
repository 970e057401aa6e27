package passband.judge;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
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
import passband.evidence.ItemNames;
import passband.evidence.ItemWords;

/**
 * Many reports of one generator: how each point drifts, by the straight line of least squares
 * through its last reading of each day, and whether the next reading may be outside what is
 * accepted before the next interval ends: of three readings or more by the interval in which it
 * lies with 95 %, of two by the line alone.
 *
 * @param device the generator's model
 * @param serial the generator's serial number
 * @param dates of the reports, the earliest first
 * @param drifts of the points of the latest report
 */
public record History(String device, String serial, List<LocalDate> dates, List<Drift> drifts) {
  /**
   * One point over time.
   *
   * @param readings one for each date; null where there is none, or where the point of that
   *     revision meant something else
   * @param trend of those that there are; null with fewer than two
   * @param next the end of the next interval
   * @param inside how many whole days after the last report the interval of the next reading stays
   *     inside what is accepted, at most {@link Trend#LONGEST}; negative with fewer than three
   *     readings
   */
  public record Drift(
      Item.Measured limit,
      List<@Nullable BigDecimal> readings,
      @Nullable Trend trend,
      LocalDate next,
      int inside) {

    /** The slope in the limit's unit a year; NaN without a line. */
    public double perYear() {
      return trend == null ? Double.NaN : trend.perYear();
    }

    /** The standard error of the slope, likewise; NaN with fewer than three readings. */
    public double perYearError() {
      return trend == null ? Double.NaN : trend.perYearError();
    }

    /** The line's value at the end of the next interval; NaN without a line. */
    public double expected() {
      return trend == null ? Double.NaN : trend.at(next);
    }

    /** Half the interval of the next reading; NaN with fewer than three readings. */
    public double halfWidth() {
      return trend == null ? Double.NaN : trend.halfWidth(next);
    }

    /** Whether any of that is outside what is accepted. */
    public boolean crosses() {
      return trend != null && trend.crosses(next);
    }

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
    String serial = oneGenerator(reports);
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
    String device = sorted.get(0).report().list().source().device();
    return new History(device, serial, dates, drifts);
  }

  /** Its serial number. */
  private static String oneGenerator(List<Dated> reports) throws BadInput {
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
    return String.join("", serials);
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
      Item.Measured limit,
      List<LocalDate> dates,
      List<@Nullable BigDecimal> readings,
      long intervalDays) {
    List<LocalDate> days = new ArrayList<>();
    List<Double> values = new ArrayList<>();
    for (int i = 0; i < dates.size(); i++) {
      BigDecimal reading = readings.get(i);
      if (reading != null) {
        days.add(dates.get(i));
        values.add(reading.doubleValue());
      }
    }
    LocalDate last = dates.get(dates.size() - 1);
    double low = end(limit.limits() == null ? null : limit.limits().acceptLower());
    double high = end(limit.limits() == null ? null : limit.limits().acceptUpper());
    Trend trend = Trend.of(days, values, low, high, limit.scale().resolution().doubleValue());
    return new Drift(
        limit,
        readings,
        trend,
        last.plusDays(intervalDays),
        trend == null ? -1 : trend.daysInside(last));
  }

  /** NaN for a side that is open, which no comparison is true of. */
  private static double end(@Nullable BigDecimal limit) {
    return limit == null ? Double.NaN : limit.doubleValue();
  }

  /**
   * The point that may leave what is accepted first: until then the next test can wait, as far as
   * the readings tell; null where no point has three readings.
   */
  public @Nullable Drift first() {
    return drifts.stream()
        .filter(d -> d.inside() >= 0)
        .min(Comparator.comparingInt(Drift::inside))
        .orElse(null);
  }

  /**
   * A longest interval as a suggestion; null where nothing can be said.
   *
   * @param names of the items of the latest limits
   */
  public @Nullable String suggestion(ItemNames names) {
    Drift first = first();
    if (first == null) {
      return null;
    }
    return first.inside() >= Trend.LONGEST
        ? "no point may leave what is accepted within ten years, as far as these readings tell"
        : "suggested longest interval: "
            + first.inside()
            + " days after the last test; then "
            + names.of(first.limit())
            + " may be outside with more than "
            + "2.5 % (only a suggestion: the maker's and the department's intervals come first)";
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

  /** A table in text, warnings after it; names are those of the latest limits. */
  public String text(ItemNames names) {
    StringBuilder out = new StringBuilder(device + " " + serial + ", dates: " + dates + "\n");
    for (Drift drift : drifts) {
      if (drift.readings().stream().anyMatch(r -> r != null)) {
        out.append(names.of(drift.limit()) + ":");
        drift.readings().forEach(r -> out.append(" " + (r == null ? "-" : r.toPlainString())));
        out.append(ItemWords.unit(drift.limit()));
        if (!Double.isNaN(drift.perYear())) {
          out.append(", " + signed(drift.perYear()) + within(drift.perYearError()) + " per year");
          out.append(", next " + plain(drift.expected()) + next(drift));
        }
        out.append('\n');
      }
    }
    warnings(names).forEach(w -> out.append("warning: " + w + "\n"));
    String suggestion = suggestion(names);
    out.append(suggestion == null ? "" : suggestion + "\n");
    return out.toString();
  }

  /** What will be outside before the next time, a sentence each. */
  public List<String> warnings(ItemNames names) {
    return drifts.stream()
        .filter(Drift::crosses)
        .map(
            d ->
                names.of(d.limit())
                    + " is projected to reach "
                    + plain(d.expected())
                    + next(d)
                    + ItemWords.unit(d.limit())
                    + " before the next test (accepted: "
                    + ItemWords.accepted(d.limit())
                    + ")")
        .toList();
  }

  /** Half the interval of the next reading, which is never known to less than one step. */
  private static String next(Drift drift) {
    return Double.isNaN(drift.halfWidth())
        ? ""
        : " ± "
            + new BigDecimal(drift.halfWidth())
                .setScale(drift.limit().scale().decimals(), RoundingMode.FLOOR)
                .add(drift.limit().scale().resolution())
                .toPlainString();
  }

  /** What a value is known to; empty where that is not known. */
  private static String within(double half) {
    return Double.isNaN(half) ? "" : " ± " + plain(half, 2);
  }

  private static String signed(double value) {
    return (value > 0 ? "+" : "") + plain(value);
  }

  private static String plain(double value) {
    return plain(value, 4);
  }

  private static String plain(double value, int digits) {
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits));
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }
}
