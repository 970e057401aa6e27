package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.diagnostic.Diagnostic;
import passband.plan.Plan;
import passband.testing.Repository;
import passband.testing.Sheets;
import passband.testing.Snippet;

/** How an error is distributed, as the source says it. */
class DistributionTest {
  private static final String ERROR = "error      1 % of reading + 1 mA";

  private static Snippet with(String suffix) {
    Map<String, String> files = new HashMap<>(Repository.texts(Repository.LIBRARY));
    files.replaceAll((name, text) -> text.replace(ERROR, ERROR + suffix));
    return Snippet.compile(files, "yarrow/yarrow-service.pband", null);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "as rectanguler | unknown-name | there is no distribution 'rectanguler'",
        "as bell | unknown-name | there is no distribution 'bell'",
        "as normal | missing-item | a normal distribution needs the coverage factor",
        "as triangular coverage 2 | impossible-expression | only a normal distribution",
        "degrees-of-freedom 0.5 | impossible-expression | there is at least one degree of freedom",
        "as bell degrees-of-freedom 4 | unknown-name | there is no distribution 'bell'",
        "as normal coverage 0 | impossible-expression | a coverage factor is above zero"
      })
  void whatCannotBeMeantIsAnErrorAtItsPlace(String suffix, String code, String message) {
    Snippet snippet = with(" " + suffix);
    List<Diagnostic> found =
        snippet.diagnostics().stream().filter(d -> d.code().id().equals(code)).toList();
    assertEquals(1, found.size(), snippet.report());
    assertTrue(found.get(0).message().startsWith(message), found.get(0).message());
    assertTrue(snippet.report().contains(suffix), snippet.report());
  }

  @Test
  void rectangularIsWhatIsTakenAnyway() {
    assertEquals(Sheets.YARROW.digest(), with(" as rectangular").plan().digest());
  }

  /** The wider a distribution lies about its half-width, the tighter the guarded limits. */
  @Test
  void theGuardBandFollowsTheDistribution() {
    double triangular = width(with(" as triangular").plan());
    double rectangular = width(with("").plan());
    double arcsine = width(with(" as u-shaped").plan());
    double certified = width(with(" as normal coverage 2").plan());
    String all = triangular + " " + rectangular + " " + arcsine + " " + certified;
    assertTrue(triangular > rectangular && rectangular > arcsine, all);
    assertTrue(certified < triangular + 1e-9 && certified > rectangular, all);
  }

  /**
   * The less is known of an error, the wider the guard band; many degrees come near to none said.
   */
  @Test
  void theGuardBandFollowsTheDegreesOfFreedom() {
    double known = width(with("").plan());
    double most = width(with(" degrees-of-freedom 1000").plan());
    double ten = width(with(" degrees-of-freedom 10").plan());
    double two = width(with(" as rectangular degrees-of-freedom 2").plan());
    String all = two + " " + ten + " " + most + " " + known;
    assertTrue(two < ten && ten < most && most <= known, all);
    assertTrue(known - most < (known - two) / 50, all);
  }

  /** The sum of the widths of all limits of current. */
  private static double width(Plan plan) {
    return plan.limits().stream()
        .filter(l -> l.quantity().equals("current"))
        .mapToDouble(l -> number(l.end(l.accept().upper())) - number(l.end(l.accept().lower())))
        .sum();
  }

  private static double number(String text) {
    return Double.parseDouble(text.split(" ")[0]);
  }
}
