package passband.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Doubles around exact values: the true value, by Java's decimals with 60 digits, is never outside.
 */
class NearbyTest {
  private static final MathContext SIXTY = new MathContext(60);

  private static BigDecimal decimal(Rational value) {
    return new BigDecimal(value.numerator()).divide(new BigDecimal(value.denominator()), SIXTY);
  }

  private static Rational random(Random random) {
    int bits = random.nextBoolean() ? 20 : 120;
    BigInteger n = new BigInteger(1 + random.nextInt(bits), random);
    BigInteger d = new BigInteger(1 + random.nextInt(bits), random).add(BigInteger.ONE);
    return Rational.of(random.nextBoolean() ? n : n.negate(), d);
  }

  private static void holds(Nearby near, BigDecimal value) {
    BigDecimal slack = value.abs().movePointLeft(55);
    assertTrue(
        new BigDecimal(near.low()).subtract(slack).compareTo(value) <= 0, near + " " + value);
    assertTrue(new BigDecimal(near.high()).add(slack).compareTo(value) >= 0, near + " " + value);
  }

  @Test
  void everyOperationEnclosesTheTrueValue() {
    Random random = new Random(7);
    for (int i = 0; i < 20_000; i++) {
      Rational a = random(random);
      Rational b = random(random);
      Nearby x = a.nearby();
      Nearby y = b.nearby();
      BigDecimal p = decimal(a);
      BigDecimal q = decimal(b);
      holds(x, p);
      holds(x.negate(), p.negate());
      holds(x.plus(y), p.add(q));
      holds(x.times(y), p.multiply(q));
      if (b.signum() != 0) {
        holds(x.over(y), p.divide(q, SIXTY));
      }
      if (a.signum() >= 0) {
        holds(x.root(), p.sqrt(SIXTY));
      }
    }
  }

  @Test
  void whatDoublesCannotTellIsLeftOpen() {
    Nearby third = Rational.of(1, 3).nearby();
    assertEquals(0, third.compareTo(third));
    assertEquals(0, third.plus(third.negate()).signum());
    assertNull(third.over(third.plus(third.negate())));
    assertNull(Rational.of(3).nearby().root().times(Rational.of(3).nearby().root()).floor());
    assertNull(third.rounded(new MathContext(20)));
    assertNull(third.rounded(new MathContext(15)));
    assertEquals(new BigDecimal("0.33333333333333"), third.rounded(new MathContext(14)));
    assertEquals(BigInteger.ZERO, third.floor());
    assertEquals(BigInteger.valueOf(-1), third.negate().floor());
    assertEquals(-1, third.negate().compareTo(third));
    assertEquals(1, third.compareTo(third.negate()));
    Nearby wide = Rational.of(1L << 52).nearby().plus(third);
    assertNull(wide.floor());
    Nearby huge = Rational.of(BigInteger.TEN.pow(300), BigInteger.ONE).nearby();
    assertNull(huge.times(huge));
    assertNull(Rational.of(BigInteger.TEN.pow(400), BigInteger.ONE).nearby());
  }

  /** Squares of whole numbers up to the largest that a long holds, and their neighbours. */
  @Test
  void exactRoots() {
    for (long root : new long[] {0, 1, 2, 94906267L, 3037000498L, 3037000499L}) {
      Rational square = Rational.of(root * root);
      assertEquals(Rational.of(root), square.exactRoot());
      assertNull(Rational.of(root * root + 2).exactRoot());
      if (root > 1) {
        assertNull(Rational.of(root * root - 1).exactRoot());
        assertEquals(Rational.of(1, root), Rational.of(1, root * root).exactRoot());
      }
    }
    assertNull(Rational.of(Long.MAX_VALUE).exactRoot());
    Rational big = Rational.of(BigInteger.TEN.pow(30), BigInteger.valueOf(7).pow(30));
    assertEquals(big, big.times(big).exactRoot());
    assertNull(big.times(big).times(Rational.TWO).exactRoot());
    assertNull(big.times(big).over(Rational.TWO).exactRoot());
  }

  /** √3·√3 and 3, √2 + √8 and √18: equal, so no number of digits tells them apart. */
  @Test
  void equalCalculationsStayEqual() {
    Real three = Real.of(Rational.of(3));
    Real two = Real.of(Rational.TWO);
    Real sum = three.sqrt().plus(two.sqrt());
    assertEquals(0, sum.minus(two.sqrt()).compareTo(three.sqrt()));
    assertEquals(Rational.of(3), sum.minus(two.sqrt()).times(three.sqrt()).floorTo(Rational.ONE));
    assertTrue(sum.compareTo(Real.of(Rational.of(314626436994L, 100000000000L))) > 0);
    assertTrue(sum.compareTo(Real.of(Rational.of(314626436995L, 100000000000L))) < 0);
  }
}
