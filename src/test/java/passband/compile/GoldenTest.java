package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import passband.diagnostic.TextReport;
import passband.testing.Examples;
import passband.testing.Repository;
import passband.testing.Snippet;

/**
 * What procedures compile to, as files anyone can read: {@code golden/NAME/procedure.pband} beside
 * {@code expected.txt}. Run with {@code -Dgolden.write=true} to write the expectations anew, and
 * read what changed before committing it.
 */
class GoldenTest {
  private static final Path GOLDEN = Repository.ROOT.resolve("src/test/resources/golden");

  static List<String> cases() {
    return Repository.files(GOLDEN, "procedure.pband").stream()
        .map(p -> GOLDEN.relativize(p.getParent()).toString())
        .toList();
  }

  private static Snippet compiled(String name) {
    Map<String, String> files = new TreeMap<>();
    Repository.files(GOLDEN, ".pband")
        .forEach(p -> files.put(GOLDEN.relativize(p).toString(), Repository.text(p)));
    Repository.files(GOLDEN, ".csv")
        .forEach(p -> files.put(GOLDEN.relativize(p).toString(), Repository.text(p)));
    return Snippet.compile(files, name + "/procedure.pband", null);
  }

  @ParameterizedTest
  @MethodSource("cases")
  void compilesAsExpected(String name) throws IOException {
    Snippet snippet = compiled(name);
    assertEquals(1, snippet.plans().size(), snippet.report());
    String actual =
        PlanOutline.of(snippet.plans().get(0))
            + (report(snippet).isEmpty() ? "" : "\n" + report(snippet));
    Path expected = GOLDEN.resolve(name).resolve("expected.txt");
    if (Boolean.getBoolean("golden.write")) {
      Files.writeString(expected, actual);
    }
    assertEquals(Repository.text(expected), actual);
  }

  /** What was found, but for what a case need not do: cover the whole bench. */
  private static String report(Snippet snippet) {
    return TextReport.of(Examples.relevant(snippet, null));
  }

  @Test
  void thereAreCases() {
    assertTrue(cases().size() >= 7);
  }
}
