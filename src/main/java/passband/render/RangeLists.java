package passband.render;

import java.util.List;

/**
 * What two commits' files mean, procedure by procedure; each line is a name, a path and the changed
 * files through which it differs.
 *
 * @param was the earlier commit's name
 * @param now the later commit's name
 * @param changed whose meaning differs
 * @param same whose meaning is the same, though a file that they use changed
 * @param failed not compared, because of errors
 * @param unaffected they use no file that changed
 */
public record RangeLists(
    String was,
    String now,
    List<String> changed,
    List<String> same,
    List<String> failed,
    List<String> unaffected) {

  /** The lines below a title. */
  public record Titled(String title, List<String> lines) {}

  /** All four lists, in the order in which a reviewer needs them. */
  public List<Titled> titled() {
    return List.of(
        new Titled("meaning changed", changed),
        new Titled("same meaning, though a file that they use changed", same),
        new Titled("not compared, because of errors", failed),
        new Titled("not affected: they use no file that changed", unaffected));
  }

  /** As text, a line each. */
  public String text() {
    StringBuilder out = new StringBuilder(was + " to " + now + "\n");
    for (Titled list : titled()) {
      List<String> lines = list.lines;
      out.append(list.title + ": " + (lines.isEmpty() ? "none" : lines.size() + "") + "\n");
      lines.forEach(line -> out.append("  " + line + "\n"));
    }
    return out.toString();
  }
}
