package passband.detect;

import java.util.List;
import passband.detect.Arithmetic.Between;

/**
 * A value that is worked out from readings, with the places of their errors.
 *
 * @param hangsOn a bit for each error
 * @param band between what its guard band lies, whatever the errors are, as far as that is known
 */
record PlacedValue(
    Criterion criterion, List<PlacedReading> parts, long hangsOn, Criterion.Band band) {

  static PlacedValue of(Reckoning value, Criterion.Band band, ErrorPlaces places) {
    PlacedReading[] parts = new PlacedReading[value.parts().size()];
    long hangsOn = 0;
    for (int i = 0; i < parts.length; i++) {
      parts[i] = PlacedReading.of(value.parts().get(i), places);
      hangsOn |= parts[i].hangsOn();
    }
    return new PlacedValue(value.criterion(), List.of(parts), hangsOn, band);
  }

  /** Whether it passes in the middle of what its readings are where the errors lie. */
  boolean passesInside(Region region, int size) {
    double[] displayed = new double[parts.size()];
    for (int i = 0; i < displayed.length; i++) {
      Between value = parts.get(i).undisplayed(region, size);
      displayed[i] = parts.get(i).of().window().rounded((value.low() + value.high()) / 2);
    }
    return criterion.passes(displayed, band);
  }

  /**
   * Whether it passes, or fails, wherever the errors lie in a region.
   *
   * @param size how many errors there are
   * @param edge of a step: how much of an undisplayed value at either end does not count
   */
  Criterion.Everywhere everywhere(Region region, int size, double edge) {
    Between[] displayed = new Between[parts.size()];
    for (int i = 0; i < displayed.length; i++) {
      displayed[i] = parts.get(i).displayed(region, size, edge);
    }
    Arithmetic.Range range = criterion.formula().arithmetic().over(displayed);
    if (range.value().isDefined()) {
      Between narrower = bySlopes(range.slopes(), displayed, region, size);
      range = new Arithmetic.Range(range.value().common(narrower), range.slopes());
    }
    return criterion.everywhere(range, displayed);
  }

  /**
   * Between what it lies by its slopes: an error that moves several readings moves it by what these
   * come to together. This is the mean value form (R. E. Moore, Interval Analysis, 1966) about the
   * middle of each reading; a display adds half a step either way.
   */
  private Between bySlopes(Between[] slopes, Between[] displayed, Region region, int size) {
    double[] middles = new double[slopes.length];
    double[] factors = new double[size];
    double constant = 0;
    double off = 0;
    for (int i = 0; i < middles.length; i++) {
      PlacedReading part = parts.get(i);
      middles[i] = (displayed[i].low() + displayed[i].high()) / 2;
      double slope = (slopes[i].low() + slopes[i].high()) / 2;
      double doubt = (slopes[i].high() - slopes[i].low()) / 2;
      double half = part.of().window().step() / 2;
      off += Math.abs(slope) * half + doubt * (displayed[i].high() - displayed[i].low()) / 2;
      constant += slope * (part.of().truth() - middles[i]);
      double[] own = part.factors(size);
      for (int place = 0; place < size; place++) {
        factors[place] += slope * own[place];
      }
    }
    Between moved = region.over(constant, factors);
    double middle = criterion.formula().arithmetic().at(middles);
    return new Between(middle + moved.low() - off, middle + moved.high() + off);
  }
}
