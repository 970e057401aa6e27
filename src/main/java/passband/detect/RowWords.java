package passband.detect;

import java.util.LinkedHashMap;
import java.util.Map;
import passband.limit.Limit;
import passband.plan.Plan;
import passband.plan.Point;
import passband.plan.Stage;

/** Identities of runs, rows and readings in words: mode, outlet, setting, load and test. */
public final class RowWords {
  private final Map<String, String> words = new LinkedHashMap<>();
  private final Map<String, String> runs = new LinkedHashMap<>();

  private RowWords() {}

  /** Of a procedure. */
  public static RowWords of(Plan plan) {
    RowWords all = new RowWords();
    for (Stage.Run run : plan.runs()) {
      all.runs.put(run.id(), test(run));
      for (Point point : run.points()) {
        String row = row(run, point);
        all.words.put(point.id(), row);
        for (Limit limit : point.limits()) {
          all.words.put(limit.id(), row + ", read as " + limit.quantity());
        }
      }
    }
    return all;
  }

  private static String test(Stage.Run run) {
    String on = run.outlet() == null ? "" : " on " + run.outlet().name().text();
    return "test " + run.test().text() + on + (run.phase() == null ? "" : ", " + run.phase());
  }

  private static String row(Stage.Run run, Point point) {
    StringBuilder row = new StringBuilder();
    if (point.mode() != null) {
      row.append(point.mode().name().text()).append(' ');
    }
    row.append(point.outlet() == null ? "" : point.outlet().name().text());
    row.append(point.setting() == null ? "" : " at " + point.setting().text());
    row.append(point.loadText() == null ? "" : " into " + point.loadText());
    point.extras().forEach((name, value) -> row.append(", ").append(name + " " + value));
    return row.toString().strip() + " (test " + run.test().text() + ")";
  }

  /** A place in words: of an identity that stands in it; the place itself where none does. */
  public String of(String where) {
    String exact = words.get(where);
    if (exact != null) {
      return exact;
    }
    for (Map.Entry<String, String> run : runs.entrySet()) {
      int at = where.indexOf(run.getKey());
      int end = at + run.getKey().length();
      boolean whole =
          at >= 0
              && (at == 0 || where.charAt(at - 1) == ' ')
              && (end == where.length() || where.charAt(end) == ':');
      if (whole) {
        return where.substring(0, at) + run.getValue() + where.substring(end);
      }
    }
    return where;
  }
}
