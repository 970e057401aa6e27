package passband.render;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import passband.plan.Plan;

/**
 * {@code index.html}: the library at a glance, for the technician who looks for a sheet. It is one
 * file, fetches nothing, and is searched by its own script.
 */
public final class IndexPage {
  /** By what a page of this kind is known, near its beginning. */
  public static final String MARK = "<meta name=\"generator\" content=\"Passband\">";

  private static final String STYLE = Checklist.resource("index.css");
  private static final String SCRIPT = "\"use strict\";\n" + Checklist.resource("index.js");

  private IndexPage() {}

  /**
   * A procedure.
   *
   * @param procedure its name, likewise its folder's
   * @param device the printed name, likewise the instruments
   * @param released whether the record of releases holds it as it is
   * @param pages of its sheet on paper; 0 where there is none
   */
  public record Entry(
      String procedure,
      String title,
      String device,
      String revision,
      String date,
      boolean released,
      String instruments,
      int pages) {
    private static final int PARTS = 8;

    /** What is said of a plan. */
    public static Entry of(Plan plan, int pages) {
      return new Entry(
          plan.name().text(),
          plan.title(),
          plan.device().title(),
          plan.revision().label(),
          plan.revision().date(),
          plan.release().isReleased(),
          plan.instruments().titles(),
          pages);
    }

    /** In one line, a tab between two parts. */
    public String written() {
      List<String> parts =
          List.of(
              procedure,
              title,
              device,
              revision,
              date,
              Boolean.toString(released),
              instruments,
              Integer.toString(pages));
      return String.join("\t", parts.stream().map(p -> p.replaceAll("[\\t\\r\\n]", " ")).toList());
    }

    /** From the parts of such a line; null where they are none. */
    public static @Nullable Entry read(List<String> parts) {
      if (parts.size() != PARTS || !parts.get(PARTS - 1).matches("[0-9]{1,6}")) {
        return null;
      }
      return new Entry(
          parts.get(0),
          parts.get(1),
          parts.get(2),
          parts.get(3),
          parts.get(4),
          parts.get(5).equals("true"),
          parts.get(6),
          Integer.parseInt(parts.get(PARTS - 1)));
    }
  }

  /** The whole file; by device, then by title. */
  public static String of(List<Entry> entries) {
    List<Entry> sorted = new ArrayList<>(entries);
    sorted.sort(
        Comparator.comparing(Entry::device)
            .thenComparing(Entry::title)
            .thenComparing(Entry::procedure));
    Map<String, Object> model = new HashMap<>();
    model.put("entries", sorted);
    model.put("mark", MARK);
    model.put("style", STYLE);
    model.put("styleHash", Checklist.hash(STYLE));
    model.put("script", SCRIPT);
    model.put("scriptHash", Checklist.hash(SCRIPT));
    return Templates.filled("index.ftlh", model);
  }
}
