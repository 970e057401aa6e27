package passband.render;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.detect.CatchChange;
import passband.diff.Change;
import passband.diff.ChangeGroup;
import passband.diff.Ends;
import passband.diff.Hunk;
import passband.diff.PlanDiff;
import passband.draw.BandPicture;
import passband.draw.Svg;

/** Differences as a page to print and sign. */
public final class DiffPage {
  private static final String STYLE = Checklist.resource("diff.css");

  private DiffPage() {}

  /** What the template prints of a procedure; the summary is empty where it is new or gone. */
  public record Procedure(String title, String summary, List<Group> groups, List<String> caught) {}

  /**
   * What the template prints of what one edit brought about; was and now are the edited lines.
   *
   * @param place null where no line tells
   * @param limit one that changes, of the worst kind; null where none does
   * @param rows the changes; of a group of one, that one alone
   */
  public record Group(
      String kinds,
      String subject,
      @Nullable String place,
      List<String> was,
      List<String> now,
      @Nullable Limit limit,
      List<Row> rows) {}

  /** A limit as it was and as it is, and both as SVG. */
  public record Limit(String was, String now, String picture) {}

  /** What the template prints of a change; null for nothing. */
  public record Row(
      String kind,
      String subject,
      @Nullable String was,
      @Nullable String now,
      List<String> details,
      @Nullable String cause) {}

  /**
   * The whole file.
   *
   * @param range of two commits, printed before; null where two files or folders are compared
   */
  public static String of(List<PlanDiff> diffs, @Nullable RangeLists range) {
    List<Procedure> procedures = new ArrayList<>();
    for (PlanDiff diff : diffs) {
      List<Group> groups = new ArrayList<>();
      for (ChangeGroup group : diff.groups()) {
        String id = "limit-" + (procedures.size() + 1) + "-" + (groups.size() + 1);
        groups.add(group(group, id));
      }
      String summary = groups.isEmpty() ? "" : DiffReport.summary(diff);
      procedures.add(
          new Procedure(
              DiffReport.title(diff),
              summary,
              groups,
              DiffReport.caught(diff).stream().map(CatchChange.Line::text).toList()));
    }
    Map<String, Object> model = new HashMap<>();
    model.put("procedures", procedures);
    if (range != null) {
      model.put("range", range);
      model.put("lists", range.titled());
    }
    model.put("style", STYLE);
    model.put("styleHash", Checklist.hash(STYLE));
    return Templates.filled("diff.ftlh", model);
  }

  private static Group group(ChangeGroup group, String id) {
    Hunk edit = group.changes().size() == 1 ? null : group.edit();
    return new Group(
        group.counts(),
        DiffReport.subject(group),
        edit == null ? null : edit.place(),
        edit == null ? List.of() : edit.was().texts(),
        edit == null ? List.of() : edit.now().texts(),
        limit(group, id),
        rows(group));
  }

  /** Of the first limit, which is of the worst kind that a limit has here. */
  private static @Nullable Limit limit(ChangeGroup group, String id) {
    for (Change change : group.changes()) {
      if (change.was() != null
          && change.now() != null
          && change.wasEnds().size() == 1
          && change.nowEnds().size() == 1
          && change.wasEnds().get(0).unit().equals(change.nowEnds().get(0).unit())) {
        String title = change.subject() + ": was " + change.was() + ", now " + change.now();
        Ends was = change.wasEnds().get(0);
        Ends now = change.nowEnds().get(0);
        String picture = Svg.element(BandPicture.of(id, title, band(was), band(now)), id);
        return new Limit(change.was(), change.now(), picture);
      }
    }
    return null;
  }

  private static BandPicture.Band band(Ends ends) {
    return new BandPicture.Band(
        number(ends.lower()),
        number(ends.upper()),
        number(ends.acceptLower()),
        number(ends.acceptUpper()));
  }

  private static double number(@Nullable BigDecimal value) {
    return value == null ? Double.NaN : value.doubleValue();
  }

  private static List<Row> rows(ChangeGroup group) {
    List<Row> rows = new ArrayList<>();
    for (Change change : group.changes()) {
      boolean one = group.changes().size() == 1;
      rows.add(row(change, one ? DiffReport.cause(group) : DiffReport.cause(change)));
    }
    return rows;
  }

  private static Row row(Change change, @Nullable String cause) {
    return new Row(
        change.kind().word(), change.subject(), change.was(), change.now(), change.lines(), cause);
  }
}
