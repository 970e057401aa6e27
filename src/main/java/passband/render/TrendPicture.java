package passband.render;

import java.time.LocalDate;
import passband.draw.Drawing;
import passband.draw.DriftPicture;
import passband.judge.Trend;

/** Readings over time with what is accepted and where the next may lie. */
final class TrendPicture {
  private TrendPicture() {}

  /**
   * The picture.
   *
   * @param next the day of the next reading; of two readings it has no interval
   */
  static Drawing of(String name, Trend trend, String unit, LocalDate next) {
    double expected = trend.at(next);
    double half = trend.hasInterval() ? trend.halfWidth(next) : 0;
    return DriftPicture.of(
        name,
        trend.dates(),
        trend.readings(),
        trend.low(),
        trend.high(),
        unit,
        new DriftPicture.Next(next, expected - half, expected + half));
  }
}
