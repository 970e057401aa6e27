package passband.transcribe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.quantity.Rational;
import passband.testing.Snippet;

/**
 * Tables made by known rules are read back, with the misprints that were put into them; the real
 * compiler takes every draft.
 */
class InferenceTest {
  private static Transcript transcript(String csv) throws TableFault {
    return Transcript.of(
        csv.getBytes(StandardCharsets.UTF_8), false, "table", "Table", "2026-01-01");
  }

  // ---- two rows as practitioners state them: common practice, no source ----

  @Test
  void tenWattsInto100OhmIs15PerCentOfThePowerCutOff() throws TableFault {
    Transcript one = transcript("power/W,load/ohm,limits/mA\n10,100,291 - 339\n");
    ModeFinding mode = one.found().modes().get(0);
    assertEquals(
        new Rule(
            new Basis(Basis.Of.SETTING, Basis.Nominal.EXACT, Basis.Rounding.CUT),
            Rule.Form.SHARE,
            Rational.of(15, 100),
            Rational.ZERO),
        mode.rule());
    assertFalse(mode.settled(), "one row is a guess");
    assertTrue(one.source().contains("accept current from stated"), one.source());
  }

  @Test
  void tenWattsInto300OhmIs20PerCentOfACurrentThatWasCutOff() throws TableFault {
    Transcript one = transcript("power/W,load/ohm,limits/mA\n10,300,146 - 218\n");
    ModeFinding mode = one.found().modes().get(0);
    assertEquals(
        new Rule(
            new Basis(Basis.Of.READ, Basis.Nominal.CUT, Basis.Rounding.NEAREST),
            Rule.Form.SHARE,
            Rational.of(20, 100),
            Rational.ZERO),
        mode.rule());
    assertFalse(mode.settled(), "one row is a guess");
  }

  @Test
  void bothInOneModeFollowNoRule() throws TableFault {
    Transcript both =
        transcript("power/W,load/ohm,limits/mA\n10,100,291 - 339\n10,300,146 - 218\n");
    assertNull(both.found().modes().get(0).rule());
  }

  // ---- every rule ----

  /** By each basis, rounding and form a table with one misprint, which is found exactly. */
  @ParameterizedTest
  @CsvSource({"false, 0", "true, 0", "true, 1", "true, 2"})
  void aTableOfEachRuleIsReadBack(boolean ofRead, int nominal) throws TableFault {
    Measured measured = new Measured();
    Random random = new Random(11);
    for (int rounding = 0; rounding < 4; rounding++) {
      for (int form = 0; form < 5; form++) {
        BigDecimal share = new BigDecimal(form == 4 ? "0.1" : "0.15");
        BigDecimal amount = form == 3 ? new BigDecimal("0.2") : BigDecimal.valueOf(ofRead ? 30 : 3);
        ManualTables.Made rule =
            new ManualTables.Made(ofRead, nominal, rounding, form, share, amount);
        measured.add(ManualTables.of(random, rule, 0, 14, 1));
      }
    }
    assertEquals(List.of(), measured.settledWrong);
    assertEquals(20, measured.tablesEquivalent, measured.toString());
    assertEquals(20, measured.tablesWithMisprintsExactly, measured.toString());
    assertEquals(measured.planted, measured.intended, measured.toString());
    assertEquals(0, measured.falseRows, measured.toString());
  }

  /** Of what a table may be; the shares are what was measured with these seeds. */
  @ParameterizedTest
  @CsvSource({
    "1, 24, 0, 4, 30, -1, 24",
    "7, 12, 1, 1, 1, 0, 12",
    "7, 12, 1, 3, 3, 1, 12",
    "7, 12, 1, 5, 5, 2, 12",
    "7, 12, 1, 12, 12, 4, 12",
    "7, 12, 3, 9, 9, 1, 12"
  })
  void generatedTablesAreReadBack(
      long seed, int count, int modes, int least, int most, int misprints, int exactly)
      throws TableFault {
    Measured measured = Measured.of(seed, count, modes, least, most, misprints);
    assertEquals(List.of(), measured.settledWrong, "a rule that is written is right");
    assertTrue(measured.tablesWithMisprintsExactly >= exactly, measured.toString());
    assertEquals(0, measured.falseRows, measured.toString());
  }

  /** A misprint in a mode's only row is found by the rule of the others, which is not written. */
  @Test
  void theOtherModesTellAboutAModeOfOneRow() throws TableFault {
    Transcript one =
        transcript(
            """
            Mode,Power (W),Load (ohm),Limits (mA)
            Cut,12,150,275 - 290
            Cut,150,150,974 - 1025
            Coag,100,100,974 - 1025
            Coag,180,300,754 - 794
            Soft,30,1000,533 - 562
            """);
    ModeFinding soft = one.found().modes().get(2);
    assertEquals(Slip.LOAD, soft.differing().get(0).slip());
    assertEquals(Rational.of(100), soft.differing().get(0).instead().value());
    assertFalse(soft.settled());
    assertTrue(one.source().contains("no row of this mode can be used as it is"), one.source());
  }

  /** Limits that no rule made stay what they are, whole and without a row called a misprint. */
  @Test
  void randomLimitsAreStated() throws TableFault {
    Random random = new Random(3);
    for (int i = 0; i < 12; i++) {
      StringBuilder csv = new StringBuilder("power/W,load/ohm,limits/mA\n");
      for (int row = 1; row <= 8; row++) {
        int lower = 100 * row + random.nextInt(70);
        csv.append(row * 10 + ",100," + lower + " - " + (lower + 20 + random.nextInt(60)) + "\n");
      }
      ModeFinding mode = transcript(csv.toString()).found().modes().get(0);
      assertFalse(mode.settled(), csv.toString());
      assertEquals(List.of(), mode.differing(), csv.toString());
    }
  }

  // ---- digits ----

  /** Whole roots against 50-digit decimals, also where the root is a whole number of steps. */
  @Test
  void whatARulePrintsIsExact() {
    Random random = new Random(5);
    for (int i = 0; i < 5000; i++) {
      long root = 1 + random.nextInt(1000);
      Rational a =
          i % 3 == 0
              ? Rational.of(root * root, 10_000)
              : Rational.of(1 + random.nextInt(1_000_000), 1 + random.nextInt(1000));
      Rational c = Rational.of(random.nextInt(2000) - 1000, 100);
      Rational step = Rational.of(1, random.nextBoolean() ? 1 : 100);
      BigInteger floor = Prediction.floor(a, c, step);
      BigDecimal exact =
          decimal(a)
              .sqrt(ManualTables.DIGITS)
              .add(decimal(c))
              .divide(decimal(step), ManualTables.DIGITS);
      BigDecimal off = exact.subtract(new BigDecimal(floor));
      assertTrue(
          off.compareTo(new BigDecimal("-1e-30")) >= 0 && off.compareTo(BigDecimal.ONE) < 0,
          a + " " + c + " " + step);
    }
  }

  private static BigDecimal decimal(Rational value) {
    return new BigDecimal(value.numerator())
        .divide(new BigDecimal(value.denominator()), ManualTables.DIGITS);
  }

  // ---- what is written ----

  private static final String CUT =
      """
      Mode,Power (W),Load (ohm),Limits (mA)
      Cut,10,100,291 - 339
      Cut,20,100,412 - 497
      Cut,40,100,583 - 678
      Cut,60,100,714 - 830
      Cut,80,1000,824 - 959
      Cut,100,100,921 - 1072
      """;

  /** A limit that is misprinted is the rule's; a row whose load is in doubt is left out. */
  @Test
  void misprintsAreNamedOnTheSheet() throws TableFault {
    Transcript cut = transcript(CUT);
    assertTrue(cut.found().modes().get(0).settled());
    String source = cut.source();
    assertTrue(source.contains("output   power within 15 % of setting\n"), source);
    assertTrue(source.contains("cut  | 20        | 100      |\n"), source);
    assertFalse(source.contains("| 1000"), source);
    String sheet = Snippet.compile(source).plan().toString();
    assertNotNull(sheet);
    for (String said :
        List.of(
            "Line 3 (Cut, 20 W, 100 ohm): the table prints 412 to 497 mA, the rule gives 412 to 479"
                + " mA; two digits are transposed. The sheet has the rule's limits.",
            "the load is probably 100 ohm. It is left out.")) {
      assertTrue(source.contains(said), said + "\n" + source);
      assertTrue(cut.text().contains(said), cut.text());
    }
  }

  @Test
  void aDraftSaysWhatWouldTellTwoRulesApart() throws TableFault {
    String text = transcript("power/W,load/ohm,limits/mA\n10,100,291 - 339\n").text();
    assertTrue(text.contains("they print 159 to 185 or 160 to 186 mA"), text);
  }

  /** A spreadsheet drops zeros at the end of a number: 0.50 is printed with two decimals. */
  @Test
  void zerosThatASpreadsheetDroppedAreMissedByNobody() throws TableFault {
    Transcript volts =
        transcript(
            """
            power/W,load/ohm,lower/A,upper/A
            10,40,0.45,0.55
            20,40,0.64,0.77
            30,40,0.78,0.95
            40,40,0.9,1.1
            60,40,1.1,1.34
            90,40,1.35,1.64
            """);
    ModeFinding mode = volts.found().modes().get(0);
    assertEquals(List.of(), mode.differing());
    assertNotNull(mode.rule());
  }
}
