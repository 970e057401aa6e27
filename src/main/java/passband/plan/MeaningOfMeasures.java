package passband.plan;

import java.util.ArrayList;
import java.util.List;
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
    List<Analyzer.Range> sorted = new ArrayList<>(measure.ranges());
    sorted.sort(MeaningOfMeasures::order);
    int number = 1;
    for (Analyzer.Range range : sorted) {
      range(range, key + "/" + number, subject + ", range " + number);
      number++;
    }
    chosen(measure, sorted, key, subject);
  }

  private static int order(Analyzer.Range one, Analyzer.Range other) {
    int from = one.from().compareTo(other.from());
    int to = from != 0 ? from : one.to().compareTo(other.to());
    return to != 0 ? to : one.resolution().compareTo(other.resolution());
  }

  /** Of ranges with values in common the first is the one that is read; else no order counts. */
  private void chosen(
      Analyzer.Measure measure, List<Analyzer.Range> sorted, String key, String subject) {
    boolean meet = false;
    for (int i = 1; i < sorted.size(); i++) {
      meet |= sorted.get(i).from().compareTo(sorted.get(i - 1).to()) < 0;
    }
    if (meet && !sorted.equals(measure.ranges())) {
      List<String> order = new ArrayList<>();
      measure.ranges().forEach(one -> order.add("range " + (sorted.indexOf(one) + 1)));
      String first = subject + ", the ranges that are read first";
      facts.add(Fact.order(Area.ANALYZER, key + "/chosen", first, order, measure.span()));
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
                    accuracy.distribution().coverage())
                + degrees(accuracy.distribution().freedom());
  }

  /** Nothing for infinitely many. */
  private static String degrees(@Nullable Rational freedom) {
    return freedom == null ? "" : Canonical.of(freedom);
  }
}
