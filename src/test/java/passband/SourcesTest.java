package passband;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import passband.testing.Repository;

/** What makes the sources readable in one go. */
class SourcesTest {
  private static final int MOST_LINES = 450;

  private static final List<Path> SOURCES =
      Repository.files(Repository.ROOT.resolve("src/main/java"), ".java");

  @Test
  void noFileIsLong() throws IOException {
    TreeMap<String, Integer> tooLong = new TreeMap<>();
    for (Path source : SOURCES) {
      int lines = Files.readAllLines(source).size();
      if (lines > MOST_LINES) {
        tooLong.put(source.getFileName().toString(), lines);
      }
    }
    assertEquals(new TreeMap<>(), tooLong);
  }

  /** In a package without the mark nothing says where null may be, and NullAway checks nothing. */
  @Test
  void everyPackageSaysWhereNullMayBe() throws IOException {
    Set<String> unmarked = new TreeSet<>();
    for (Path source : SOURCES) {
      Path info = source.resolveSibling("package-info.java");
      if (!Files.exists(info) || !Files.readString(info).contains("\n@NullMarked\npackage ")) {
        unmarked.add(Repository.ROOT.relativize(source.getParent()).toString());
      }
    }
    assertEquals(Set.of(), unmarked);
  }
}
