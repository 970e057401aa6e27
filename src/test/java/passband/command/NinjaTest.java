package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.testing.Repository;

/** A larger build's tool, Debian's ninja, knows by {@code --depfile} what it has to build again. */
class NinjaTest {
  private static final Pattern BUILT = Pattern.compile("sheets of (\\S+)");

  @TempDir Path work;

  @BeforeEach
  void rules() throws IOException {
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    StringBuilder rules =
        new StringBuilder(
            "rule sheets\n  command = "
                + java
                + " -XX:TieredStopAtLevel=1 -cp "
                + System.getProperty("java.class.path")
                + " passband.command.Main build $in -o out --without pdf,xlsx --depfile $in.d\n"
                + "  depfile = $in.d\n  deps = gcc\n  restat = 1\n  description = sheets of $in\n");
    for (Path source : Repository.files(work.resolve("procedures"), ".pband")) {
      String name = source.getFileName().toString().replace(".pband", "");
      if (Files.readString(source).contains("\nprocedure " + name + " ")) {
        rules.append("build out/" + name + "/checklist.html: sheets ");
        rules.append(work.relativize(source)).append('\n');
      }
    }
    Files.writeString(work.resolve("build.ninja"), rules);
  }

  /** The sources that a run builds, in order of name; a run after it has nothing to do. */
  private List<String> built() throws IOException, InterruptedException {
    String said = ninja();
    List<String> built = BUILT.matcher(said).results().map(m -> m.group(1)).sorted().toList();
    assertEquals("ninja: no work to do.\n", ninja());
    return built;
  }

  private String ninja() throws IOException, InterruptedException {
    Path said = work.resolve("said.txt");
    Process ninja =
        new ProcessBuilder("ninja", "-j2")
            .directory(work.toFile())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile())
            .start();
    assertTrue(ninja.waitFor(120, TimeUnit.SECONDS));
    assertEquals(0, ninja.exitValue(), Files.readString(said));
    return Files.readString(said);
  }

  private List<String> builtAfterChange(String path) throws IOException, InterruptedException {
    Path file = work.resolve("procedures").resolve(path);
    Files.writeString(file, Files.readString(file) + (path.endsWith(".csv") ? "" : "# more\n"));
    return built();
  }

  @Test
  void whatDependsOnAChangeIsBuiltAndNothingElse() throws Exception {
    String sundew = "procedures/sundew/sundew-energy.pband";
    String teasel = "procedures/teasel/teasel-output.pband";
    String yarrow = "procedures/yarrow/yarrow-service.pband";
    assertEquals(List.of(sundew, teasel, yarrow), built());
    assertEquals(List.of(), built());
    assertEquals(List.of(yarrow), builtAfterChange("rules.pband"));
    assertEquals(List.of(yarrow), builtAfterChange("yarrow/carve-limits.csv"));
    assertEquals(List.of(teasel), builtAfterChange("teasel/teasel.pband"));
    assertEquals(List.of(teasel, yarrow), builtAfterChange("analyzers/shale.pband"));
    assertEquals(List.of(), builtAfterChange("analyzers/gravel.pband"));
    assertEquals(List.of(sundew, teasel, yarrow), builtAfterChange("leads.pband"));
    Files.delete(work.resolve("out/teasel-output/checklist.html"));
    assertEquals(List.of(teasel), built());
  }
}
