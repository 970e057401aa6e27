package passband.detect;

import java.util.List;

/**
 * A value that is worked out from readings of one visit.
 *
 * @param parts what stands on the display, in the order of the formula's names
 */
record Reckoning(Criterion criterion, List<Observation> parts) {
  /** Copies the parts. */
  Reckoning {
    parts = List.copyOf(parts);
  }

  /** What can be displayed, whatever the errors are; not a number where there is none. */
  private Arithmetic.Between[] displayed() {
    Arithmetic.Between[] displayed = new Arithmetic.Between[parts.size()];
    for (int i = 0; i < displayed.length; i++) {
      displayed[i] = parts.get(i).displayed();
    }
    return displayed;
  }

  /** Between what its guard band lies, whatever the errors are. */
  Criterion.Band band() {
    return criterion.band(displayed());
  }

  boolean alwaysPasses() {
    return everywhere() == Criterion.Everywhere.PASS;
  }

  private Criterion.Everywhere everywhere() {
    ErrorPlaces places = new ErrorPlaces();
    PlacedValue value = PlacedValue.of(this, Criterion.Band.UNKNOWN, places);
    return value.everywhere(Region.Box.whole(places), places.size(), 0);
  }

  /** Whether it fails whatever the errors are; so it does where a part has no number. */
  boolean neverPasses() {
    for (Observation part : parts) {
      if (!part.hasValue()) {
        return true;
      }
    }
    return everywhere() == Criterion.Everywhere.FAIL || (isKnown() && !criterion.passes(middle()));
  }

  /** Whether nothing is left to chance. */
  private boolean isKnown() {
    for (Observation part : parts) {
      Arithmetic.Between displayed = part.displayed();
      if (displayed.low() != displayed.high()) {
        return false;
      }
    }
    return true;
  }

  private double[] middle() {
    double[] middle = new double[parts.size()];
    for (int i = 0; i < middle.length; i++) {
      middle[i] = parts.get(i).displayed().low();
    }
    return middle;
  }

  /** Whether the true values lie outside of its limits. */
  boolean isOutside() {
    double[] truths = new double[parts.size()];
    for (int i = 0; i < truths.length; i++) {
      truths[i] = parts.get(i).truth();
    }
    return criterion.isOutside(truths);
  }

  /** Whether no error of a part is without an end. */
  boolean ends() {
    for (Observation part : parts) {
      if (!part.ends()) {
        return false;
      }
    }
    return true;
  }
}
