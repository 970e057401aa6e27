package passband.diff;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.plan.Fact;
import passband.source.Span;

/**
 * A difference with what it is.
 *
 * @param was what was said before; null for what is new
 * @param now what is said; null for what is gone
 * @param cause the line that says it now, or said it; null where none does
 * @param details what else a reviewer needs: the limits worked out again
 * @param wasEnds what the limits concerned accepted, in numbers; empty where it is of none
 * @param nowEnds what they accept
 */
public record Change(
    Kind kind,
    String subject,
    @Nullable String was,
    @Nullable String now,
    @Nullable Span cause,
    List<Detail> details,
    List<Ends> wasEnds,
    List<Ends> nowEnds) {

  /** One of no limit, by the line of a fact. */
  static Change of(
      Kind kind, String subject, @Nullable String was, @Nullable String now, Fact fact) {
    return new Change(kind, subject, was, now, fact.span(), List.of(), List.of(), List.of());
  }

  /** What else people are told, a line each. */
  public List<String> lines() {
    List<String> lines = new ArrayList<>();
    if (kind == Kind.SAME_REVISION) {
      lines.add("give the changed procedure a new revision");
    }
    details.forEach(detail -> lines.add(detail.text()));
    return lines;
  }
}
