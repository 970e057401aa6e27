package passband.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import passband.diagnostic.Code;
import passband.diagnostic.Diagnostic;
import passband.evidence.Evidence;
import passband.evidence.Item;
import passband.plan.Plan;
import passband.testing.Repository;
import passband.testing.Snippet;

/**
 * An adjustment of each single test of a whole visit: every other test that reads one of its modes
 * is named, and no other. What reads a mode is told by the identities of the readings.
 */
class AdjustedReadTest {
  private static final Pattern MODE = Pattern.compile("^[^/]+/[^/]+/([^/]+)/|\\.mode=([^/]+)/");

  @ParameterizedTest
  @CsvSource({
    "sedge-170/sedge-170-full.pband, alarm-holds-back",
    "fescue-3/fescue-3-service.pband, none"
  })
  void whatReadsAnAdjustedModeIsNamed(String file, String inhibited) {
    Map<String, String> files = Repository.texts(Repository.PROCEDURES);
    String text = files.get(file).replaceAll("(?m)^ +allow adjusted-untested .*\\R", "");
    files.put(file, text);
    Plan plan = Snippet.compile(files, file, null).plans().get(0);
    Map<String, Set<String>> modes = modes(plan);
    modes.remove(inhibited);
    assertTrue(modes.size() > 4, modes.toString());
    int named = 0;
    for (String adjusted : modes.keySet()) {
      Set<String> expected = new TreeSet<>();
      modes.forEach(
          (test, read) -> {
            if (!test.equals(adjusted) && read.stream().anyMatch(modes.get(adjusted)::contains)) {
              expected.add(test);
            }
          });
      String alone = text.replaceAll(" affects [^{]*\\{", " affects " + adjusted + " {");
      files.put(file, alone);
      assertEquals(expected, left(Snippet.compile(files, file, null).diagnostics()), adjusted);
      named += expected.size();
    }
    assertTrue(named > 8, named + " named");
  }

  /** Of each test the modes of which an instrument reads something. */
  private static Map<String, Set<String>> modes(Plan plan) {
    Map<String, Set<String>> modes = new LinkedHashMap<>();
    for (Item item : Evidence.of(plan).list().items()) {
      if (item.id().contains("/as-found/") && !item.id().endsWith("/trip")) {
        Matcher mode = MODE.matcher(item.id());
        while (mode.find()) {
          String name = mode.group(1) == null ? mode.group(2) : mode.group(1);
          if (item.id().chars().filter(c -> c == '/').count() > 5 && !name.equals("-")) {
            String test = item.id().substring(0, item.id().indexOf('/'));
            modes.computeIfAbsent(test, t -> new LinkedHashSet<>()).add(name);
          }
        }
      }
    }
    return modes;
  }

  private static Set<String> left(List<Diagnostic> diagnostics) {
    Set<String> left = new TreeSet<>();
    for (Diagnostic one : diagnostics) {
      if (one.code() == Code.ADJUSTED_UNTESTED) {
        left.addAll(List.of(one.message().replaceFirst(" reads? the output .*", "").split(", ")));
      }
    }
    return left;
  }
}
