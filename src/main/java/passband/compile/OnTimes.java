package passband.compile;

import java.util.ArrayList;
import java.util.List;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostics;
import passband.model.Analyzer;
import passband.model.Instruments;
import passband.plan.Delivery;
import passband.plan.OnTime;
import passband.quantity.Dimension;
import passband.quantity.Rational;
import passband.resolve.Values;
import passband.syntax.Ratings;
import passband.syntax.Tree;

/** How long output is on in a test: what it says, and what the instruments need that read in it. */
final class OnTimes {
  private final Tree.Test test;
  private final Instruments instruments;
  private final Diagnostics diagnostics;
  private final List<Analyzer> readers;

  /**
   * @param readers the instruments that show something in the test
   */
  OnTimes(
      Tree.Test test, Instruments instruments, List<Analyzer> readers, Diagnostics diagnostics) {
    this.test = test;
    this.instruments = instruments;
    this.readers = List.copyOf(readers);
    this.diagnostics = diagnostics;
  }

  /** Without a duty: that is of each point's mode. */
  OnTime onTime() {
    Rational written =
        test.onTime() == null
            ? null
            : new Values(diagnostics).positive(test.onTime(), Dimension.TIME, "an on-time");
    if (test.onTime() != null && written == null) {
      return OnTime.NONE; // nothing else is said of it
    }
    List<OnTime.Need> needs = new ArrayList<>();
    for (Analyzer unit : instruments.units()) {
      if (counts(unit)) {
        needs.add(new OnTime.Need(unit, unit.settle(), reading(unit)));
      }
    }
    return new OnTime(written, needs, null);
  }

  /** What is held is written down when output is off; a sweep is read while it is on. */
  private Rational reading(Analyzer unit) {
    Rational reading = unit.reading();
    boolean watched = readers.contains(unit) && (!unit.holds() || test.sweep() != null);
    return watched && reading != null ? reading : Rational.ZERO;
  }

  /** Of a single instrument its settling time counts whether it reads or not. */
  private boolean counts(Analyzer unit) {
    return instruments.units().size() == 1 || readers.contains(unit);
  }

  /** Where nobody knows how long an instrument needs to settle, the author has to. */
  void require(Delivery delivery) {
    if (test.onTime() != null && test.output() != null && delivery == Delivery.OFF) {
      diagnostics
          .say(
              Code.WRONG_KIND,
              test.onTime().span(),
              "output is off in this test: it has no on-time")
          .note(test.output().span(), "the test says so here")
          .hint("remove the 'on-time' or this 'output off'");
    }
    for (Analyzer unit : instruments.units()) {
      Ratings.Unknown unknown = counts(unit) ? unit.unknownSettle() : null;
      if (unknown != null && test.onTime() == null && delivery != Delivery.OFF) {
        diagnostics
            .say(
                Code.MISSING_ITEM,
                test.name().span(),
                "the test '%s' needs an 'on-time': how long '%s' takes to settle is unknown",
                test.name().text(),
                unit.name().text())
            .note(unknown.span(), "it is unknown here")
            .hint("add 'on-time …', long enough for a steady reading");
      }
    }
  }
}
