package passband.render;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import passband.testing.Repository;
import passband.testing.Snippet;

/** A line has one column for its load: what another instrument is set to stands in the step. */
class LoadsOfLinesTest {
  private static final String SHEET = "sedge-170/sedge-170-full.pband";

  @Test
  void aSecondLoadIsNamedInTheStep() {
    Map<String, String> files = new HashMap<>(Repository.texts(Repository.PROCEDURES));
    files.computeIfPresent(
        SHEET,
        (name, text) ->
            text.replaceFirst(
                "slice \\| 50 +\\| 350 +\\| 200",
                "slice | 50, 100 | 350 | 200\nslice | 100, 150 | 300 | 250"));
    String html = Checklist.of(Snippet.compile(files, SHEET, null).plan());
    List<String> loads =
        Pattern.compile("Set the three dials to ([^.<]+)\\.")
            .matcher(html)
            .results()
            .map((MatchResult found) -> found.group(1))
            .toList();
    assertEquals(new TreeSet<>(List.of("200 Ω", "250 Ω")), new TreeSet<>(loads));
  }
}
