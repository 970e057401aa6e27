package passband.render;

import com.google.gson.FormattingStyle;
import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.detect.CatchChange;
import passband.diagnostic.JsonReport;
import passband.diff.Change;
import passband.diff.ChangeGroup;
import passband.diff.Compared;
import passband.diff.Detail;
import passband.diff.Ends;
import passband.diff.Hunk;
import passband.diff.PlanDiff;
import passband.plan.Fact;
import passband.plan.Meaning;
import passband.plan.Plan;
import passband.source.Span;

/** Differences as text, Markdown and JSON. */
public final class DiffReport {
  private static final int SHORT = 12;

  private DiffReport() {}

  /**
   * For a terminal: what one edit brought about in a few lines.
   *
   * @param full whether every change of a group follows it
   */
  public static String text(List<PlanDiff> diffs, boolean full) {
    StringBuilder out = new StringBuilder();
    for (PlanDiff diff : diffs) {
      out.append(out.isEmpty() ? "" : "\n").append(title(diff)).append('\n');
      if (!diff.groups().isEmpty()) {
        out.append(summary(diff)).append('\n');
      }
      int number = 1;
      for (ChangeGroup group : diff.groups()) {
        group(out, number++ + ". ", group, full);
      }
      List<CatchChange.Line> caught = caught(diff);
      if (!caught.isEmpty()) {
        out.append("What is caught (see passband detect)\n");
        caught.forEach(line -> out.append("     ").append(line.text()).append('\n'));
      }
    }
    return out.toString();
  }

  /** What the change costs or gains, of a procedure that is on both sides. */
  static List<CatchChange.Line> caught(PlanDiff diff) {
    Plan was = diff.was() == null ? null : diff.was().plan();
    Plan now = diff.now() == null ? null : diff.now().plan();
    return was == null || now == null ? List.of() : CatchChange.between(was, now);
  }

  private static void group(StringBuilder out, String number, ChangeGroup group, boolean full) {
    if (group.changes().size() == 1) {
      change(out, number, group.changes().get(0), cause(group));
      return;
    }
    out.append(number).append(heading(group)).append('\n');
    Hunk edit = group.edit();
    if (edit != null) {
      line(out, "was", edit.was().isEmpty() ? null : text(edit.was()));
      line(out, "now", edit.now().isEmpty() ? null : text(edit.now()));
      line(out, "in ", edit.place());
    }
    int part = 1;
    for (Change change : full ? group.changes() : List.<Change>of()) {
      change(out, "   " + number + part++ + " ", change, cause(change));
    }
  }

  private static void change(
      StringBuilder out, String number, Change change, @Nullable String cause) {
    out.append(number + change.kind().word() + ": " + change.subject() + "\n");
    line(out, "was", change.was());
    line(out, "now", change.now());
    change.lines().forEach(d -> line(out, "   ", d));
    line(out, "by ", cause);
  }

  /** How many edits brought how much about. */
  public static String summary(PlanDiff diff) {
    int edits = diff.groups().size();
    return edits + (edits == 1 ? " cause: " : " causes: ") + ChangeGroup.counts(diff.changes());
  }

  /** What a group brings about; where it is all of one thing, of what. */
  public static String heading(ChangeGroup group) {
    List<Change> changes = group.changes();
    return changes.size() == 1
        ? changes.get(0).kind().word() + ": " + changes.get(0).subject()
        : group.counts() + ": " + subject(group);
  }

  /** What changes most: the subjects of the worst kind, as far as their beginnings are the same. */
  static String subject(ChangeGroup group) {
    List<Change> changes = group.changes();
    List<String> worst = new ArrayList<>();
    for (Change change : changes) {
      if (change.kind() == changes.get(0).kind()) {
        worst.add(change.subject());
      }
    }
    return worst.size() == 1 ? worst.get(0) : worst.get(0) + " and " + (worst.size() - 1) + " more";
  }

  private static String text(Hunk.Lines lines) {
    String more = lines.count() == 1 ? "" : " (and " + (lines.count() - 1) + " more lines)";
    return lines.texts().get(0) + more;
  }

  private static void line(StringBuilder out, String label, @Nullable String text) {
    if (text != null) {
      out.append("     " + label + "  " + (text.isEmpty() ? "(nothing)" : text) + "\n");
    }
  }

  /** For a review on a web page. */
  public static String markdown(List<PlanDiff> diffs, @Nullable RangeLists range) {
    StringBuilder out = new StringBuilder();
    if (range != null) {
      out.append("## " + escaped(range.was() + " to " + range.now()) + "\n\n");
      for (RangeLists.Titled list : range.titled()) {
        out.append("- " + list.title() + ": " + list.lines().size() + "\n");
        list.lines().forEach(line -> out.append("  - " + escaped(line) + "\n"));
      }
    }
    for (PlanDiff diff : diffs) {
      out.append(out.isEmpty() ? "" : "\n").append("## " + escaped(title(diff)) + "\n\n");
      if (!diff.groups().isEmpty()) {
        out.append(escaped(summary(diff)) + "\n\n");
        out.append("| No. | What | Was | Now | By |\n| --- | --- | --- | --- | --- |\n");
      }
      int number = 1;
      for (ChangeGroup group : diff.groups()) {
        markdown(out, number++, group);
      }
      List<CatchChange.Line> caught = caught(diff);
      if (!caught.isEmpty()) {
        out.append("\nWhat is caught:\n\n");
        caught.forEach(line -> out.append("- ").append(escaped(line.text())).append('\n'));
      }
    }
    return out.toString();
  }

  /** The edit in a line, and every change that it brought about in one of its own below it. */
  private static void markdown(StringBuilder out, int number, ChangeGroup group) {
    Hunk edit = group.edit();
    boolean one = group.changes().size() == 1;
    if (!one) {
      String was = edit == null ? "" : escaped(String.join(" ", edit.was().texts()));
      String now = edit == null ? "" : escaped(String.join(" ", edit.now().texts()));
      String place = edit == null ? "" : escaped(edit.place());
      row(out, number + "", "**" + escaped(heading(group)) + "**", was, now, place);
    }
    int part = 1;
    for (Change change : group.changes()) {
      String now = cell(change.now());
      for (String detail : change.lines()) {
        now += "<br>" + escaped(detail);
      }
      String what = "**" + change.kind().word() + "** " + escaped(change.subject());
      String no = one ? number + "" : number + "." + part++;
      row(out, no, what, cell(change.was()), now, cell(one ? cause(group) : cause(change)));
    }
  }

  private static void row(StringBuilder out, String... cells) {
    out.append("| " + String.join(" | ", cells) + " |\n");
  }

  private static String cell(@Nullable String text) {
    return text == null ? "" : escaped(text);
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace("\\", "\\\\")
        .replace("|", "\\|")
        .replace("*", "\\*")
        .replace("_", "\\_")
        .replace("`", "\\`")
        .replace("\n", " ");
  }

  /** For other programs: {@code {"format":"passband-diff/7","compared":[…]}}. */
  public static String json(List<PlanDiff> diffs, @Nullable RangeLists range) {
    StringWriter out = new StringWriter();
    try (JsonWriter json = new JsonWriter(out)) {
      json.setFormattingStyle(FormattingStyle.PRETTY);
      json.beginObject();
      json.name("format").value("passband-diff/7");
      if (range != null) {
        range(json, range);
      }
      json.name("compared").beginArray();
      for (PlanDiff diff : diffs) {
        json.beginObject();
        json.name("kind").value(diff.subject().kind());
        json.name("name").value(diff.name());
        side(json, "was", diff.was());
        side(json, "now", diff.now());
        json.name("causes").beginArray();
        for (ChangeGroup group : diff.groups()) {
          group(json, group);
        }
        json.endArray();
        json.name("caught").beginArray();
        for (CatchChange.Line line : caught(diff)) {
          json.beginObject();
          json.name("what").value(line.what());
          json.name("was").value(line.was());
          json.name("now").value(line.now());
          json.endObject();
        }
        json.endArray();
        json.endObject();
      }
      json.endArray();
      json.endObject();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out + "\n";
  }

  private static void range(JsonWriter json, RangeLists range) throws IOException {
    json.name("range").beginObject();
    json.name("was").value(range.was());
    json.name("now").value(range.now());
    JudgeJson.texts(json, "changed", range.changed());
    JudgeJson.texts(json, "same", range.same());
    JudgeJson.texts(json, "failed", range.failed());
    JudgeJson.texts(json, "unaffected", range.unaffected());
    json.endObject();
  }

  private static void group(JsonWriter json, ChangeGroup group) throws IOException {
    json.beginObject();
    json.name("kind").value(group.kind().word());
    json.name("edit");
    Hunk edit = group.edit();
    if (edit == null) {
      json.nullValue();
    } else {
      json.beginObject();
      edited(json, "was", edit.was());
      edited(json, "now", edit.now());
      json.endObject();
    }
    json.name("changes").beginArray();
    for (Change change : group.changes()) {
      change(json, change);
    }
    json.endArray();
    json.endObject();
  }

  /** The lines of one side; null where there are none. */
  private static void edited(JsonWriter json, String name, Hunk.Lines lines) throws IOException {
    json.name(name);
    if (lines.isEmpty()) {
      json.nullValue();
      return;
    }
    json.beginObject();
    json.name("path").value(lines.file().path());
    json.name("line").value(lines.first());
    json.name("lines").beginArray();
    for (String one : lines.texts()) {
      json.value(one);
    }
    json.endArray();
    json.endObject();
  }

  private static void side(JsonWriter json, String name, @Nullable Compared side)
      throws IOException {
    json.name(name);
    if (side == null) {
      json.nullValue();
      return;
    }
    Plan plan = side.plan();
    json.beginObject();
    json.name("name").value(side.name());
    if (plan != null) {
      json.name("revision").value(plan.revision().label());
      json.name("date").value(plan.revision().date());
    }
    json.name("digest").value(side.digest());
    json.endObject();
  }

  private static void change(JsonWriter json, Change change) throws IOException {
    json.beginObject();
    json.name("kind").value(change.kind().word());
    json.name("subject").value(change.subject());
    value(json, "was", change.was(), change.wasEnds());
    value(json, "now", change.now(), change.nowEnds());
    json.name("details").beginArray();
    for (Detail detail : change.details()) {
      json.beginObject();
      json.name("what").value(detail.what().word());
      side(json, "was", detail.what(), detail.was());
      side(json, "now", detail.what(), detail.now());
      json.endObject();
    }
    json.endArray();
    json.name("cause");
    if (change.cause() == null) {
      json.nullValue();
    } else {
      cause(json, change.cause());
    }
    json.endObject();
  }

  /** What one side of a detail says, and where that is an amount or limits, in numbers. */
  private static void side(JsonWriter json, String name, Detail.What what, Detail.Side side)
      throws IOException {
    json.name(name);
    json.beginObject();
    json.name("text").value(side.text());
    Detail.Values values = side.values();
    if (values != null) {
      json.name("unit").value(values.unit());
      if (what == Detail.What.UNCERTAINTY) {
        json.name("value").value(values.lower());
      } else {
        json.name("lower").value(values.lower());
        json.name("upper").value(values.upper());
      }
    }
    json.endObject();
  }

  /** What one side says, and what the limits concerned accept in numbers. */
  private static void value(JsonWriter json, String name, @Nullable String text, List<Ends> ends)
      throws IOException {
    json.name(name);
    if (text == null) {
      json.nullValue();
      return;
    }
    json.beginObject();
    json.name("text").value(text);
    json.name("limits").beginArray();
    for (Ends one : ends) {
      json.beginObject();
      json.name("quantity").value(one.quantity());
      json.name("unit").value(one.unit());
      json.name("lower").value(one.lower());
      json.name("upper").value(one.upper());
      json.name("accept_lower").value(one.acceptLower());
      json.name("accept_upper").value(one.acceptUpper());
      json.endObject();
    }
    json.endArray();
    json.endObject();
  }

  private static void cause(JsonWriter json, Span span) throws IOException {
    json.beginObject();
    JsonReport.place(json, span);
    json.name("text").value(span.file().line(span.line()).strip());
    json.endObject();
  }

  /** The line that says it, with its place; null where none does. */
  public static @Nullable String cause(Change change) {
    Span span = change.cause();
    if (span == null) {
      return null;
    }
    return span.file().path() + ":" + span.line() + ": " + span.file().line(span.line()).strip();
  }

  /** The edit of a group in one line; where no line tells, what says its first change. */
  public static @Nullable String cause(ChangeGroup group) {
    Hunk edit = group.edit();
    if (edit == null) {
      return cause(group.changes().get(0));
    }
    return edit.place() + ": " + text(edit.left());
  }

  /** What is compared, with its two revisions. */
  public static String title(PlanDiff diff) {
    Compared was = diff.was();
    Compared now = diff.now();
    String name = (diff.subject().plan() == null ? diff.subject().kind() + " " : "") + diff.name();
    if (was != null && now != null) {
      String renamed = was.name().equals(now.name()) ? "" : " (was " + was.name() + ")";
      return name + renamed + ": " + side(was) + " -> " + side(now);
    }
    String removed = was == null ? "" : ": removed, was " + side(was);
    return name + (now == null ? removed : ": new, " + side(now));
  }

  private static String side(Compared side) {
    Plan plan = side.plan();
    String digest = side.digest().substring(0, SHORT);
    return plan == null
        ? digest
        : "revision "
            + plan.revision().label()
            + " of "
            + plan.revision().date()
            + " ("
            + digest
            + ")";
  }

  /** A compiled procedure's facts, a line each: what a line-by-line comparison can be made of. */
  public static String facts(Plan plan) {
    StringBuilder out = new StringBuilder("procedure " + plan.name().text() + "\n");
    for (Fact fact : Meaning.of(plan).facts()) {
      out.append(fact.key() + ": " + fact.shown().replace("\n", " ") + "\n");
    }
    return out.toString();
  }
}
