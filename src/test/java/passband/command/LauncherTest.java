package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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

  /** Two starts from sources that have changed: one builds and says so, the other waits. */
  @Test
  void ofTwoStartsOneBuildsAndTheOtherWaits() throws Exception {
    Path here = launcher.getParent();
    Path bin = Files.createDirectories(work.resolve("bin"));
    Path built = work.resolve("built.txt");
    Files.writeString(
        bin.resolve("mvn"),
        "#!/bin/sh\necho \"$MAVEN_OPTS\" >>'"
            + built
            + "'\nsleep 2\ncp kept.jar target/passband.jar\ncp kept.jar target/original-passband.jar\n");
    assertTrue(bin.resolve("mvn").toFile().setExecutable(true));
    Files.move(here.resolve("target/passband.jar"), here.resolve("kept.jar"));
    List<Process> starts = new ArrayList<>();
    for (String name : List.of("1", "2")) {
      ProcessBuilder builder =
          new ProcessBuilder("/bin/sh", launcher.toString(), "version")
              .directory(work.toFile())
              .redirectError(work.resolve("err" + name).toFile())
              .redirectOutput(work.resolve("out" + name).toFile());
      builder.environment().merge("PATH", bin.toString(), (path, own) -> own + ":" + path);
      starts.add(builder.start());
    }
    for (Process start : starts) {
      assertTrue(start.waitFor(60, TimeUnit.SECONDS));
      assertEquals(0, start.exitValue());
    }
    assertEquals(1, Files.readAllLines(built).size());
    assertTrue(Files.readString(built).contains("-Djansi.noreset=true"));
    String said = Files.readString(work.resolve("err1")) + Files.readString(work.resolve("err2"));
    assertEquals(
        "passband: building the program from its sources first, which takes a minute or two\n",
        said);
    for (String name : List.of("out1", "out2")) {
      assertTrue(Files.readString(work.resolve(name)).startsWith("passband "), name);
    }
    assertFalse(Files.exists(here.resolve("target/building")));
  }

  /** What a start left that was killed while it built is no trouble. */
  @Test
  void aKilledBuildIsNotWaitedFor() throws Exception {
    Path here = launcher.getParent();
    Path bin = Files.createDirectories(work.resolve("bin"));
    Files.writeString(bin.resolve("mvn"), "#!/bin/sh\ncp kept.jar target/passband.jar\n");
    assertTrue(bin.resolve("mvn").toFile().setExecutable(true));
    Files.move(here.resolve("target/passband.jar"), here.resolve("kept.jar"));
    Process gone = new ProcessBuilder("/bin/true").start();
    gone.waitFor();
    Files.createDirectories(here.resolve("target/building"));
    Files.writeString(here.resolve("target/building/pid"), gone.pid() + "\n");
    ProcessBuilder builder =
        new ProcessBuilder("/bin/sh", launcher.toString(), "version")
            .directory(work.toFile())
            .redirectErrorStream(true)
            .redirectOutput(work.resolve("said").toFile());
    builder.environment().merge("PATH", bin.toString(), (path, own) -> own + ":" + path);
    Process start = builder.start();
    assertTrue(start.waitFor(60, TimeUnit.SECONDS));
    assertEquals(0, start.exitValue(), Files.readString(work.resolve("said")));
  }

  @Test
  void anOptionThatMayBeAPathSaysHowToWriteThat() throws Exception {
    Ended ended = run("C", "check", "-größe.pband");
    assertEquals(2, ended.status());
    assertTrue(ended.said().contains("has no option -größe.pband"), ended.said());
    assertTrue(ended.said().contains("after '--'"), ended.said());
  }
}
