package passband.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/** What stands at the head of a procedure, as written. */
public final class Heading {
  private Heading() {}

  /** {@code revision "C" on DATE [replaces "B" [on DATE] digest "…"]}. */
  public record Revision(
      Word label,
      Word date,
      @Nullable Word replaces,
      @Nullable Word replacesDate,
      @Nullable Word replacesDigest,
      Span span) {}

  /** The decision rule; {@code risk} in per cent, {@code coverage} the factor k. */
  public record Decision(
      DecisionKind kind,
      @Nullable Amount risk,
      @Nullable Amount coverage,
      @Nullable Amount prior,
      Span span) {}

  /** {@code caution NAME "…"}. */
  public record Caution(Word name, Word text, Span span) {}

  /**
   * In which phases everything is done, whether outlet by outlet or test by test, and in which
   * language it is printed; null where that is not given.
   */
  public record Order(List<Word> phases, boolean byOutlet, @Nullable Word language) {}
}
