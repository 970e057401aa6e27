package passband.diff;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import passband.limit.Decision;
import passband.limit.Limit;
import passband.limit.Uncertainty;
import passband.model.Analyzer;
import passband.plan.Fact;
import passband.plan.Plan;
import passband.quantity.Rational;
import passband.quantity.Real;
import passband.source.Span;
import passband.syntax.DecisionKind;

/**
 * How a reading is compared with a limit, apart from the limit itself: the guard band that the
 * decision rule asks for, and the uncertainty that it is made of.
 */
final class AcceptanceClassifier {
  private final Decision was;
  private final Decision now;
  private final Span line;

  /** Of two procedures. */
  AcceptanceClassifier(Plan was, Plan now) {
    this.was = was.decision();
    this.now = now.decision();
    this.line = now.source().decision();
  }

  /** What the decision rule brings about at a limit; null where it brings about nothing. */
  @Nullable Change guard(Fact before, Fact after) {
    Limit old = limit(before);
    Limit fresh = limit(after);
    int direction = direction(old, fresh);
    if (direction == 0 || old.uncertainty() == null && fresh.uncertainty() == null) {
      return null;
    }
    return change(
        direction < 0 ? Kind.GUARD_LESS : Kind.GUARD_MORE,
        before,
        after,
        accepted(old) + ", " + was.text(),
        accepted(fresh) + ", " + now.text(),
        line);
  }

  /** By the factors; of a managed guard band, which has one for each limit, by what is accepted. */
  private int direction(Limit old, Limit fresh) {
    boolean managed = was.kind() == DecisionKind.MANAGED || now.kind() == DecisionKind.MANAGED;
    if (!managed || was.kind() == now.kind()) {
      return now.guard().compareTo(was.guard());
    }
    boolean same = old.accept().equals(fresh.accept());
    return same ? 0 : isWider(old.accept(), fresh.accept()) ? -1 : 1;
  }

  private static boolean isWider(Limit.Rounded old, Limit.Rounded fresh) {
    return old.lower() != null && fresh.lower() != null && fresh.lower().compareTo(old.lower()) < 0
        || old.upper() != null && fresh.upper() != null && fresh.upper().compareTo(old.upper()) > 0;
  }

  private static String accepted(Limit limit) {
    return "accepts " + limit.words(limit.accept());
  }

  /** What another uncertainty brings about where the limit is the same; else null. */
  @Nullable Change uncertainty(Fact before, Fact after) {
    Limit old = limit(before);
    Limit fresh = limit(after);
    if (!old.sameTolerance(fresh) || !old.quantity().equals(fresh.quantity())) {
      return null;
    }
    Kind kind = kind(old, fresh);
    Analyzer.Range range = fresh.range();
    Span span = range == null ? after.span() : range.span();
    return kind == null ? null : change(kind, before, after, text(old), text(fresh), span);
  }

  private static Limit limit(Fact fact) {
    return Objects.requireNonNull(fact.limit(), "a fact that is no limit");
  }

  /** Less where it is less at either end: that end accepts more. */
  private @Nullable Kind kind(Limit before, Limit after) {
    Uncertainty old = before.uncertainty();
    Uncertainty fresh = after.uncertainty();
    Rational factor = now.coverage();
    if (old == null || fresh == null) {
      return old == fresh ? null : fresh == null ? Kind.UNCERTAINTY_MORE : Kind.UNCERTAINTY_LESS;
    }
    boolean more = false;
    for (Real end : ends(after)) {
      int direction = fresh.expanded(end, factor).compareTo(old.expanded(end, factor));
      if (direction < 0) {
        return Kind.UNCERTAINTY_LESS;
      }
      more |= direction > 0;
    }
    return more ? Kind.UNCERTAINTY_MORE : null;
  }

  private static List<Real> ends(Limit limit) {
    List<Real> ends = new ArrayList<>();
    if (limit.exact().lower() != null) {
      ends.add(limit.exact().lower());
    }
    if (limit.exact().upper() != null) {
      ends.add(limit.exact().upper());
    }
    return ends;
  }

  private String text(Limit limit) {
    Real expanded = limit.expanded();
    String u = expanded == null ? "unknown" : limit.unit().rounded(expanded);
    return limit.words(limit.printed())
        + ", U = "
        + u
        + (isGuardedAlike() && now.guard().signum() > 0 ? ", " + accepted(limit) : "");
  }

  /** Else the acceptance tells more of the decision rule than of the uncertainty. */
  private boolean isGuardedAlike() {
    return was.kind() == now.kind() && was.guard().equals(now.guard());
  }

  private boolean isShown(Kind kind) {
    return kind == Kind.GUARD_LESS || kind == Kind.GUARD_MORE || isGuardedAlike();
  }

  private Change change(
      Kind kind, Fact before, Fact after, String was, String now, @Nullable Span cause) {
    return new Change(
        kind,
        after.subject(),
        was,
        now,
        cause,
        List.of(),
        isShown(kind) ? Ends.of(before) : List.of(),
        isShown(kind) ? Ends.of(after) : List.of());
  }
}
