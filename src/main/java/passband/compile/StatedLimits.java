package passband.compile;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.diagnostic.Code;
import passband.diagnostic.DiagnosticBuilder;
import passband.diagnostic.Diagnostics;
import passband.diagnostic.Fix;
import passband.limit.Stated;
import passband.quantity.QuantityKind;
import passband.quantity.Unit;
import passband.source.Span;

/** Finds out which accepted quantity each stated limit of a row is for. */
final class StatedLimits {
  private final List<Accepts.Accepted> accepted;
  private final Diagnostics diagnostics;

  StatedLimits(List<Accepts.Accepted> accepted, Diagnostics diagnostics) {
    this.accepted = accepted;
    this.diagnostics = diagnostics;
  }

  /**
   * The stated limits with the quantity of each; null, with the fault said, when that of any cannot
   * be told or two are for the same quantity.
   */
  @Nullable List<Stated> named(List<Stated> stated) {
    List<Stated> named = new ArrayList<>();
    boolean sound = true;
    boolean measured = areMeasured();
    for (Stated one : stated) {
      Stated known = named(one, measured);
      sound &= known == null ? !measured : distinct(known, named);
      if (known != null) {
        named.add(known);
      }
    }
    return sound ? named : null;
  }

  private boolean distinct(Stated stated, List<Stated> before) {
    for (Stated other : before) {
      if (other.of(stated.quantity())) {
        diagnostics
            .say(
                Code.DUPLICATE_NAME,
                stated.heading(),
                "another column already states limits for %s",
                Objects.requireNonNull(other.quantity(), "only named ones are compared"))
            .note(other.heading(), "it is here");
        return false;
      }
    }
    return true;
  }

  /** Whether what is to be read can be: else that is said, and these limits may be for it. */
  private boolean areMeasured() {
    for (Accepts.Accepted one : accepted) {
      if (one.workedOut() == null && one.reader().measure(one.read().name()) == null) {
        return false;
      }
    }
    return true;
  }

  private @Nullable Stated named(Stated stated, boolean measured) {
    Set<String> fits = fits(stated);
    if (fits.size() == 1) {
      return stated.named(fits.iterator().next());
    }
    if (fits.isEmpty() && measured) {
      sayUnused(stated);
    } else if (!fits.isEmpty()) {
      sayAmbiguous(stated.heading(), fits);
    }
    return null;
  }

  /** The quantities that are accepted, or read instead, and that the column can mean. */
  private Set<String> fits(Stated stated) {
    Set<String> fits = new LinkedHashSet<>();
    for (Accepts.Accepted one : accepted) {
      for (QuantityKind kind : List.of(one.read(), one.kind())) {
        boolean named = stated.quantity() == null || stated.of(kind.name());
        if (named && kind.dimension().equals(stated.unit().dimension())) {
          fits.add(kind.name());
        }
      }
    }
    return fits;
  }

  private void sayUnused(Stated stated) {
    Unit unit = stated.unit();
    Set<String> known = new LinkedHashSet<>();
    for (Accepts.Accepted one : accepted) {
      known.add(one.read().name());
      known.add(one.kind().name());
    }
    diagnostics
        .say(
            Code.STATED_UNUSED,
            stated.heading(),
            "these limits are for %s, which this test does not accept",
            stated.quantity() == null
                ? unit.dimension().describe()
                : stated.quantity() + ", " + unit.dimension().describe())
        .hint("it accepts %s", String.join(", ", known));
  }

  private void sayAmbiguous(Span heading, Set<String> fits) {
    DiagnosticBuilder said =
        diagnostics
            .say(
                Code.STATED_UNUSED,
                heading,
                "these limits could be for %s",
                String.join(" or ", fits))
            .hint("name the quantity in the heading: 'stated %s'", fits.iterator().next());
    int end = heading.start() + "stated".length();
    Span after = new Span(heading.file(), end, end);
    fits.forEach(name -> said.fix(Fix.insert("write 'stated " + name + "'", after, " " + name)));
  }
}
