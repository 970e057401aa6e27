package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.jar.Attributes;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import passband.testing.Repository;

/** The launcher itself, from a copy of the checkout that counts as built. */
class LauncherTest {
  private static final String DEVICE = "device d \"D\" {\n  outlet out \"Out\" {\n";

  @TempDir Path work;
  private Path launcher;

  @BeforeEach
  void checkout() throws IOException {
    Path here = Files.createDirectories(work.resolve("check out ü"));
    launcher = Files.copy(Repository.ROOT.resolve("passband"), here.resolve("passband"));
    for (String folder : List.of("grammar", "src/main", "src/build", "target")) {
      Files.createDirectories(here.resolve(folder));
    }
    Files.writeString(here.resolve("pom.xml"), "");
    Path jar = here.resolve("target/passband.jar");
    jar(jar);
    Files.copy(jar, here.resolve("target/original-passband.jar"));
    Files.writeString(here.resolve("target/passband.jsa"), "");
    FileTime later = FileTime.fromMillis(System.currentTimeMillis() + 100_000);
    Files.setLastModifiedTime(jar, later);
    Files.setLastModifiedTime(
        here.resolve("target/passband.jsa"), FileTime.fromMillis(later.toMillis() + 100_000));
  }

  /** A jar that has nothing but the names of the folders and jars that the tests run with. */
  private static void jar(Path file) throws IOException {
    List<String> paths = new ArrayList<>();
    for (String path : System.getProperty("java.class.path").split(File.pathSeparator)) {
      paths.add(Path.of(path).toUri().toASCIIString());
    }
    Manifest manifest = new Manifest();
    manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
    manifest.getMainAttributes().put(Attributes.Name.CLASS_PATH, String.join(" ", paths));
    try (OutputStream out = Files.newOutputStream(file)) {
      new JarOutputStream(out, manifest).close();
    }
  }

  /** The status, and what was said on both streams. */
  private record Ended(int status, String said) {}

  /**
   * Runs the launcher.
   *
   * @param locale what {@code LC_ALL} is; empty for no locale at all
   */
  private Ended run(String locale, String... words) throws IOException, InterruptedException {
    List<String> line = new ArrayList<>(List.of("/bin/sh", launcher.toString()));
    line.addAll(List.of(words));
    File said = work.resolve("said.txt").toFile();
    ProcessBuilder builder =
        new ProcessBuilder(line)
            .directory(work.toFile())
            .redirectErrorStream(true)
            .redirectOutput(said);
    builder.environment().keySet().removeIf(n -> n.startsWith("LC_") || n.startsWith("LANG"));
    if (!locale.isEmpty()) {
      builder.environment().put("LC_ALL", locale);
    }
    Process process = builder.start();
    assertTrue(process.waitFor(60, TimeUnit.SECONDS));
    return new Ended(process.exitValue(), Files.readString(said.toPath(), StandardCharsets.UTF_8));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "C", "POSIX", "xx_XX.UTF-8", "C.UTF-8"})
  void anyPathIsReadInAnyLocale(String locale) throws Exception {
    for (String name : List.of("Größe", "発電機", "a b", "-x", "é\u0301")) {
      Path folder = Files.createDirectories(work.resolve(name + "/" + name));
      Files.writeString(folder.resolve(name + ".pband"), DEVICE);
      Ended ended = run(locale, "check", "--", name);
      assertEquals(1, ended.status(), ended.said());
      String shown = name + "/" + name + "/" + name + ".pband:";
      assertTrue(ended.said().startsWith(shown), ended.said());
      ended = run(locale, "check", "./" + shown.substring(0, shown.length() - 1));
      assertEquals(1, ended.status(), ended.said());
    }
  }

  @Test
  void anOptionThatMayBeAPathSaysHowToWriteThat() throws Exception {
    Ended ended = run("C", "check", "-größe.pband");
    assertEquals(2, ended.status());
    assertTrue(ended.said().contains("has no option -größe.pband"), ended.said());
    assertTrue(ended.said().contains("after '--'"), ended.said());
  }
}
