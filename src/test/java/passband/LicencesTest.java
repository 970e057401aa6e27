package passband;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import passband.testing.Repository;

/** What the jar carries comes with its licences' texts. */
class LicencesTest {
  private static final Path LICENCES = Repository.ROOT.resolve("src/dist/licences");

  /**
   * A compiled-in library of the class path is named in the table, and each text of it is there.
   */
  @Test
  void everyLibraryOfTheJarIsNamed() throws Exception {
    String table = Files.readString(LICENCES.resolve("README.md"));
    Set<String> missing = new TreeSet<>();
    Matcher declared =
        Pattern.compile(
                "<dependency>\\s*<groupId>[^<]+</groupId>\\s*<artifactId>([^<]+)</artifactId>\\s*"
                    + "<version>[^<]+</version>(\\s*<scope>)?")
            .matcher(Files.readString(Repository.ROOT.resolve("pom.xml")));
    int compiled = 0;
    while (declared.find()) {
      if (declared.group(2) == null && !declared.group(1).matches(".*(plugin|bom).*")) {
        compiled++;
        if (!table.contains(declared.group(1))) {
          missing.add(declared.group(1));
        }
      }
    }
    assertTrue(compiled >= 9, compiled + "");
    assertEquals(Set.of(), missing);
    Matcher link = Pattern.compile("\\]\\(([^)]+)\\)").matcher(table);
    Set<String> linked = new TreeSet<>();
    while (link.find()) {
      linked.add(link.group(1));
      assertTrue(Files.size(LICENCES.resolve(link.group(1))) > 900, link.group(1));
    }
    assertTrue(linked.size() >= 5, linked.toString());
  }
}
