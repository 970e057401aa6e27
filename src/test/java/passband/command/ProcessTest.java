package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.build.Output;
import passband.testing.Repository;

/** The command as a process of its own: killed, beside another, on other Javas and elsewhere. */
class ProcessTest {
  @TempDir Path work;

  @BeforeEach
  void copyLibrary() {
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
  }

  private Process started(String java, Path in, List<String> options, String... words)
      throws IOException {
    List<String> line = new ArrayList<>(List.of(java, "-XX:TieredStopAtLevel=1"));
    line.addAll(options);
    line.addAll(List.of("-cp", System.getProperty("java.class.path"), "passband.command.Main"));
    line.addAll(List.of(words));
    return new ProcessBuilder(line)
        .directory(in.toFile())
        .redirectErrorStream(true)
        .redirectOutput(work.resolve("said.txt").toFile())
        .start();
  }

  private String said() throws IOException {
    return Files.readString(work.resolve("said.txt"));
  }

  private static String ownJava() {
    return Path.of(System.getProperty("java.home"), "bin", "java").toString();
  }

  private int finished(Process process) throws Exception {
    assertTrue(process.waitFor(60, TimeUnit.SECONDS), "still running: " + said());
    return process.exitValue();
  }

  /** The files of a folder by path, without the note of what they were made from. */
  private static Map<String, String> tree(Path folder) throws IOException {
    Map<String, String> files = new TreeMap<>();
    for (Path file : Repository.files(folder, "")) {
      if (!file.endsWith(".built")) {
        files.put(
            folder.relativize(file).toString(),
            Files.readString(file, StandardCharsets.ISO_8859_1));
      }
    }
    return files;
  }

  private void edit(String from, String to) throws IOException {
    for (Path source : Repository.files(work.resolve("procedures"), ".pband")) {
      Files.writeString(source, Files.readString(source).replace(from, to));
    }
  }

  // ---- killed ----

  /** A build that is killed leaves each procedure's folder as it was or as it becomes. */
  @Test
  void killedAtAnyMoment() throws Exception {
    Path out = work.resolve("out");
    List<Map<String, String>> versions = new ArrayList<>();
    String[] cautions = {"High-frequency output burns.", "The output burns."};
    for (int i = 0; i < 2; i++) {
      assertEquals(0, finished(started(ownJava(), work, List.of(), "build", "procedures")), said());
      versions.add(tree(out));
      edit(cautions[i], cautions[1 - i]);
    }
    List<String> names;
    try (Stream<Path> list = Files.list(out)) {
      names =
          list.filter(Files::isDirectory).map(p -> p.getFileName().toString()).sorted().toList();
    }
    assertEquals(3, names.size());
    Random random = new Random(11);
    int replaced = 0;
    for (int i = 0; i < 14; i++) {
      edit(cautions[i % 2], cautions[1 - i % 2]);
      Process process = started(ownJava(), work, List.of(), "build", "procedures");
      process.waitFor(600 + random.nextInt(1400), TimeUnit.MILLISECONDS);
      process.destroyForcibly().waitFor();
      for (String name : names) {
        replaced += whole(out, name, versions) == 1 - i % 2 ? 1 : 0;
      }
    }
    assertEquals(0, finished(started(ownJava(), work, List.of(), "build", "procedures")), said());
    assertEquals(versions.get(0), tree(out));
    List<String> all = new ArrayList<>(List.of(".built", "index.html"));
    all.addAll(names);
    try (Stream<Path> list = Files.list(out)) {
      List<String> there = list.map(p -> p.getFileName().toString()).sorted().toList();
      assertEquals(all, there, "nothing is left of the killed builds");
    }
    System.out.println("killed 14 builds; folders that were already new: " + replaced);
  }

  /**
   * Which version of a procedure stands in its folder, or between the two moves of a replacement
   * beside it, from where the next build takes it back.
   */
  private static int whole(Path out, String name, List<Map<String, String>> versions)
      throws IOException {
    Path folder = out.resolve(name);
    if (!Files.exists(folder)) {
      try (Stream<Path> list = Files.list(out)) {
        folder =
            list.filter(p -> p.getFileName().toString().startsWith(".old-"))
                .map(p -> p.resolve(name))
                .filter(Files::exists)
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " is gone"));
      }
    }
    Map<String, String> there = tree(folder);
    for (int version = 0; version < versions.size(); version++) {
      Map<String, String> expected = new TreeMap<>();
      versions
          .get(version)
          .forEach(
              (path, text) -> {
                if (path.startsWith(name + "/")) {
                  expected.put(path.substring(name.length() + 1), text);
                }
              });
      if (there.equals(expected)) {
        return version;
      }
    }
    throw new AssertionError(name + " is half of something: " + there.keySet());
  }

  // ---- beside another ----

  @Test
  void ofTwoBuildsOneWaitsForTheOtherAndSaysSo() throws Exception {
    Path out = work.resolve("out");
    Process build;
    try (Output other = Output.open(out, () -> {})) {
      build = started(ownJava(), work, List.of(), "build", "procedures");
      while (!said().contains("waiting for another build that is writing to " + out)) {
        assertTrue(build.isAlive(), said());
        Thread.sleep(20);
      }
      assertFalse(Files.exists(out.resolve("teasel-output")));
    }
    assertEquals(0, finished(build), said());
    assertTrue(Files.exists(out.resolve("teasel-output/checklist.html")), said());
  }

  // ---- elsewhere ----

  /** Every Java 17 or later that is installed where Linux distributions put them, and this one. */
  private static List<String> javas() throws IOException {
    List<String> javas = new ArrayList<>(List.of(ownJava()));
    Path usual = Path.of("/usr/lib/jvm");
    if (Files.isDirectory(usual)) {
      try (Stream<Path> list = Files.list(usual)) {
        list.filter(p -> !Files.isSymbolicLink(p))
            .filter(p -> p.getFileName().toString().matches(".*\\b(17|2\\d)\\b.*"))
            .map(p -> p.resolve("bin/java"))
            .filter(Files::isExecutable)
            .map(Path::toString)
            .sorted()
            .forEach(javas::add);
      }
    }
    return javas;
  }

  /** The same bytes as {@code out}, whatever Java, language, time zone, encoding and folder. */
  @Test
  void sameBytesEverywhere() throws Exception {
    Map<String, String> committed = tree(Repository.ROOT.resolve("out"));
    Repository.copy(Repository.PROCEDURES, work.resolve("demo"));
    Path elsewhere = Files.createDirectories(work.resolve("a folder/of another name"));
    List<String> odd =
        List.of(
            "-Duser.language=tr",
            "-Duser.country=TR",
            "-Duser.timezone=Pacific/Chatham",
            "-Dfile.encoding=ISO-8859-1");
    for (String java : javas()) {
      Process process = started(java, elsewhere, odd, "build", "../../demo", "-o", "../../built");
      assertEquals(0, finished(process), java + "\n" + said());
      assertEquals(committed, tree(work.resolve("built")), java);
      System.out.println("same bytes: " + java);
    }
  }

  // ---- a quick start ----

  /** What the launcher makes its archive of classes by. */
  @Test
  void trainingWritesSheets() throws Exception {
    List<String> line =
        List.of(
            ownJava(),
            "-cp",
            System.getProperty("java.class.path"),
            "passband.command.CdsTraining",
            "procedures",
            "rehearsed");
    Process process =
        new ProcessBuilder(line)
            .directory(work.toFile())
            .redirectErrorStream(true)
            .redirectOutput(work.resolve("said.txt").toFile())
            .start();
    assertEquals(0, finished(process), said());
    Path sheets = work.resolve("rehearsed/out");
    assertEquals(3, Repository.files(sheets, "checklist.html").size());
    assertEquals(2, Repository.files(sheets, "checklist.pdf").size(), "one is built without");
  }

  /** A check loads nothing of what prints or serves, a build without a PDF nothing of PDFs. */
  @Test
  void onlyWhatIsUsedIsLoaded() throws Exception {
    List<String> loading = List.of("-Xlog:class+load");
    assertEquals(0, finished(started(ownJava(), work, loading, "check", "procedures")), said());
    String check = said();
    assertTrue(check.contains("passband.check.Circuit"));
    for (String unused :
        List.of(
            "freemarker.",
            "org.apache.pdfbox.",
            "org.apache.fontbox.",
            "org.eclipse.lsp4j.",
            "com.google.gson.",
            "passband.render.",
            "passband.server.",
            "passband.edit.")) {
      assertFalse(check.contains(" " + unused), unused);
    }
    assertEquals(
        0,
        finished(
            started(ownJava(), work, loading, "build", "procedures", "--without", "pdf,pictures")),
        said());
    String build = said();
    assertTrue(build.contains(" freemarker.template.Configuration"));
    for (String unused :
        List.of("org.apache.pdfbox.", "org.apache.fontbox.", "org.eclipse.lsp4j.")) {
      assertFalse(build.contains(" " + unused), unused);
    }
  }

  // ---- a full disk ----

  /** With no room for a file of more than 512 bytes, as on a full disk: what was there stays. */
  private int withoutRoom(String... words) throws Exception {
    List<String> line =
        new ArrayList<>(List.of("sh", "-c", "ulimit -f 1; exec \"$@\"", "sh", ownJava()));
    line.addAll(List.of("-XX:-UsePerfData", "-cp", System.getProperty("java.class.path")));
    line.add("passband.command.Main");
    line.addAll(List.of(words));
    Process process =
        new ProcessBuilder(line).directory(work.toFile()).redirectErrorStream(true).start();
    Files.write(work.resolve("said.txt"), process.getInputStream().readAllBytes());
    return finished(process);
  }

  @Test
  void aFullDiskCostsNothing() throws Exception {
    Path source = work.resolve("procedures/teasel/teasel-output.pband");
    Path record = work.resolve("procedures/teasel/released.txt");
    Files.writeString(source, Files.readString(source).replace("  revision", "      revision"));
    Files.writeString(record, "# " + "kept ".repeat(200));
    Set<PosixFilePermission> permissions = PosixFilePermissions.fromString("rw-r--r--");
    Files.setPosixFilePermissions(source, permissions);
    Map<String, String> before = tree(work.resolve("procedures"));
    for (List<String> words :
        List.of(
            List.of("format", "procedures"),
            List.of(
                "release", "procedures/teasel/teasel-output.pband", "--by=A", "--on=2026-11-02"),
            List.of("build", "procedures", "--without=pdf"))) {
      assertEquals(2, withoutRoom(words.toArray(String[]::new)), said());
      assertEquals(before, tree(work.resolve("procedures")), said());
      assertEquals(1, said().lines().count(), said());
      assertTrue(said().contains("File too large"), said());
      assertTrue(said().contains(words.get(0).equals("build") ? "out" : "teasel"), said());
    }
    assertEquals(0, finished(started(ownJava(), work, List.of(), "format", "procedures")), said());
    assertEquals(permissions, Files.getPosixFilePermissions(source));
    assertFalse(Files.readString(source).contains("      revision"));
  }

  /** A link goes on leading to the file that it leads to. */
  @Test
  void aLinkedSourceIsFormattedWhereItLies() throws Exception {
    Path source = work.resolve("procedures/teasel/teasel-output.pband");
    Path link = work.resolve("procedures/linked.pband");
    Files.writeString(source, Files.readString(source).replace("  revision", "      revision"));
    Files.createSymbolicLink(link, source);
    assertEquals(0, finished(started(ownJava(), work, List.of(), "format", link.toString())));
    assertTrue(Files.isSymbolicLink(link));
    assertFalse(Files.readString(source).contains("      revision"));
  }
}
