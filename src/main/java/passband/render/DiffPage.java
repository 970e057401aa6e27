package passband.render;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.diff.Change;
import passband.diff.PlanDiff;

/** Differences as a page to print and sign. */
public final class DiffPage {
  private static final String STYLE = Checklist.resource("diff.css");

  private DiffPage() {}

  /** What the template prints of a procedure. */
  public record Procedure(String title, List<Row> rows) {}

  /** What the template prints of a change; null for nothing. */
  public record Row(
      String kind,
      String subject,
      @Nullable String was,
      @Nullable String now,
      List<String> details,
      @Nullable String cause) {}

  /** The whole file. */
  public static String of(List<PlanDiff> diffs) {
    List<Procedure> procedures = new ArrayList<>();
    for (PlanDiff diff : diffs) {
      procedures.add(
          new Procedure(
              DiffReport.title(diff), diff.changes().stream().map(DiffPage::row).toList()));
    }
    Map<String, Object> model = new HashMap<>();
    model.put("procedures", procedures);
    model.put("style", STYLE);
    model.put("styleHash", Checklist.hash(STYLE));
    return Templates.filled("diff.ftlh", model);
  }

  private static Row row(Change change) {
    return new Row(
        change.kind().word(),
        change.subject(),
        change.was(),
        change.now(),
        change.lines(),
        DiffReport.cause(change));
  }
}
