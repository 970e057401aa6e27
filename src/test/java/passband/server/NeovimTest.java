package passband.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.Gson;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.edit.BeginnersSlipsTest;
import passband.testing.Repository;

/** The language server in Neovim, run without a screen: what an author sees and does. */
class NeovimTest {
  @TempDir Path work;

  @Test
  void anAuthorInTheEditor() throws Exception {
    Path root = work.resolve("procedures");
    Repository.copy(Repository.LIBRARY, root);
    Map<String, String> told =
        edit("author.lua", root, root.resolve("teasel/teasel-output.pband"), Map.of());
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

  /** The fix that stands first is taken, for each slip, until nothing is said any more. */
  @Test
  void aBeginnersSlipsAreMendedInTheEditor() throws Exception {
    Path root = Files.createDirectory(work.resolve("beginner"));
    Path file = root.resolve("gale.pband");
    Files.writeString(file, BeginnersSlipsTest.source());
    List<String> slips = List.copyOf(BeginnersSlipsTest.written().values());
    assertTrue(slips.size() > 80, slips.size() + " slips");
    Path written = work.resolve("slips.json");
    Files.writeString(written, new Gson().toJson(slips));
    Map<String, String> told =
        edit("slips.lua", root, file, Map.of("PASSBAND_SLIPS", written.toString()));
    assertEquals("true\tnil", told.get("end"), Files.readString(work.resolve("said.txt")) + told);
    List<String> names = List.copyOf(BeginnersSlipsTest.written().keySet());
    List<String> left = new ArrayList<>();
    for (int i = 0; i < slips.size(); i++) {
      String[] parts = told.get(String.valueOf(i + 1)).split("\t", 3);
      if (parts[0].equals("0") || !parts[1].equals("0")) {
        left.add(names.get(i) + ": " + String.join(", ", parts));
      }
    }
    assertEquals(List.of(), left);
  }

  /** What a script of the editor tells, by the first word of each line. */
  private Map<String, String> edit(String script, Path root, Path file, Map<String, String> more)
      throws Exception {
    Path nvim = Path.of("/usr/bin/nvim");
    assertTrue(Files.isExecutable(nvim), "this test needs neovim; .ci/run installs it");
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
            "luafile " + Repository.ROOT.resolve("src/test/resources/editor/" + script));
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
    environment.put("PASSBAND_FILE", file.toString());
    environment.putAll(more);
    Process process =
        builder.redirectErrorStream(true).redirectOutput(work.resolve("said.txt").toFile()).start();
    assertTrue(process.waitFor(240, TimeUnit.SECONDS), "the editor does not leave");
    Map<String, String> told = new TreeMap<>();
    for (String line : Files.readAllLines(result)) {
      String[] parts = line.split("\t", 2);
      told.put(parts[0], parts[1]);
    }
    return told;
  }

  private static List<String> leftOver(String device) {
    return device.lines().filter(l -> l.contains("mode tack")).toList();
  }
}
