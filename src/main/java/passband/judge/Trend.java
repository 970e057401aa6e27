package passband.judge;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Readings of one point over time, with the line through them and where the next may lie.
 *
 * @param dates in order, one for each reading
 * @param low what is accepted; NaN where that side is open, likewise {@code high}
 * @param line over days since the first of the dates
 * @param step of the readings, which they are at least uncertain by; zero where it is not known
 */
public record Trend(
    List<LocalDate> dates,
    List<Double> readings,
    double low,
    double high,
    StraightLine line,
    double step) {
  /** Nothing is said of what is further ahead, in days: ten years. */
  public static final int LONGEST = 3652;

  /** That the next reading lies in its interval. */
  private static final double PROBABILITY = 0.95;

  private static final double DAYS_A_YEAR = 365.25;

  /** The factor of that interval where the scatter is known. */
  private static final double KNOWN = 1.959964;

  /** The standard deviation of what is rounded to steps of one (JCGM 100, F.2.2.1). */
  private static final double ROUNDING = 1 / Math.sqrt(12);

  /**
   * Of readings; null where they are not of two days at least.
   *
   * @param step as of the record
   */
  public static @Nullable Trend of(
      List<LocalDate> dates, List<Double> readings, double low, double high, double step) {
    List<Double> days = new ArrayList<>();
    dates.forEach(date -> days.add(days(dates.get(0), date)));
    StraightLine line = StraightLine.fit(days, readings);
    return line == null ? null : new Trend(dates, readings, low, high, line, step);
  }

  private static double days(LocalDate from, LocalDate to) {
    return ChronoUnit.DAYS.between(from, to);
  }

  private double place(LocalDate day) {
    return days(dates.get(0), day);
  }

  /** Whether the scatter about the line is known: of three readings or more. */
  public boolean hasInterval() {
    return !Double.isNaN(line.residual());
  }

  /** The slope a year. */
  public double perYear() {
    return line.slope() * DAYS_A_YEAR;
  }

  /** The standard error of the slope a year; NaN of two readings. */
  public double perYearError() {
    return line.slopeError() * DAYS_A_YEAR;
  }

  /** The line's value on a day. */
  public double at(LocalDate day) {
    return line.at(place(day));
  }

  /**
   * Half the interval in which a reading of a day lies with 95 %; NaN of two readings. That
   * readings are equal, or lie on a line, does not make them exact: the interval is at least what
   * rounding to their steps makes it.
   */
  public double halfWidth(LocalDate day) {
    return half(place(day), line.student(PROBABILITY));
  }

  private double half(double place, double factor) {
    return Math.max(
        factor * line.predictionError(place), KNOWN * line.predictionError(place, step * ROUNDING));
  }

  /** Whether any of that interval is outside what is accepted; of two readings the line alone. */
  public boolean crosses(LocalDate day) {
    return isOutside(place(day), hasInterval() ? halfWidth(day) : 0);
  }

  /** Whether so much about the line is outside; no comparison with NaN is true. */
  private boolean isOutside(double place, double half) {
    return line.at(place) - half < low || line.at(place) + half > high;
  }

  /**
   * How many whole days after a day all of that interval stays inside what is accepted, at most
   * {@link #LONGEST}; negative of two readings. The interval only widens, but the line may lead
   * back: the first day outside counts.
   */
  public int daysInside(LocalDate last) {
    if (!hasInterval()) {
      return -1;
    }
    double factor = line.student(PROBABILITY);
    double start = place(last) + 1;
    int days = 0;
    while (days < LONGEST && !isOutside(start + days, half(start + days, factor))) {
      days++;
    }
    return days;
  }
}
