package passband.compile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import passband.limit.Limit;
import passband.plan.Point;
import passband.testing.Repository;
import passband.testing.Snippet;

/** The demo library's full visit with other instruments in its roles. */
class SecondSetTest {
  private static final Path FOLDER = Repository.ROOT.resolve("procedures");

  private static Map<String, String> files() {
    Map<String, String> files = new TreeMap<>();
    for (Path file : Repository.files(FOLDER, ".pband")) {
      files.put(FOLDER.relativize(file).toString(), Repository.text(file));
    }
    return files;
  }

  private static Snippet with(String analyzers) {
    return Snippet.compile(files(), "sedge-170/sedge-170-full.pband", analyzers);
  }

  private static List<String> ids(Snippet snippet) {
    return snippet.plan().points().stream().map(Point::id).toList();
  }

  /** The points are the same, the limits those of the other instruments' uncertainty. */
  @ParameterizedTest
  @ValueSource(strings = {"rf=heather-8", "safety=rowan-6", "rf=heather-8,safety=rowan-6"})
  void itBuildsWithoutAWord(String analyzers) {
    Snippet own = with(null);
    Snippet other = with(analyzers);
    assertEquals("", own.report());
    assertEquals("", other.report());
    assertEquals(ids(own), ids(other));
    assertNotEquals(
        own.plan().limits().stream().map(Limit::accept).toList(),
        other.plan().limits().stream().map(Limit::accept).toList());
    assertNotEquals(own.plan().digest(), other.plan().digest());
  }

  /** Jacks of other names are said as such; that no circuit is closed without them goes unsaid. */
  @Test
  void jacksOfOtherNamesAreOneFault() {
    Map<String, String> files = files();
    files.computeIfPresent(
        "analyzers/heather-8.pband", (name, text) -> text.replaceAll("(load|leak)-", "$1ing-"));
    assertEquals(
        List.of("unknown-name"),
        Snippet.compile(files, "sedge-170/sedge-170-full.pband", "rf=heather-8")
            .diagnostics()
            .stream()
            .map(d -> d.code().id())
            .distinct()
            .toList());
  }

  /** What cannot take a role says where and why. */
  @Test
  void whatCannotTakeARoleSaysWhy() {
    List<String> codes =
        with("rf=rowan-6").diagnostics().stream().map(d -> d.code().id()).distinct().toList();
    assertTrue(codes.containsAll(List.of("not-measured", "unknown-name")), codes.toString());
  }
}
