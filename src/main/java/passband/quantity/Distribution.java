package passband.quantity;

import org.jspecify.annotations.Nullable;

/**
 * How an error is spread over its half-width (JCGM 100, 4.3.4 to 4.3.9; the U-shaped one is the
 * arcsine distribution, JCGM 101, 6.4.6).
 *
 * @param coverage of a normal distribution, by how many standard uncertainties the half-width is
 *     stated; one for any other
 * @param freedom the degrees of freedom of what is known of it (G.4.2, G.6.4); null where it is
 *     taken to be known exactly, so that they are infinite
 */
public record Distribution(Shape shape, Rational coverage, @Nullable Rational freedom) {
  /** What is taken where nothing is said: only the limits of an error are known (4.3.7). */
  public static final Distribution RECTANGULAR = new Distribution(Shape.RECTANGULAR, Rational.ONE);

  /** With infinitely many degrees of freedom. */
  public Distribution(Shape shape, Rational coverage) {
    this(shape, coverage, null);
  }

  /** The same with so many degrees of freedom; null for infinitely many. */
  public Distribution with(@Nullable Rational degrees) {
    return new Distribution(shape, coverage, degrees);
  }

  /** The shape of a distribution. */
  public enum Shape {
    RECTANGULAR("rectangular", 3),
    TRIANGULAR("triangular", 6),
    U_SHAPED("u-shaped", 2),
    NORMAL("normal", 1);

    private final String word;
    private final int divisor;

    Shape(String word, int divisor) {
      this.word = word;
      this.divisor = divisor;
    }

    /** As written in the language and in files. */
    public String word() {
      return word;
    }
  }

  /**
   * Of what a file says.
   *
   * @param coverage of a normal one; null for any other
   */
  public static @Nullable Distribution find(String word, @Nullable Rational coverage) {
    for (Shape shape : Shape.values()) {
      if (shape.word.equals(word) && (coverage != null) == (shape == Shape.NORMAL)) {
        return new Distribution(shape, coverage == null ? Rational.ONE : coverage);
      }
    }
    return null;
  }

  /** The square of the standard uncertainty of an error of half-width one. */
  public Rational variance() {
    return Rational.ONE.over(Rational.of(shape.divisor).times(coverage).times(coverage));
  }

  /** In words, such as {@code normal, k = 2, 9 degrees of freedom}. */
  public String text() {
    String degrees = freedom == null ? "" : ", " + freedom.toPlain() + " degrees of freedom";
    return shape.word + (shape == Shape.NORMAL ? ", k = " + coverage.toPlain() : "") + degrees;
  }
}
