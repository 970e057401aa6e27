package passband.render;

import java.util.ArrayList;
import java.util.List;
import passband.evidence.Item;
import passband.evidence.StageItems;
import passband.limit.Limit;
import passband.plan.Point;
import passband.quantity.Rational;
import passband.words.Language;

/** The boxes of a line: what is read, and what is worked out and only written as a control. */
final class Boxes {
  private final Language language;

  Boxes(Language language) {
    this.language = language;
  }

  List<Sheet.Box> of(Point point, StageItems.PointItems asked) {
    List<Sheet.Box> boxes = new ArrayList<>();
    point.readings().forEach(r -> boxes.add(box(r)));
    point.limits().forEach(l -> boxes.add(box(l, derived(asked, l))));
    return boxes;
  }

  private static boolean derived(StageItems.PointItems asked, Limit limit) {
    return asked.measured().stream()
        .anyMatch(item -> item instanceof Item.Derived && item.id().equals(limit.id()));
  }

  private Sheet.Box box(Point.Reading reading) {
    int decimals = Limit.decimals(reading.resolution().over(reading.unit().factor()));
    return new Sheet.Box(
        reading.id(),
        language.term(reading.title()),
        reading.unit().printed(),
        cells(4, decimals),
        language.of("limits.none"),
        null,
        false,
        false);
  }

  private Sheet.Box box(Limit limit, boolean derived) {
    LimitWords words = new LimitWords(language);
    String accept = words.of(limit, limit.accept());
    String tolerance = words.of(limit, limit.printed());
    return new Sheet.Box(
        limit.id(),
        language.term(limit.title()),
        limit.unit().printed(),
        cells(wholeDigits(limit), limit.decimals()),
        accept,
        accept.equals(tolerance) ? null : tolerance,
        true,
        derived);
  }

  /**
   * Digits before the point for the largest reading that can come: the top of the range, or ten
   * times the limit.
   */
  private static int wholeDigits(Limit limit) {
    Limit.Rounded ends = limit.printed();
    Rational limiting = ends.upper() != null ? ends.upper() : ends.lower();
    Rational largest = limit.range() != null ? limit.range().to() : limiting;
    return largest == null
        ? 1
        : Math.max(1, largest.over(limit.unit().factor()).floor().toString().length());
  }

  private String cells(int whole, int decimals) {
    return "0".repeat(whole)
        + (decimals == 0 ? "" : (language.comma() ? "," : ".") + "0".repeat(decimals));
  }
}
