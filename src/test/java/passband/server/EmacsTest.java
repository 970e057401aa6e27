package passband.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.edit.EditorFiles;
import passband.testing.Repository;

/** Debian's Emacs and eglot with what {@code passband editor emacs} prints, without a screen. */
class EmacsTest {
  @TempDir Path work;

  @Test
  void anAuthorInTheEditor() throws Exception {
    assertTrue(
        Files.isExecutable(Path.of("/usr/bin/emacs")), "needs emacs-nox; .ci/run installs it");
    Path root = work.resolve("procedures");
    Repository.copy(Repository.LIBRARY, root);
    Files.createFile(root.resolve("passband.library"));
    Path bin = Files.createDirectories(work.resolve("bin"));
    Files.writeString(
        bin.resolve("passband"),
        "#!/bin/sh\nexec '"
            + Path.of(System.getProperty("java.home"), "bin", "java")
            + "' -cp '"
            + System.getProperty("java.class.path")
            + "' passband.command.Main \"$@\"\n");
    assertTrue(bin.resolve("passband").toFile().setExecutable(true));
    Path mode = Files.writeString(work.resolve("mode.el"), EditorFiles.text("emacs"));
    Path result = work.resolve("result.txt");
    ProcessBuilder builder =
        new ProcessBuilder(
            "/usr/bin/emacs",
            "--batch",
            "--load",
            Repository.ROOT.resolve("src/test/resources/editor/author.el").toString());
    Map<String, String> environment = builder.environment();
    environment.put("HOME", work.toString());
    environment.merge("PATH", bin.toString(), (path, own) -> own + ":" + path);
    environment.put("PASSBAND_MODE", mode.toString());
    environment.put("PASSBAND_RESULT", result.toString());
    environment.put("PASSBAND_FILE", root.resolve("teasel/teasel-output.pband").toString());
    Path said = work.resolve("said.txt");
    Process process = builder.redirectErrorStream(true).redirectOutput(said.toFile()).start();
    assertTrue(process.waitFor(120, TimeUnit.SECONDS), "the editor does not leave");
    assertEquals(0, process.exitValue(), Files.readString(said));
    Map<String, String> told = new LinkedHashMap<>();
    for (String line : Files.readAllLines(result)) {
      told.put(line.substring(0, line.indexOf('\t')), line.substring(line.indexOf('\t') + 1));
    }
    assertEquals("passband-mode", told.get("mode"));
    assertEquals("yes", told.get("managed"), Files.readString(said));
    assertTrue(told.get("fault").contains("did you mean 'monopolar-load'?"), told.toString());
    assertEquals("yes", told.get("mended"));
    assertEquals("yes", told.get("formatted"));
  }
}
