package passband.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.source.Span;

/**
 * An error as it is written: {@code 1 % of reading + 2 mA as normal coverage 2 degrees-of-freedom
 * 9}.
 *
 * @param terms one at least
 * @param distribution its name; null where none is said
 * @param coverage the factor of a normal distribution; null where none is said
 * @param freedom the degrees of freedom; null where none are said
 */
public record WrittenError(
    List<AccuracyTerm> terms,
    @Nullable Word distribution,
    @Nullable Amount coverage,
    @Nullable Amount freedom) {
  /** From the first term to the last. */
  public Span span() {
    return terms.get(0).span().to(terms.get(terms.size() - 1).span());
  }
}
