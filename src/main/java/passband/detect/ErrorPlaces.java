package passband.detect;

import java.util.ArrayList;
import java.util.List;

/** The errors of some readings, each once, in the order in which they are met. */
final class ErrorPlaces {
  private final List<String> keys = new ArrayList<>();
  private final List<Spread> spreads = new ArrayList<>();

  /** Where an error stands, from now on; −1 for none. */
  int of(ErrorTerm error) {
    if (error.half() == 0) {
      return -1;
    }
    int place = keys.indexOf(error.key());
    if (place >= 0) {
      return place;
    }
    keys.add(error.key());
    spreads.add(error.spread());
    return keys.size() - 1;
  }

  int size() {
    return keys.size();
  }

  Spread spread(int place) {
    return spreads.get(place);
  }

  /** No error is taken to be greater: by place, as shares of their half-widths. */
  double[] reaches() {
    double[] reaches = new double[size()];
    for (int place = 0; place < reaches.length; place++) {
      reaches[place] = spread(place).reach();
    }
    return reaches;
  }
}
