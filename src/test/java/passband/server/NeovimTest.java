package passband.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.testing.Repository;

/** The language server in Neovim, run without a screen: what an author sees and does. */
class NeovimTest {
  @TempDir Path work;

  @Test
  void anAuthorInTheEditor() throws Exception {
    Path nvim = Path.of("/usr/bin/nvim");
    assertTrue(Files.isExecutable(nvim), "this test needs neovim; .ci/run installs it");
    Path root = work.resolve("procedures");
    Repository.copy(Repository.LIBRARY, root);
    Path result = work.resolve("result.txt");
    ProcessBuilder builder =
        new ProcessBuilder(
            nvim.toString(),
            "--headless",
            "-u",
            "NONE",
            "-i",
            "NONE",
            "-c",
            "luafile " + Repository.ROOT.resolve("src/test/resources/editor/author.lua"));
    Map<String, String> environment = builder.environment();
    environment.put("HOME", work.toString());
    environment.put("XDG_STATE_HOME", work.toString());
    environment.put(
        "PASSBAND_SERVER",
        String.join(
            "\n",
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:+UseSerialGC",
            "-cp",
            System.getProperty("java.class.path"),
            "passband.command.Main",
            "server"));
    environment.put("PASSBAND_RESULT", result.toString());
    environment.put("PASSBAND_ROOT", root.toString());
    environment.put("PASSBAND_FILE", root.resolve("teasel/teasel-output.pband").toString());
    Process process =
        builder.redirectErrorStream(true).redirectOutput(work.resolve("said.txt").toFile()).start();
    assertTrue(process.waitFor(120, TimeUnit.SECONDS), "the editor does not leave");
    Map<String, String> told = new TreeMap<>();
    for (String line : Files.readAllLines(result)) {
      String[] parts = line.split("\t", 2);
      told.put(parts[0], parts[1]);
    }
    assertEquals("true\tnil", told.get("end"), Files.readString(work.resolve("said.txt")) + told);
    assertTrue(told.get("hover").contains("369.0 to 428.0 mA"), told.get("hover"));
    assertTrue(told.get("fault").contains("there is no setup 'monopolar-lod'"), told.get("fault"));
    assertEquals("write 'monopolar-load'", told.get("fix"));
    assertEquals("    setup  monopolar-load", told.get("mended"));
    assertTrue(told.get("definition").startsWith("teasel.pband\t"), told.get("definition"));
    assertEquals("0", told.get("renamed"));
    assertEquals("      thick | 5, 30, 60 | 125      |", told.get("laid out"));
    String device = Files.readString(root.resolve("teasel/teasel.pband"));
    assertTrue(device.contains("mode seal \"Tack\""), "the other file is renamed as well");
    assertEquals(List.of(), leftOver(device));
  }

  private static List<String> leftOver(String device) {
    return device.lines().filter(l -> l.contains("mode tack")).toList();
  }
}
