package passband.diff;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import passband.limit.Limit;
import passband.plan.FactText;
import passband.plan.LimitText;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.source.Span;

/** What a change of a limit is, by the readings that are accepted and by the tolerance. */
final class LimitChangeClassifier {
  private final Limit was;
  private final Limit now;

  private LimitChangeClassifier(Limit was, Limit now) {
    this.was = was;
    this.now = now;
  }

  static Change judge(Difference difference) {
    LimitChangeClassifier judge =
        new LimitChangeClassifier(difference.was().limit(), difference.now().limit());
    String was = FactText.limit(judge.was);
    String now = FactText.limit(judge.now);
    boolean alike = was.equals(now);
    return new Change(
        judge.kind(),
        difference.subject(),
        alike ? difference.was().shown() : was,
        alike ? difference.now().shown() : now,
        judge.cause(difference.now().span()),
        judge.details());
  }

  private Kind kind() {
    Kind accepted = moved(was.accept(), now.accept());
    if (accepted == null) {
      accepted = moved(was.printed(), now.printed());
    }
    boolean sameExact =
        same(was.exact().lower(), now.exact().lower())
            && same(was.exact().upper(), now.exact().upper());
    boolean sameStep = was.resolution().equals(now.resolution());
    if (accepted == null) {
      return sameStep ? Kind.RULE : Kind.RE_ROUNDED;
    }
    return sameExact && !sameStep && accepted != Kind.OPENED ? Kind.RE_ROUNDED : accepted;
  }

  private static boolean same(Real a, Real b) {
    return a == null ? b == null : b != null && a.compareTo(b) == 0;
  }

  /** Null where nothing moved. An end's direction: 1 looser, −1 tighter. */
  private static Kind moved(Limit.Rounded was, Limit.Rounded now) {
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

  private static int looser(Rational now, Rational was) {
    return now == null || was == null ? 0 : Integer.signum(now.compareTo(was));
  }

  private boolean sameRule() {
    return LimitText.exact(was.rule().limit()).equals(LimitText.exact(now.rule().limit()))
        && was.rule().quantity().text().equals(now.rule().quantity().text())
        && FactText.readAs(was).equals(FactText.readAs(now));
  }

  /** The rule where it is another; else the row that states it, or the range that it is read in. */
  private Span cause(Span written) {
    boolean sameRange =
        was.range() == null
            || now.range() == null
            || was.resolution().equals(now.resolution())
                && was.range().error().equals(now.range().error());
    if (!sameRule()) {
      return now.rule().span();
    }
    return sameRange ? written : now.range().span();
  }

  private List<String> details() {
    List<String> details = new ArrayList<>();
    if (!sameRule()) {
      details.add("rule: " + FactText.rule(was) + " -> " + FactText.rule(now));
    }
    details.add("before rounding: " + exact(was) + " -> " + exact(now));
    String u = uncertainty(was);
    if (!u.equals(uncertainty(now))) {
      details.add("uncertainty: " + u + " -> " + uncertainty(now));
    }
    if (was.source() != now.source()) {
      details.add("source: " + was.source().word() + " -> " + now.source().word());
    }
    return details;
  }

  private static String exact(Limit limit) {
    return six(limit.exact().lower(), limit) + " to " + six(limit.exact().upper(), limit);
  }

  private static String uncertainty(Limit limit) {
    return six(limit.expanded(), limit);
  }

  private static String six(Real value, Limit limit) {
    if (value == null) {
      return "open";
    }
    String number =
        value
            .over(Real.of(limit.unit().factor()))
            .toDecimal(6, RoundingMode.HALF_EVEN)
            .stripTrailingZeros()
            .toPlainString();
    return (number + " " + limit.unit().printed()).strip();
  }
}
