package passband.diff;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.plan.Fact;
import passband.plan.RecordLimit;
import passband.quantity.Rational;

/**
 * What a limit accepts, in numbers; null where that side is open.
 *
 * @param quantity that it is of; null for a recorded number
 * @param unit of the numbers, a UCUM code
 * @param lower the tolerance, inclusive
 * @param acceptLower what a reading is compared with
 */
public record Ends(
    @Nullable String quantity,
    String unit,
    @Nullable BigDecimal lower,
    @Nullable BigDecimal upper,
    @Nullable BigDecimal acceptLower,
    @Nullable BigDecimal acceptUpper) {

  static Ends of(Limit limit) {
    return new Ends(
        limit.quantity(),
        limit.unit().ucum(),
        number(limit, limit.printed().lower()),
        number(limit, limit.printed().upper()),
        number(limit, limit.accept().lower()),
        number(limit, limit.accept().upper()));
  }

  private static @Nullable BigDecimal number(Limit limit, @Nullable Rational end) {
    String text = limit.end(end);
    return text == null ? null : new BigDecimal(text);
  }

  private static Ends of(RecordLimit limit) {
    return new Ends(
        null, limit.unit().ucum(), limit.lower(), limit.upper(), limit.lower(), limit.upper());
  }

  /** Of a fact; empty where it is of no limit. */
  static List<Ends> of(@Nullable Fact fact) {
    List<Ends> ends = new ArrayList<>();
    if (fact != null && fact.limit() != null) {
      ends.add(of(fact.limit()));
    }
    if (fact != null && fact.record() != null) {
      ends.add(of(fact.record()));
    }
    return ends;
  }
}
