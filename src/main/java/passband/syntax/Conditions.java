package passband.syntax;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/**
 * On which outlets a test is done, how they are wired, in which state, with which output and for
 * how long.
 *
 * @param when the outcomes after which it is done; null where it always is
 * @param output {@code off} or {@code inhibited}; null where a column for the mode tells
 * @param group what it takes from the tests around it; null where it stands by itself
 */
public record Conditions(
    List<Word> outlets,
    @Nullable Word setup,
    Tree.@Nullable Ref inside,
    @Nullable OnlyWhen when,
    @Nullable Word output,
    @Nullable Amount onTime,
    @Nullable Group group) {

  /** What may stand in a column of a table of several tests, in its first row of each. */
  public static final List<String> COLUMNS =
      List.of("test", "outlet", "setup", "inside", "when", "output", "on-time", "accept");

  /**
   * What a test has to do with the {@code tests} around it.
   *
   * @param lines the lines and the heading that it shares with others
   * @param row whether it is written as rows of their table
   */
  public record Group(List<Span> lines, boolean row) {}

  /** The lines and the heading that it shares with other tests; empty where it stands by itself. */
  public List<Span> shared() {
    return group == null ? List.of() : group.lines();
  }

  /** Whether the test is written as rows of a table of tests. */
  public boolean inRow() {
    return group != null && group.row();
  }

  /** The words for which the test's table has columns besides those of its points. */
  public List<String> columns() {
    return inRow() ? COLUMNS : List.of();
  }

  /** These, and where they say nothing what others say. */
  public Conditions or(Conditions outer, List<Span> lines, boolean row) {
    return new Conditions(
        outlets.isEmpty() ? outer.outlets : outlets,
        setup == null ? outer.setup : setup,
        inside == null ? outer.inside : inside,
        when == null ? outer.when : when,
        output == null ? outer.output : output,
        onTime == null ? outer.onTime : onTime,
        new Group(lines, row));
  }

  /** The places of what they say. */
  public List<Span> spans() {
    List<Span> spans = new ArrayList<>();
    outlets.forEach(one -> spans.add(one.span()));
    if (setup != null) {
      spans.add(setup.span());
    }
    if (inside != null) {
      spans.add(inside.span());
    }
    if (when != null) {
      spans.add(when.span());
    }
    if (output != null) {
      spans.add(output.span());
    }
    if (onTime != null) {
      spans.add(onTime.span());
    }
    return spans;
  }
}
