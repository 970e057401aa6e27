package passband.diff;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.limit.Limit;
import passband.model.Analyzer;
import passband.plan.Fact;
import passband.plan.FactText;
import passband.plan.LimitText;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.source.Span;

/**
 * What a change of a limit is: of the tolerance, which a rule or a row gives, and apart from it of
 * the acceptance within, which the decision rule and the uncertainty give.
 */
final class LimitChangeClassifier {
  private final Limit was;
  private final Limit now;

  private LimitChangeClassifier(Limit was, Limit now) {
    this.was = was;
    this.now = now;
  }

  /** What the tolerance, or what is said of it, changed to; null where the acceptance alone did. */
  static @Nullable Change tolerance(Fact before, Fact after) {
    LimitChangeClassifier judge = new LimitChangeClassifier(limit(before), limit(after));
    Kind kind = judge.kind();
    if (kind == Kind.RULE && judge.saysTheSame()) {
      return null;
    }
    String was = FactText.limit(judge.was);
    String now = FactText.limit(judge.now);
    boolean alike = was.equals(now);
    return new Change(
        kind,
        after.subject(),
        alike ? before.shown() : was,
        alike ? after.shown() : now,
        judge.cause(after.span()),
        judge.details(),
        Ends.of(before),
        Ends.of(after));
  }

  private static Limit limit(Fact fact) {
    return Objects.requireNonNull(fact.limit(), "a fact that is no limit");
  }

  private Kind kind() {
    boolean sameStep = was.resolution().equals(now.resolution());
    Kind printed = moved(was.printed(), now.printed());
    if (printed == null) {
      return sameStep ? Kind.RULE : Kind.RE_ROUNDED;
    }
    boolean rounded = was.sameTolerance(now) && !sameStep && printed != Kind.OPENED;
    return rounded ? Kind.RE_ROUNDED : printed;
  }

  /** Whether only the acceptance differs. */
  private boolean saysTheSame() {
    return was.printed().equals(now.printed())
        && sameRule()
        && was.quantity().equals(now.quantity())
        && was.unit().equals(now.unit())
        && was.source() == now.source()
        && Objects.equals(was.read().by(), now.read().by())
        && FactText.stated(was).equals(FactText.stated(now));
  }

  /** Null where nothing moved. An end's direction: 1 looser, −1 tighter. */
  static @Nullable Kind moved(Limit.Rounded was, Limit.Rounded now) {
    boolean opened =
        was.lower() != null && now.lower() == null || was.upper() != null && now.upper() == null;
    if (opened) {
      return Kind.OPENED;
    }
    int low = -looser(now.lower(), was.lower());
    int high = looser(now.upper(), was.upper());
    if (was.lower() == null && now.lower() != null) {
      low = -1;
    }
    if (was.upper() == null && now.upper() != null) {
      high = -1;
    }
    if (low == 0 && high == 0) {
      return null;
    }
    if (low >= 0 && high >= 0) {
      return Kind.LOOSENED;
    }
    return low <= 0 && high <= 0 ? Kind.TIGHTENED : Kind.SHIFTED;
  }

  private static int looser(@Nullable Rational now, @Nullable Rational was) {
    return now == null || was == null ? 0 : Integer.signum(now.compareTo(was));
  }

  private boolean sameRule() {
    return LimitText.exact(was.written()).equals(LimitText.exact(now.written()))
        && about(was).equals(about(now))
        && FactText.readAs(was).equals(FactText.readAs(now));
  }

  /** The quantity that the rule is about. */
  private static String about(Limit limit) {
    return String.valueOf(limit.rule().quantity());
  }

  /** The rule where it is another; else the row that states it, or the range that it is read in. */
  private @Nullable Span cause(@Nullable Span written) {
    if (!sameRule()) {
      return now.rule().span();
    }
    Analyzer.Range old = was.range();
    Analyzer.Range fresh = now.range();
    if (old == null || fresh == null) {
      return written;
    }
    boolean sameRange =
        was.resolution().equals(now.resolution()) && Objects.equals(old.error(), fresh.error());
    return sameRange ? written : fresh.span();
  }

  private List<Detail> details() {
    List<Detail> details = new ArrayList<>();
    if (!sameRule()) {
      details.add(texts(Detail.What.RULE, FactText.rule(was), FactText.rule(now)));
    }
    details.add(new Detail(Detail.What.BEFORE_ROUNDING, exact(was), exact(now)));
    Detail.Side u = uncertainty(was);
    if (!u.equals(uncertainty(now))) {
      details.add(new Detail(Detail.What.UNCERTAINTY, u, uncertainty(now)));
    }
    if (was.source() != now.source()) {
      details.add(texts(Detail.What.SOURCE, was.source().word(), now.source().word()));
    }
    return details;
  }

  private static Detail texts(Detail.What what, String was, String now) {
    return new Detail(what, Detail.Side.of(was), Detail.Side.of(now));
  }

  private static Detail.Side exact(Limit limit) {
    BigDecimal lower = six(limit.exact().lower(), limit);
    BigDecimal upper = six(limit.exact().upper(), limit);
    return new Detail.Side(
        text(lower, "open", limit) + " to " + text(upper, "open", limit),
        new Detail.Values(limit.unit().ucum(), lower, upper));
  }

  private static Detail.Side uncertainty(Limit limit) {
    BigDecimal expanded = six(limit.expanded(), limit);
    return new Detail.Side(
        text(expanded, "unknown", limit),
        new Detail.Values(limit.unit().ucum(), expanded, expanded));
  }

  /** In the limit's unit, six significant digits. */
  private static @Nullable BigDecimal six(@Nullable Real value, Limit limit) {
    return value == null
        ? null
        : value
            .over(Real.of(limit.unit().factor()))
            .toDecimal(6, RoundingMode.HALF_EVEN)
            .stripTrailingZeros();
  }

  private static String text(@Nullable BigDecimal value, String none, Limit limit) {
    return value == null ? none : (value.toPlainString() + " " + limit.unit().printed()).strip();
  }
}
