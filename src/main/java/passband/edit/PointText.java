package passband.edit;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.source.Span;

/** What is said of the points that come from a row of a table. */
final class PointText {
  private static final int MOST_SHOWN = 12;

  private PointText() {}

  /** The points that are written on a stretch of a file, each once. */
  static List<Point> on(List<Plan> plans, Span row) {
    List<Point> points = new ArrayList<>();
    List<String> seen = new ArrayList<>();
    for (Plan plan : plans) {
      for (Stage.Run run : plan.runs()) {
        for (Point point : run.points()) {
          if (point.span().equals(row) && !seen.contains(point.id())) {
            seen.add(point.id());
            points.add(point);
          }
        }
      }
    }
    return points;
  }

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
          text.append(row(limit));
        }
      }
    }
    if (shown > MOST_SHOWN) {
      text.append("\n… and ").append(shown - MOST_SHOWN).append(" more");
    }
    return text.toString();
  }

  private static String row(Limit limit) {
    String id = limit.id().substring(0, limit.id().lastIndexOf('/'));
    String accept = limit.words(limit.accept());
    String printed = limit.words(limit.printed());
    return "| "
        + String.join(
            " | ",
            "`" + id + "`",
            limit.title(),
            "**" + accept + "**" + (accept.equals(printed) ? "" : " (guarded; " + printed + ")"),
            tolerance(limit),
            uncertainty(limit),
            limit.ratio() == null
                ? ""
                : limit.ratio().floorTo(Rational.of(1, 100)).toFixed(2) + " : 1")
        + " |\n";
  }

  /** What the limits amount to, of the nominal of the quantity that the rule is about. */
  private static String tolerance(Limit limit) {
    Real nominal = limit.exact().nominal();
    if (nominal == null || nominal.signum() == 0) {
      return "";
    }
    String about = limit.rule().quantity().text();
    String low = percent(limit.exact().lower(), nominal, about, limit.quantity());
    String high = percent(limit.exact().upper(), nominal, about, limit.quantity());
    return String.join(" ", List.of(low, high)).strip() + " of " + about;
  }

  private static String percent(Real end, Real nominal, String about, String read) {
    if (end == null) {
      return "";
    }
    Real ratio = end.over(nominal);
    if (about.equals("power") && !read.equals("power")) {
      ratio = ratio.times(ratio); // P = I²R = V²/R
    } else if (!about.equals("power") && read.equals("power")) {
      ratio = ratio.sqrt();
    }
    Real share = ratio.minus(Real.of(Rational.ONE)).times(Real.of(Rational.HUNDRED));
    return (share.signum() < 0 ? "−" : "+")
        + share.abs().toDecimal(3, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString()
        + " %";
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
