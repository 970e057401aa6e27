package passband.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Exact numbers against Java's own big integers and decimals, with fixed seeds. */
class ExactNumbersTest {
  private static final MathContext SIXTY = new MathContext(60, RoundingMode.HALF_EVEN);

  /**
   * Sizes from one digit to beyond a long, so that both ways of keeping a ratio, and the step
   * between, are met.
   */
  private static BigInteger some(Random random) {
    BigInteger value = new BigInteger(1 + random.nextInt(80), random);
    if (random.nextInt(8) == 0) {
      value = BigInteger.valueOf(Long.MAX_VALUE).subtract(BigInteger.valueOf(random.nextInt(3)));
    }
    return random.nextBoolean() ? value : value.negate();
  }

  @Test
  void ratiosAgreeWithBigIntegers() {
    Random random = new Random(20260914);
    for (int i = 0; i < 20_000; i++) {
      BigInteger a = some(random);
      BigInteger b = some(random).abs().max(BigInteger.ONE);
      BigInteger c = some(random);
      BigInteger d = some(random).abs().max(BigInteger.ONE);
      Rational x = Rational.of(a, b);
      Rational y = Rational.of(c, d);
      assertEquals(Rational.of(a.multiply(d).add(c.multiply(b)), b.multiply(d)), x.plus(y));
      assertEquals(Rational.of(a.multiply(d).subtract(c.multiply(b)), b.multiply(d)), x.minus(y));
      assertEquals(Rational.of(a.multiply(c), b.multiply(d)), x.times(y));
      assertEquals(a.multiply(d).compareTo(c.multiply(b)), x.compareTo(y));
      assertEquals(x.minus(y).signum(), x.compareTo(y));
      if (c.signum() != 0) {
        assertEquals(x, x.over(y).times(y));
      }
      assertEquals(
          a.divide(b)
              .subtract(
                  a.signum() < 0 && a.mod(b).signum() != 0 ? BigInteger.ONE : BigInteger.ZERO),
          x.floor());
      assertEquals(BigInteger.ONE, x.numerator().gcd(x.denominator()).max(BigInteger.ONE));
    }
  }

  @Test
  void theLeastLongIsNoTrap() {
    Rational least = Rational.of(Long.MIN_VALUE);
    assertEquals(BigInteger.valueOf(Long.MIN_VALUE), least.numerator());
    assertEquals(least, least.negate().negate());
    assertEquals(Rational.ONE, least.over(least));
    assertEquals(least, Rational.of(Long.MIN_VALUE + 1).minus(Rational.ONE));
    assertEquals(Rational.of(1), Rational.of(Long.MIN_VALUE, Long.MIN_VALUE));
    assertTrue(least.compareTo(Rational.of(Long.MAX_VALUE)) < 0);
  }

  @Test
  void calculationsAgreeWithSixtyDigits() {
    Random random = new Random(7);
    for (int i = 0; i < 3_000; i++) {
      long a = 1 + random.nextInt(900);
      long b = 1 + random.nextInt(900);
      long c = 1 + random.nextInt(900);
      long step = 1 + random.nextInt(20);
      Real value =
          Real.of(Rational.of(a))
              .sqrt()
              .plus(Real.of(Rational.of(b, 7)).sqrt())
              .over(Real.of(Rational.of(c)))
              .plus(Real.of(Rational.of(b)))
              .sqrt();
      BigDecimal expected =
          new BigDecimal(a)
              .sqrt(SIXTY)
              .add(new BigDecimal(b).divide(new BigDecimal(7), SIXTY).sqrt(SIXTY))
              .divide(new BigDecimal(c), SIXTY)
              .add(new BigDecimal(b))
              .sqrt(SIXTY);
      assertEquals(
          expected.round(new MathContext(40, RoundingMode.HALF_EVEN)),
          value.toDecimal(40, RoundingMode.HALF_EVEN));
      Rational by = Rational.of(step, 1000);
      BigDecimal steps = expected.divide(new BigDecimal(step).movePointLeft(3), SIXTY);
      assertEquals(
          steps.setScale(0, RoundingMode.FLOOR).toBigInteger(),
          value.floorTo(by).over(by).numerator());
      assertEquals(
          steps.setScale(0, RoundingMode.CEILING).toBigInteger(),
          value.ceilingTo(by).over(by).numerator());
    }
  }

  private static Real root(long of) {
    return Real.of(Rational.of(of)).sqrt();
  }

  @Test
  void rootsStayExact() {
    assertEquals(Rational.of(4), root(2).times(root(8)).rational());
    assertEquals(Rational.of(1, 2), root(2).over(root(8)).rational());
    assertEquals(0, root(2).plus(root(8)).compareTo(root(18)));
    assertEquals(Rational.ZERO, root(2).minus(root(2)).rational());
    assertEquals(Rational.of(9), root(3).pow(4).rational());
    assertEquals(Rational.of(1, 5), Real.of(Rational.of(16, 400)).sqrt().rational());
    assertTrue(root(2).negate().compareTo(root(3).negate()) > 0);
    assertEquals(Rational.of(-2), root(3).negate().floorTo(Rational.ONE));
    assertEquals(Rational.of(-1), root(3).negate().ceilingTo(Rational.ONE));
    assertEquals(-1, root(2).plus(root(3)).compareTo(root(10)));
    assertEquals(0, root(2).plus(root(3)).minus(root(3)).minus(root(2)).signum());
    assertThrows(ArithmeticException.class, () -> root(2).negate().sqrt());
    assertThrows(ArithmeticException.class, () -> root(2).over(Real.ZERO));
    assertThrows(IllegalStateException.class, () -> root(2).rational());
  }

  /** A value on the very boundary stays there: nothing is lost to the last digit. */
  @Test
  void aRootOnTheGridIsOnTheGrid() {
    Rational milli = Rational.of(1, 1000);
    Real limit = Real.of(Rational.of(16)).over(Real.of(Rational.of(400))).sqrt();
    assertEquals(Rational.of(1, 5), limit.floorTo(milli));
    assertEquals(Rational.of(1, 5), limit.ceilingTo(milli));
  }

  @ParameterizedTest
  @CsvSource({"12,12", "0.50,0.5", "1e3,1000", "-1.5E-3,-0.0015", "100,100", "0,0"})
  void plainKeepsWhatThereIs(String written, String plain) {
    assertEquals(plain, Rational.parse(written).toPlain());
  }

  /** Rounded half to even as Java's decimals do it, ties and signs among them. */
  @Test
  void fixedDecimalsAndDoublesAgreeWithDecimals() {
    Random random = new Random(15);
    for (int i = 0; i < 40_000; i++) {
      boolean tie = random.nextInt(3) == 0;
      BigInteger n = tie ? BigInteger.valueOf(random.nextInt(4001) - 2000) : some(random);
      BigInteger d = tie ? BigInteger.valueOf(1L << random.nextInt(12)) : some(random);
      if (d.signum() == 0) {
        continue;
      }
      Rational value = Rational.of(n, d);
      int decimals = random.nextInt(10);
      BigDecimal exact = new BigDecimal(value.numerator());
      BigDecimal by = new BigDecimal(value.denominator());
      assertEquals(
          exact.divide(by, decimals, RoundingMode.HALF_EVEN).toPlainString(),
          value.toFixed(decimals),
          n + "/" + d + " to " + decimals);
      assertEquals(
          exact.divide(by, new MathContext(40)).doubleValue(), value.doubleValue(), n + "/" + d);
    }
  }

  @Test
  void plainAndFixed() {
    assertEquals("0.333333333333", Rational.of(1, 3).toPlain());
    assertEquals("0.33", Rational.of(1, 3).toFixed(2));
    assertEquals("179.0", Rational.of(179).toFixed(1));
    assertEquals("0", Rational.of(-1, 1000).toFixed(0));
    assertEquals("1/3", Rational.of(2, 6).toString());
    assertNull(Rational.of(2).exactRoot());
    assertNull(Rational.of(-4).exactRoot());
    assertEquals(Rational.of(2, 3), Rational.of(4, 9).exactRoot());
    assertFalse(Rational.of(1, 2).isInteger());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "1e99",
        "1e999999999",
        "1e-99",
        "abc",
        "1,5",
        "1234567890123456789012345678901234567890123456789012345678901"
      })
  void whatIsNoNumberIsRefused(String written) {
    assertThrows(NumberFormatException.class, () -> Rational.parse(written));
  }

  @Test
  void zeroDividesNothing() {
    assertThrows(ArithmeticException.class, () -> Rational.ONE.over(Rational.ZERO));
    assertThrows(ArithmeticException.class, () -> Rational.of(1, 0));
    assertThrows(ArithmeticException.class, () -> Rational.of(BigInteger.ONE, BigInteger.ZERO));
  }

  @Test
  void theLargerAndTheSmaller() {
    Rational third = Rational.of(1, 3);
    Rational half = Rational.of(1, 2);
    assertEquals(half, half.max(third));
    assertEquals(half, third.max(half));
    assertEquals(third, half.min(third));
    assertEquals(third, third.min(half));
    assertEquals(0, root(3).compareTo(root(2).max(root(3))));
    assertEquals(0, root(3).compareTo(root(3).max(root(2))));
    assertEquals(0, root(2).compareTo(root(2).min(root(3))));
    assertEquals(0, root(2).compareTo(root(3).min(root(2))));
  }

  @Test
  void equalNumbersAreEqual() {
    BigInteger huge = BigInteger.TWO.pow(90);
    assertEquals(
        Rational.of(huge, BigInteger.valueOf(3)), Rational.of(huge, BigInteger.valueOf(3)));
    assertEquals(
        Rational.of(huge, BigInteger.valueOf(3)).hashCode(),
        Rational.of(huge.shiftLeft(1), BigInteger.valueOf(6)).hashCode());
    assertFalse(Rational.of(1, 2).equals(Rational.of(1, 3)));
    assertFalse(Rational.of(1, 2).equals(Rational.of(2, 2)));
    assertFalse(
        Rational.of(huge, BigInteger.valueOf(3)).equals(Rational.of(huge, BigInteger.valueOf(5))));
    assertTrue(Rational.of(1, 2).hashCode() != Rational.of(1, 3).hashCode());
    assertTrue(Rational.of(1, 2).hashCode() != Rational.of(3, 2).hashCode());
    assertEquals(Real.of(Rational.of(2)), root(4));
    assertEquals(Real.of(Rational.of(2)).hashCode(), root(4).hashCode());
    assertTrue(Real.of(Rational.of(2)).hashCode() != Real.of(Rational.of(3)).hashCode());
    assertTrue(
        Rational.of(huge, BigInteger.valueOf(3)).hashCode()
            != Rational.of(huge, BigInteger.valueOf(5)).hashCode());
    assertTrue(
        Rational.of(huge, BigInteger.valueOf(3)).hashCode()
            != Rational.of(huge.add(BigInteger.ONE), BigInteger.valueOf(3)).hashCode());
    assertTrue(Rational.of(3, 2).hashCode() != Rational.of(2, 3).hashCode());
    assertFalse(root(2).equals(root(3)));
    assertFalse(root(2).equals("\u221a2"));
    assertTrue(root(4).isRational());
    assertFalse(root(2).isRational());
  }

  @Test
  void shownAndAsDoubles() {
    assertEquals("\u22481.41421356237", root(2).toString());
    assertEquals("1/2", Real.of(Rational.of(1, 2)).toString());
    assertEquals(Math.sqrt(2), root(2).doubleValue(), 1e-15);
    assertEquals(0.5, Rational.of(1, 2).doubleValue());
    assertEquals("0.3333333333333333", Double.toString(Rational.of(1, 3).doubleValue()));
  }

  /** The oracle is {@link BigDecimal#sqrt}, of the Java library. */
  @Test
  void doublesOfRootsAreTheNearestOrBesideIt() {
    Random random = new Random(20);
    for (int i = 0; i < 5_000; i++) {
      BigInteger n = new BigInteger(1 + random.nextInt(i % 50 == 0 ? 2400 : 70), random);
      BigInteger d = new BigInteger(1 + random.nextInt(70), random).add(BigInteger.ONE);
      MathContext digits = new MathContext(40);
      double nearest =
          new BigDecimal(n).divide(new BigDecimal(d), digits).sqrt(digits).doubleValue();
      Real root = Real.of(Rational.of(n, d)).sqrt();
      assertEquals(nearest, root.doubleValue(), Math.ulp(nearest), n + "/" + d);
      assertEquals(-nearest, root.negate().doubleValue(), Math.ulp(nearest), n + "/" + d);
    }
  }

  @Test
  void stepsBelowAndAbove() {
    Rational step = Rational.of(1, 4);
    assertEquals(Rational.of(3, 4), Rational.of(4, 5).floorTo(step));
    assertEquals(Rational.of(1), Rational.of(4, 5).ceilingTo(step));
    assertEquals(Rational.of(1, 2), Rational.of(1, 2).ceilingTo(step));
    assertEquals(Rational.of(-1), Rational.of(-4, 5).floorTo(step));
    assertEquals(Rational.of(8), Rational.of(1, 2).pow(-3));
    assertEquals(Rational.ONE, Rational.of(1, 2).pow(0));
  }

  /** At the edge of what is taken: sixty digits and exponents, and not one more. */
  @Test
  void numeralsAtTheEdge() {
    assertEquals(Rational.of(BigInteger.TEN.pow(59), BigInteger.ONE), Rational.parse("1e59"));
    assertEquals("9".repeat(60), Rational.parse("9".repeat(60)).toString());
    assertThrows(NumberFormatException.class, () -> Rational.parse("9".repeat(61)));
    assertThrows(NumberFormatException.class, () -> Rational.parse("1e60"));
    assertEquals(Rational.ZERO, Rational.parse("0e30"));
  }

  /** A calculation that its digits cannot tell from the boundary is taken to lie on it. */
  @Test
  void aBoundaryThatNoDigitDecides() {
    Real one = root(2).plus(root(3)).minus(root(2)).minus(root(3)).plus(Real.of(Rational.ONE));
    Real two = one.plus(root(5)).minus(root(5));
    assertEquals(Rational.ONE, two.floorTo(Rational.ONE));
    assertEquals(Rational.ONE, two.ceilingTo(Rational.ONE));
    assertEquals(0, BigDecimal.ONE.compareTo(two.toDecimal(30, RoundingMode.HALF_EVEN)));
    Real tiny =
        root(2).plus(root(3)).minus(root(2)).minus(root(3)).plus(Real.of(Rational.of(1, 7)));
    assertEquals(
        new BigDecimal("7.0000000000000000000"),
        Real.of(Rational.ONE).over(tiny).toDecimal(20, RoundingMode.HALF_EVEN).setScale(19));
  }

  @Test
  void negativesMultiplyAndDivide() {
    Real sum = root(2).plus(root(3));
    Real minus = sum.negate();
    assertEquals(-1, sum.times(minus).signum());
    assertEquals(1, minus.times(minus).signum());
    assertEquals(-1, Real.of(Rational.ONE).over(minus).signum());
    assertEquals(
        new BigDecimal("-9.898979485566356"),
        sum.times(minus).toDecimal(16, RoundingMode.HALF_EVEN));
    assertEquals(
        new BigDecimal("-0.3178372451957822"),
        Real.of(Rational.ONE).over(minus).toDecimal(16, RoundingMode.HALF_EVEN));
    assertEquals(1, minus.abs().compareTo(Real.of(Rational.of(3))));
  }

  @Test
  void dimensionsInWords() {
    assertEquals("a power (W)", Dimension.POWER.describe());
    assertEquals("a power (W)", Dimension.CURRENT.times(Dimension.VOLTAGE).toString());
    assertEquals("a quantity in s\u00b7A^2", describe(Dimension.TIME, Dimension.CURRENT.pow(2)));
    assertEquals(
        "a quantity in m^-1", describe(Dimension.NONE.over(Dimension.LENGTH), Dimension.NONE));
    assertNull(Dimension.CURRENT.root());
    assertEquals(Dimension.CURRENT, Dimension.CURRENT.pow(2).root());
    assertEquals(Dimension.CURRENT, Dimension.CURRENT.pow(-2).root().pow(-1));
    assertTrue(Dimension.CURRENT.over(Dimension.CURRENT).isNone());
  }

  private static String describe(Dimension a, Dimension b) {
    return a.times(b).describe();
  }

  /** Decimals of every length, read and written again, as Java's BigDecimal has them. */
  @Test
  void decimalsAreThoseOfBigDecimal() {
    Random random = new Random(17);
    for (int i = 0; i < 20_000; i++) {
      StringBuilder text = new StringBuilder();
      int digits = 1 + random.nextInt(24);
      int point = random.nextInt(digits + 3);
      for (int d = 0; d < digits; d++) {
        text.append(d == point && d > 0 ? "." : "").append((char) ('0' + random.nextInt(10)));
      }
      BigDecimal decimal = new BigDecimal(text.toString());
      assertEquals(Rational.of(decimal), Rational.parse(text.toString()), text.toString());
      String plain = decimal.signum() == 0 ? "0" : decimal.stripTrailingZeros().toPlainString();
      assertEquals(plain, Rational.parse(text.toString()).toPlain());
      assertEquals(
          decimal.signum() == 0 ? "0" : "-" + plain, Rational.of(decimal).negate().toPlain());
    }
  }

  /** What is a numeral to Java is one here, and nothing else. */
  @ParameterizedTest
  @ValueSource(strings = {"", ".", "1..2", "1.2.3", "+", "1-", "0x1", "1e", " 1", "1_0"})
  void whatIsNoNumeralIsNone(String text) {
    assertThrows(NumberFormatException.class, () -> new BigDecimal(text));
    assertThrows(NumberFormatException.class, () -> Rational.parse(text));
  }

  @ParameterizedTest
  @ValueSource(strings = {".5", "5.", "+1", "-0.50", "1e2", "007", "\u0661\u0662"})
  void oddNumeralsAreNumerals(String text) {
    assertEquals(Rational.of(new BigDecimal(text)), Rational.parse(text));
  }

  /** In lowest terms with the denominator positive, short or long. */
  @Test
  void oneOverARatioIsARatio() {
    assertEquals("3/2", Rational.of(2, 3).reciprocal().toString());
    assertEquals("-3/2", Rational.of(-2, 3).reciprocal().toString());
    assertEquals("1/7", Rational.of(7).reciprocal().toString());
    BigInteger large = BigInteger.TEN.pow(30);
    assertEquals("-" + large, Rational.of(BigInteger.ONE, large).negate().reciprocal().toString());
    assertEquals(
        Rational.of(BigInteger.ONE, large), Rational.of(large, BigInteger.ONE).reciprocal());
    assertThrows(ArithmeticException.class, Rational.ZERO::reciprocal);
  }
}
