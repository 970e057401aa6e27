package passband.quantity;

import org.jspecify.annotations.Nullable;

/** A sum of variances with what their degrees of freedom bring about (JCGM 100, 5.1.2 and G.4). */
public final class VarianceSum {
  private Real variance = Real.ZERO;
  private Real shares = Real.ZERO;

  /**
   * Adds a part.
   *
   * @param width by how much its half-width moves the result
   */
  public void add(Real width, Distribution spread) {
    Real square = width.times(width).times(Real.of(spread.variance()));
    variance = variance.plus(square);
    shares = shares.plus(Student.share(square, spread));
  }

  /** Adds a variance of so many degrees of freedom. */
  public void add(Real square, Rational freedom) {
    variance = variance.plus(square);
    shares = shares.plus(square.times(square).over(Real.of(freedom)));
  }

  /** Adds all parts of another sum. */
  public void add(VarianceSum other) {
    variance = variance.plus(other.variance);
    shares = shares.plus(other.shares);
  }

  /** The variance. */
  public Real variance() {
    return variance;
  }

  /** The effective degrees of freedom; null for infinitely many. */
  public @Nullable Integer freedom() {
    return Student.effective(variance, shares);
  }
}
