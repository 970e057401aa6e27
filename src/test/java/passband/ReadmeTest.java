package passband;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import passband.testing.Repository;
import passband.testing.Snippet;
import passband.testing.TypedShell;

/**
 * The first procedure of the README compiles, and its mistake is answered in the words printed
 * there.
 */
class ReadmeTest {
  private static String readme() {
    return Repository.text(Repository.ROOT.resolve("README.md"));
  }

  private static List<String> blocks() {
    List<String> blocks = new ArrayList<>();
    Matcher piece = TypedShell.PIECE.matcher(readme());
    while (piece.find()) {
      if ("".equals(piece.group("info"))) {
        blocks.add(piece.group("body"));
      }
    }
    return blocks;
  }

  @Test
  void theFirstProcedureCompiles() {
    List<String> blocks = blocks();
    assertEquals(4, blocks.size());
    Snippet snippet =
        Snippet.compile(
            Map.of("heath.pband", String.join("\n", blocks.subList(0, 3))), "heath.pband", null);
    assertEquals("", snippet.report());
    assertEquals(3, snippet.plan().limits().size());
  }

  @Test
  void theMistakeIsAnsweredAsPrinted() {
    List<String> blocks = blocks();
    Matcher told = Pattern.compile("Change the first row's `(\\d+)` to `(\\d+)`").matcher(readme());
    assertTrue(told.find());
    String first = String.join("\n", blocks.subList(0, 3));
    String source = first.replace(" " + told.group(1) + " to ", " " + told.group(2) + " to ");
    assertFalse(source.equals(first));
    Snippet snippet = Snippet.compile(Map.of("heath.pband", source), "heath.pband", null);
    assertEquals(blocks.get(3), snippet.report());
  }

  @Test
  void theJobAndTheCautionsComeFirst() {
    String readme = readme();
    assertTrue(readme.startsWith("# Passband\n\nA senior biomedical engineer"));
    assertTrue(readme.contains("service manual, local codes and licensed practice come first"));
  }
}
