package passband.plan;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.limit.Stated;
import passband.model.Accuracy;
import passband.model.Series;
import passband.model.Termination;
import passband.quantity.Distribution;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.syntax.Ratings;

/** What facts say, in words for people. */
public final class FactText {
  private FactText() {}

  /** What a reading has to be, the tolerance, and one step of the reading. */
  public static String limit(Limit limit) {
    String accept = limit.words(limit.accept());
    String tolerance = limit.words(limit.printed());
    String outer = accept.equals(tolerance) ? "" : " (tolerance " + tolerance + ")";
    return accept + outer + ", read to " + value(limit.resolution(), limit.unit());
  }

  /** The line that asks for a limit: {@code power within 15 % of setting, read as current}. */
  public static String rule(Limit limit) {
    return limit.rule().quantity()
        + " "
        + LimitText.of(limit.written())
        + (limit.rule().readAs() == null ? "" : ", read as " + readAs(limit));
  }

  /** What the row states for a limit, by quantity; empty where it states nothing. */
  public static String stated(Limit limit) {
    List<String> each = new ArrayList<>();
    for (Stated s : limit.stated()) {
      each.add("; stated " + s.quantity() + " " + end(s.lower()) + " to " + end(s.upper()));
    }
    each.sort(null);
    return String.join("", each);
  }

  private static String end(Stated.@Nullable End end) {
    return end == null ? "open" : value(end.value(), end.unit());
  }

  /** The quantity that a limit's rule is read as; empty where it is read as it is. */
  public static String readAs(Limit limit) {
    return limit.rule().readAs() == null ? "" : limit.rule().readAs().text();
  }

  /** A printed name, then what else there is to say. */
  static String titled(String title, @Nullable String... more) {
    StringBuilder text = new StringBuilder("\"" + title + "\"");
    for (String part : more) {
      text.append(part == null || part.isEmpty() ? "" : ", " + part);
    }
    return text.toString();
  }

  /** A time; a dash where there is none. */
  static String seconds(@Nullable Rational seconds) {
    return seconds == null ? "-" : seconds.toPlain() + " s";
  }

  /** A value in SI as shown in a unit. */
  static String value(Rational si, Unit unit) {
    String number = si.over(unit.factor()).toPlain();
    return unit.symbol().isEmpty() ? number : number + " " + unit.printed();
  }

  /** A rating in words, or why nobody knows it. */
  static String known(String rating, Ratings.@Nullable Unknown unknown) {
    String given = rating.equals("-") ? "" : " (" + rating + ")";
    return unknown == null ? rating : "unknown because " + unknown.reason() + given;
  }

  /** An error; a dash where it is unknown. */
  static String accuracy(@Nullable Accuracy accuracy) {
    return accuracy == null
        ? "-"
        : accuracy.relative().times(Rational.HUNDRED).toPlain()
            + " % + "
            + accuracy.absolute().toPlain()
            + (accuracy.distribution().equals(Distribution.RECTANGULAR)
                ? ""
                : ", " + accuracy.distribution().text());
  }

  /** Loads, open and short last. */
  static String loads(@Nullable Series series, List<Termination> terminations) {
    List<String> texts = new ArrayList<>(Termination.words(terminations));
    texts.sort(null);
    if (series != null) {
      texts.add(0, series(series));
    }
    return String.join(", ", texts);
  }

  /** The values in their coherent unit; empty for no series. */
  static String series(@Nullable Series series) {
    if (series == null) {
      return "";
    }
    Unit unit = coherent(series);
    List<String> texts = new ArrayList<>();
    for (Series.Segment s : SeriesForm.of(series.segments())) {
      String to = s.from().equals(s.to()) ? "" : " to " + value(s.to(), unit);
      String step = s.step() == null ? "" : " step " + value(s.step(), unit);
      texts.add(value(s.from(), unit) + to + step);
    }
    return String.join(", ", texts);
  }

  /** The unit without a prefix: how a profile spells its units is no part of the meaning. */
  private static Unit coherent(Series series) {
    for (Unit unit : Units.all()) {
      if (unit.dimension().equals(series.dimension()) && unit.factor().equals(Rational.ONE)) {
        return unit;
      }
    }
    return series.unit();
  }
}
