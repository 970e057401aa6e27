package passband.limit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.diagnostic.Code;
import passband.testing.Examples;
import passband.testing.Snippet;

/** Expressions of limits at 20 W into 100 ohm: their values, and what is said of faulty ones. */
class ExpressionTest {

  private static Snippet compiled(String expression) {
    return Examples.compile(
        "test",
        """
          test one "One" {
            outlet bip
            setup  bipolar
            accept current within 8 % of %s
            table {
              mode | setting/W | load/ohm
              thin | 20        | 100
            }
          }
        """
            .replace("%s", expression));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "sqrt(setting / load)             | 0.44721359549995793928",
        "(setting / load) ^ 0.5           | 0.44721359549995793928",
        "sqrt(setting / 1 W) * 1 A / sqrt(400) | 0.22360679774997896964",
        "setting / load / 1 A             | 0.2",
        "max(0.1 A, 200 mA, 0.15 A)       | 0.2",
        "max(0.2 A, 100 mA)               | 0.2",
        "min(0.3 A, 200 mA, 0.25 A)       | 0.2",
        "min(0.1 A, 200 mA)               | 0.1",
        "abs(0.1 A - 0.4 A)               | 0.3",
        "abs(0.3 A)                       | 0.3",
        "-(0.2 A - 0.5 A)                 | 0.3",
        "0.5 A - 100 mA                   | 0.4",
        "0.5 A + 100 mA                   | 0.6",
        "1 A * 2 ^ -2                     | 0.25",
        "2 ^ 8 * 1 mA                     | 0.256",
        "2 ^ -8 * 64 A                    | 0.25",
        "(1 A) ^ 2 / 4 A                  | 0.25",
        "sqrt(0 W / load) + 0.2 A         | 0.2",
        "0 ^ 2 * 1 A + 0.2 A              | 0.2"
      })
  void hasTheValue(String expression, String amperes) {
    Snippet snippet = compiled(expression);
    assertEquals(
        List.of(),
        snippet.diagnostics().stream()
            .filter(d -> !d.code().allowable() && d.code() != Code.RULE_LOOSER_THAN_MODE)
            .toList(),
        snippet.report());
    BigDecimal expected = new BigDecimal(amperes);
    assertEquals(
        0,
        expected.compareTo(
            snippet
                .plans()
                .get(0)
                .limits()
                .get(0)
                .exact()
                .nominal()
                .toDecimal(20, RoundingMode.HALF_EVEN)
                .round(new MathContext(20))),
        amperes);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "sqrt(0 A * 1 A - 1 A * 1 A) | impossible-expression | square root of a negative",
        "1 A / (1 - 1)               | impossible-expression | division by zero",
        "(1 - 1) ^ -1 * 1 A          | impossible-expression | division by zero",
        "2 ^ 9 * 1 mA                | impossible-expression | from -8 to 8",
        "2 ^ -9 * 1 A                | impossible-expression | from -8 to 8",
        "(1 A) ^ 1.5                 | impossible-expression | from -8 to 8",
        "(1 A) ^ (1 s)               | impossible-expression | from -8 to 8",
        "setting + load              | unit-mismatch         | cannot be combined",
        "setting - load              | unit-mismatch         | cannot be combined",
        "max(1 A, 1 W)               | unit-mismatch         | cannot be combined",
        "sqrt(setting * 1 s)         | unit-mismatch         | is not a quantity",
        "sqrt(1 A, 2 A)              | syntax                | takes one argument",
        "abs(1 A, 2 A)               | syntax                | takes one argument",
        "max(1 A)                    | syntax                | takes two or more",
        "sqt(setting / load)         | unknown-name          | did you mean 'sqrt'?",
        "integral(1 A)               | unknown-name          | functions are sqrt, min, max and abs",
        "1 A * settting / setting    | unknown-name          | did you mean 'setting'?",
        "1 A * quux                  | unknown-name          | no column or quantity 'quux'"
      })
  void theFaultIsSaid(String expression, String code, String said) {
    Snippet snippet = compiled(expression);
    List<String> errors =
        snippet.diagnostics().stream()
            .filter(d -> !d.code().allowable())
            .map(d -> d.code().id())
            .toList();
    assertEquals(List.of(Code.find(code).id()), errors, snippet.report());
    assertTrue(snippet.report().contains(said), snippet.report());
  }
}
