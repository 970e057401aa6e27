package passband.detect;

/** Where some errors lie, by place, as shares of their half-widths. */
interface Region {
  /**
   * Between what the sum of a number and of each error by a factor lies.
   *
   * @param factors by place
   */
  Arithmetic.Between over(double constant, double[] factors);

  /** Each error between two. */
  record Box(double[] least, double[] most) implements Region {
    /** Wherever they may lie. */
    static Box whole(ErrorPlaces places) {
      double[] most = places.reaches();
      double[] least = new double[most.length];
      for (int place = 0; place < least.length; place++) {
        least[place] = -most[place];
      }
      return new Box(least, most);
    }

    boolean isEmpty() {
      for (int place = 0; place < least.length; place++) {
        if (least[place] >= most[place]) {
          return true;
        }
      }
      return false;
    }

    @Override
    public Arithmetic.Between over(double constant, double[] factors) {
      double low = constant;
      double high = constant;
      for (int place = 0; place < factors.length; place++) {
        if (factors[place] != 0) {
          double a = factors[place] * least[place];
          double b = factors[place] * most[place];
          low += Math.min(a, b);
          high += Math.max(a, b);
        }
      }
      return new Arithmetic.Between(low, high);
    }
  }
}
