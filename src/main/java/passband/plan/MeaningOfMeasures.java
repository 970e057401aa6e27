package passband.plan;

import org.jspecify.annotations.Nullable;
import passband.model.Accuracy;
import passband.model.Analyzer;
import passband.plan.Fact.Area;
import passband.quantity.Distribution;
import passband.quantity.Rational;
import passband.quantity.Unit;
import passband.quantity.Units;
import passband.source.Span;

/** What an instrument, or the generator's own display, measures. */
final class MeaningOfMeasures {
  private static final Unit OHM = Units.of("ohm");

  private final FactList facts;
  private final Area area;
  private final String prefix;

  /**
   * @param prefix of the keys
   */
  MeaningOfMeasures(FactList facts, Area area, String prefix) {
    this.facts = facts;
    this.area = area;
    this.prefix = prefix;
  }

  void add(Analyzer.Measure measure) {
    String key = prefix + "measure/" + measure.quantity().name();
    String subject = "measured " + measure.quantity().name();
    String from = measure.from() == null ? null : measure.from().id();
    String to = measure.to() == null ? null : measure.to().id();
    Rational through = measure.through();
    String shown = from == null && to == null ? "" : from + " to " + to;
    String own = through == null ? "" : " through " + FactText.value(through, OHM);
    fact(
        key,
        subject,
        through == null ? Canonical.of(from, to) : Canonical.of(from, to, through),
        (shown + own).strip(),
        measure.span());
    int number = 1;
    for (Analyzer.Range range : measure.ranges()) {
      range(range, key + "/" + number, subject + ", range " + number);
      number++;
    }
  }

  private void range(Analyzer.Range r, String key, String subject) {
    String shown =
        FactText.value(r.from(), r.unit())
            + " to "
            + FactText.value(r.to(), r.unit())
            + ", resolution "
            + FactText.value(r.resolution(), r.unit())
            + ", error "
            + FactText.known(FactText.accuracy(r.error()), r.unknown());
    String canonical =
        Canonical.of(r.from(), r.to(), r.resolution(), r.unit(), accuracy(r.error()));
    if (r.unknown() == null) {
      fact(key, subject, canonical, shown, r.span());
    } else {
      String why = Canonical.of(canonical, r.unknown().reason());
      facts.add(Fact.of(Area.UNKNOWN, key, subject, why, shown, r.unknown().span()));
    }
  }

  private void fact(String key, String subject, String canonical, String shown, Span span) {
    facts.add(Fact.of(area, key, subject, canonical, shown, span));
  }

  static String accuracy(@Nullable Accuracy accuracy) {
    return accuracy == null
        ? Canonical.of((Object) null)
        : accuracy.distribution().equals(Distribution.RECTANGULAR)
            ? Canonical.of(accuracy.relative(), accuracy.absolute())
            : Canonical.of(
                accuracy.relative(),
                accuracy.absolute(),
                accuracy.distribution().shape(),
                accuracy.distribution().coverage());
  }
}
