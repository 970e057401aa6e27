package passband.edit;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import passband.limit.Bounds;
import passband.limit.Conversion;
import passband.limit.Limit;
import passband.plan.Figure;
import passband.plan.Point;
import passband.quantity.Real;

/** What is said of the points that come from a row of a table. */
final class PointText {
  private static final int MOST_SHOWN = 12;

  private PointText() {}

  /** The limits of a row in a few words: one point's, or the first and the last of several. */
  static String brief(List<Point> points) {
    List<String> all = new ArrayList<>();
    for (Point point : points) {
      StringJoiner limits = new StringJoiner(", ");
      point.limits().forEach(l -> limits.add(l.words(l.accept())));
      if (!all.contains(limits.toString())) {
        all.add(limits.toString());
      }
    }
    return all.size() <= 2 ? String.join(" / ", all) : all.get(0) + " … " + all.get(all.size() - 1);
  }

  /** A table in Markdown: limits, implied tolerance, uncertainty and accuracy ratio of each. */
  static String table(List<Point> points) {
    StringBuilder text =
        new StringBuilder(
            "| point | read | limits | tolerance | U | ratio |\n|---|---|---|---|---|---|\n");
    int shown = 0;
    for (Point point : points) {
      for (Limit limit : point.limits()) {
        if (shown++ < MOST_SHOWN) {
          text.append(row(point, limit));
        }
      }
    }
    if (shown > MOST_SHOWN) {
      text.append("\n… and ").append(shown - MOST_SHOWN).append(" more");
    }
    return text.toString();
  }

  private static String row(Point point, Limit limit) {
    String id = limit.id().substring(0, limit.id().lastIndexOf('/'));
    String accept = limit.words(limit.accept());
    String printed = limit.words(limit.printed());
    return "| "
        + String.join(
            " | ",
            "`" + id + "`",
            limit.title(),
            "**" + accept + "**" + (accept.equals(printed) ? "" : " (guarded; " + printed + ")"),
            tolerance(point, limit),
            uncertainty(limit),
            limit.ratio() == null ? "" : limit.ratioText() + " : 1")
        + " |\n";
  }

  /** What the limits amount to, of the nominal of the quantity that the rule is about. */
  private static String tolerance(Point point, Limit limit) {
    String about = String.valueOf(limit.rule().quantity());
    Bounds ends = limit.exact();
    Figure load = point.load();
    if (Conversion.exists(limit.quantity(), about)) {
      if (load == null) {
        return "";
      }
      ends = ends.map(x -> Conversion.convert(x, limit.quantity(), about, load.si()));
    }
    Real nominal = ends.nominal();
    if (nominal == null || nominal.signum() == 0) {
      return "";
    }
    String low = ends.lower() == null ? "" : Limit.percent(ends.lower(), nominal);
    String high = ends.upper() == null ? "" : Limit.percent(ends.upper(), nominal);
    return (low + " " + high).strip() + " of " + about;
  }

  private static String uncertainty(Limit limit) {
    Real expanded = limit.expanded();
    return expanded == null
        ? ""
        : "±"
            + expanded
                .over(Real.of(limit.unit().factor()))
                .toDecimal(3, RoundingMode.UP)
                .stripTrailingZeros()
                .toPlainString()
            + " "
            + limit.unit().printed();
  }
}
