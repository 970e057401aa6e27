package passband.detect;

/**
 * A reading with the places of its errors. Errors are given by place, as shares of their
 * half-widths.
 *
 * @param own −1 for none
 * @param load −1 for none
 * @param hangsOn a bit for each error
 */
record PlacedReading(Observation of, int own, int load, long hangsOn) {
  static PlacedReading of(Observation one, ErrorPlaces places) {
    int own = places.of(one.own());
    int load = places.of(one.load());
    return new PlacedReading(one, own, load, bit(own) | bit(load));
  }

  static long bit(int place) {
    return place < 0 ? 0 : 1L << place;
  }

  /** By how much each error moves it at its half-width, with its sign, by place. */
  double[] factors(int size) {
    double[] factors = new double[size];
    if (own >= 0) {
      factors[own] += of.own().half();
    }
    if (load >= 0) {
      factors[load] += of.load().half();
    }
    return factors;
  }

  /** The undisplayed value where the errors lie. */
  Arithmetic.Between undisplayed(Region region, int size) {
    return region.over(of.truth(), factors(size));
  }

  /**
   * What is displayed where the errors lie.
   *
   * @param edge of a step: how much of the undisplayed value at either end does not count
   */
  Arithmetic.Between displayed(Region region, int size, double edge) {
    Arithmetic.Between value = undisplayed(region, size);
    double inset = Math.min(edge * of.window().step(), (value.high() - value.low()) / 2);
    return new Arithmetic.Between(
        of.window().rounded(value.low() + inset), of.window().rounded(value.high() - inset));
  }

  /** How many times its display turns over where the errors lie. */
  long turns(Region region, int size, double edge) {
    Arithmetic.Between displayed = displayed(region, size, edge);
    return Math.round((displayed.high() - displayed.low()) / of.window().step());
  }

  /** The undisplayed value at the turn in the middle of them. */
  double middleTurn(Region region, int size) {
    Arithmetic.Between value = undisplayed(region, size);
    double step = of.window().step();
    return (Math.floor((value.low() + value.high()) / 2 / step) + 0.5) * step;
  }
}
