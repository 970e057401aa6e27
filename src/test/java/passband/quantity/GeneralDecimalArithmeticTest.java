package passband.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Roots, rounding and comparison against the General Decimal Arithmetic test cases, version 2.59
 * (M. Cowlishaw, IBM, 2003–2008). Cases on infinities, NaN, signed zeros' signs, subnormal results,
 * exponents beyond what {@link Rational#parse} takes, and results that the arithmetic of floating
 * numbers makes invalid are no part of exact numbers and are left out by those rules; how many are
 * run is asserted.
 */
class GeneralDecimalArithmeticTest {
  private static final Map<String, RoundingMode> MODES =
      Map.of(
          "down", RoundingMode.DOWN,
          "half_down", RoundingMode.HALF_DOWN,
          "half_even", RoundingMode.HALF_EVEN,
          "half_up", RoundingMode.HALF_UP,
          "up", RoundingMode.UP,
          "ceiling", RoundingMode.CEILING,
          "floor", RoundingMode.FLOOR);

  private record Case(
      String id,
      String operation,
      List<Rational> operands,
      BigDecimal result,
      int precision,
      RoundingMode rounding) {}

  private static List<Case> cases(String file) throws IOException {
    List<Case> cases = new ArrayList<>();
    int precision = 9;
    RoundingMode rounding = RoundingMode.HALF_UP;
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                GeneralDecimalArithmeticTest.class.getResourceAsStream(file),
                StandardCharsets.UTF_8))) {
      for (String line = in.readLine(); line != null; line = in.readLine()) {
        String[] words = line.replaceAll("--.*", "").trim().replace("'", "").split("\\s+");
        if (words[0].equalsIgnoreCase("precision:")) {
          precision = Integer.parseInt(words[1]);
        } else if (words[0].equalsIgnoreCase("rounding:")) {
          rounding = MODES.get(words[1].toLowerCase(java.util.Locale.ROOT));
        } else if (words.length > 3 && rounding != null) {
          add(words, precision, rounding, cases);
        }
      }
    }
    return cases;
  }

  private static void add(String[] words, int precision, RoundingMode rounding, List<Case> cases) {
    int arrow = List.of(words).indexOf("->");
    String conditions =
        arrow < 0 ? "" : String.join(" ", List.of(words).subList(arrow + 2, words.length));
    if (arrow < 0
        || conditions.matches(".*(Invalid|Subnormal|Underflow|Overflow|Clamped|Division).*")) {
      return;
    }
    try {
      List<Rational> operands = new ArrayList<>();
      for (String operand : List.of(words).subList(2, arrow)) {
        operands.add(Rational.parse(operand));
      }
      BigDecimal result = new BigDecimal(words[arrow + 1]);
      cases.add(new Case(words[0], words[1], operands, result, precision, rounding));
    } catch (NumberFormatException e) {
      // An infinity, a NaN, a hash, or a number beyond the limits of the language.
    }
  }

  @Test
  void rootsRoundAsPublished() throws IOException {
    int run = 0;
    for (Case c : cases("squareroot.decTest")) {
      if (c.operation.equals("squareroot") && c.operands.get(0).signum() > 0) {
        BigDecimal root =
            Real.of(c.operands.get(0)).sqrt().toDecimal(c.precision, RoundingMode.HALF_EVEN);
        assertEquals(0, c.result.compareTo(root), c.id + ": " + root);
        run++;
      }
    }
    assertTrue(run > 2500, "only " + run + " cases");
  }

  @Test
  void comparisonsAsPublished() throws IOException {
    int run = 0;
    for (Case c : cases("compare.decTest")) {
      if (c.operation.equals("compare")) {
        assertEquals(
            c.result.intValueExact(), c.operands.get(0).compareTo(c.operands.get(1)), c.id);
        assertEquals(
            c.result.intValueExact(),
            Real.of(c.operands.get(0)).compareTo(Real.of(c.operands.get(1))),
            c.id);
        run++;
      }
    }
    assertTrue(run > 300, "only " + run + " cases");
  }

  @Test
  void sumsAndProductsRoundAsPublished() throws IOException {
    int run = 0;
    for (Case c : cases("rounding.decTest")) {
      Rational a = c.operands.get(0);
      Rational b = c.operands.size() > 1 ? c.operands.get(1) : null;
      Rational exact =
          switch (c.operation) {
            case "add" -> a.plus(b);
            case "subtract" -> a.minus(b);
            case "multiply" -> a.times(b);
            case "divide" -> a.over(b);
            default -> null;
          };
      if (exact != null) {
        assertEquals(0, c.result.compareTo(exact.toDecimal(c.precision, c.rounding)), c.id);
        run++;
      }
    }
    assertTrue(run > 500, "only " + run + " cases");
  }

  /**
   * To a multiple of a power of ten: towards either side by {@code floorTo} and {@code ceilingTo},
   * to the nearest even by {@code toFixed}.
   */
  @Test
  void quantizesAsPublished() throws IOException {
    int run = 0;
    for (Case c : cases("quantize.decTest")) {
      if (!c.operation.equals("quantize") || c.operands.get(1).signum() <= 0) {
        continue;
      }
      Rational step = Rational.TEN.pow(-c.result.scale());
      Rational value = c.operands.get(0);
      Rational quantized =
          switch (c.rounding) {
            case FLOOR -> value.floorTo(step);
            case CEILING -> value.ceilingTo(step);
            case DOWN -> value.signum() < 0 ? value.ceilingTo(step) : value.floorTo(step);
            case UP -> value.signum() < 0 ? value.floorTo(step) : value.ceilingTo(step);
            case HALF_UP -> halfUp(value, step);
            default -> null;
          };
      if (quantized != null) {
        assertEquals(Rational.of(c.result), quantized, c.id);
        run++;
      }
    }
    assertTrue(run > 250, "only " + run + " cases");
  }

  private static Rational halfUp(Rational value, Rational step) {
    Rational half = step.over(Rational.TWO);
    return value.signum() < 0 ? value.minus(half).ceilingTo(step) : value.plus(half).floorTo(step);
  }
}
