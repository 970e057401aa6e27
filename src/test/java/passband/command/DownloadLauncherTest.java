package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import passband.testing.Repository;

/**
 * The launcher of the downloads, with a stand-in for Java that writes down how it was called and
 * keeps classes only when it is let.
 */
@Timeout(value = 3, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class DownloadLauncherTest {
  private static final int ATTEMPTS = 600;
  private static final String JAVA =
      """
      #!/bin/sh
      case "$*" in *-Xshare:dump*)
        for word in "$@"; do case "$word" in -XX:SharedArchiveFile=*) echo base >"${word#*=}" ;; esac; done
        exit 0 ;;
      esac
      for word in "$@"; do
        case "$word" in -XX:ArchiveClassesAtExit=*)
          case "$*" in *-XX:SharedArchiveFile=*.base.jsa*) ;; *) exit 1 ;; esac
          echo made >>"$WORK/made"
          until [ -e "$WORK/go" ]; do sleep 0.1; done
          [ -e "$WORK/broken" ] && exit 1
          echo classes >"${word#*=}"
          exit 0 ;;
        esac
      done
      echo "$@" >>"$WORK/calls"
      echo output
      """;

  @TempDir Path work;
  private Path folder;
  private Path cache;

  @BeforeEach
  void unpacked() throws IOException {
    folder = Files.createDirectories(work.resolve("un zipped ü"));
    Files.createDirectories(folder.resolve("lib"));
    Files.createDirectories(folder.resolve("runtime/bin"));
    Files.copy(Repository.ROOT.resolve("src/dist/passband"), folder.resolve("passband"));
    Files.writeString(folder.resolve("lib/passband.jar"), "jar");
    Path java = Files.writeString(folder.resolve("runtime/bin/java"), JAVA);
    assertTrue(java.toFile().setExecutable(true));
    cache = work.resolve("ca che");
  }

  private Process start(Map<String, String> environment) throws IOException {
    ProcessBuilder builder =
        new ProcessBuilder("/bin/sh", folder.resolve("passband").toString(), "version")
            .redirectErrorStream(true);
    builder.environment().remove("HOME");
    builder.environment().put("WORK", work.toString());
    builder.environment().putAll(environment);
    return builder.start();
  }

  /** What is printed, as far as a pipe has it: nobody waits for what goes on in the background. */
  private String run(Map<String, String> environment) throws Exception {
    Process process = start(environment);
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertEquals(0, process.waitFor(), said);
    return said;
  }

  private Map<String, String> kept() {
    return Map.of("XDG_CACHE_HOME", cache.toString());
  }

  private void go() throws IOException {
    Files.writeString(work.resolve("go"), "");
  }

  private List<String> lines(String file) throws IOException {
    return Files.exists(work.resolve(file)) ? Files.readAllLines(work.resolve(file)) : List.of();
  }

  private List<Path> archives() throws IOException {
    if (!Files.isDirectory(cache.resolve("passband"))) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(cache.resolve("passband"))) {
      return all.filter(file -> !file.toString().endsWith(".base.jsa")).toList();
    }
  }

  /** Waits until so many archives are there and nothing else. */
  private void archived(int count) throws Exception {
    for (int i = 0; i < ATTEMPTS; i++) {
      List<Path> all = archives();
      if (all.size() == count && all.stream().allMatch(f -> f.toString().endsWith(".jsa"))) {
        return;
      }
      Thread.sleep(50);
    }
    assertEquals(count, archives().size(), archives().toString());
  }

  @Test
  void theSecondStartHasTheClassesOfTheFirst() throws Exception {
    assertEquals("output\n", run(kept()));
    assertTrue(lines("calls").get(0).contains("-jar " + folder.resolve("lib/passband-start.jar")));
    go();
    archived(1);
    assertEquals("output\n", run(kept()));
    String call = lines("calls").get(1);
    assertTrue(call.contains("-XX:SharedArchiveFile=" + archives().get(0) + " "), call);
    assertTrue(call.endsWith("lib/passband.jar passband.command.Main version"), call);
    assertEquals(1, lines("made").size());
  }

  @Test
  void anotherJarOrAnotherJavaHasAnotherArchive() throws Exception {
    go();
    int archives = 0;
    for (String file : List.of("lib/passband.jar", "runtime/bin/java")) {
      run(kept());
      archived(++archives);
      Files.writeString(folder.resolve(file), "\n", StandardOpenOption.APPEND);
    }
    run(kept());
    archived(++archives);
    assertEquals(archives, lines("made").size());
  }

  @Test
  void ofManyStartsOneKeepsTheClasses() throws Exception {
    List<Process> starts = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      starts.add(start(kept()));
    }
    for (Process one : starts) {
      assertEquals(0, one.waitFor());
    }
    go();
    archived(1);
    assertEquals(1, lines("made").size());
  }

  /** What failed once is not tried at every start. */
  @Test
  void whatCannotBeMadeIsLeft() throws Exception {
    Files.writeString(work.resolve("broken"), "");
    go();
    for (int i = 0; i < 3; i++) {
      assertEquals("output\n", run(kept()));
    }
    for (int i = 0; lines("made").isEmpty() && i < ATTEMPTS; i++) {
      Thread.sleep(50);
    }
    assertEquals(1, lines("made").size());
    assertEquals(1, archives().size());
  }

  /** A file where a folder should be, nothing at all, or a path that no folder can be made at. */
  @ParameterizedTest
  @ValueSource(strings = {"", "/dev/null", "/proc/self"})
  void withoutAPlaceToKeepItNothingIsSaid(String place) throws Exception {
    go();
    for (int i = 0; i < 2; i++) {
      assertEquals("output\n", run(Map.of("XDG_CACHE_HOME", place)));
    }
    assertEquals(2, lines("calls").size());
    assertEquals(List.of(), lines("made"));
  }
}
