package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import passband.testing.Repository;

/**
 * The command line on Windows' file system, as Jimfs has it: drives, shares, back slashes, CRLF.
 */
class WindowsTest {
  private static final String MAIN = "procedures\\teasel\\teasel-output.pband";

  private FileSystem windows;
  private Path work;
  private String out;
  private String err;

  @BeforeEach
  void open() throws IOException {
    windows =
        Jimfs.newFileSystem(
            Configuration.windows().toBuilder()
                .setRoots("C:\\", "D:\\", "\\\\srv\\dept\\")
                .build());
    work = Files.createDirectories(windows.getPath("C:\\bench"));
    Repository.copy(Repository.LIBRARY, work.resolve("procedures"));
  }

  @AfterEach
  void close() throws IOException {
    windows.close();
  }

  private int run(Path folder, String... words) {
    ByteArrayOutputStream outBytes = new ByteArrayOutputStream();
    ByteArrayOutputStream errBytes = new ByteArrayOutputStream();
    int status =
        Main.run(
            new Invocation(
                folder,
                new PrintStream(outBytes, true, StandardCharsets.UTF_8),
                new PrintStream(errBytes, true, StandardCharsets.UTF_8),
                0,
                null,
                false),
            List.of(words));
    out = outBytes.toString(StandardCharsets.UTF_8);
    err = errBytes.toString(StandardCharsets.UTF_8);
    assertFalse(err.contains("fault of Passband"), err);
    return status;
  }

  private int run(String... words) {
    return run(work, words);
  }

  /** The files below a folder but for the list of what was written, by their names with '/'. */
  private static Map<String, String> written(Path folder) throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : (Iterable<Path>) all.filter(Files::isRegularFile)::iterator) {
        String name = folder.relativize(file).toString().replace('\\', '/');
        if (!name.equals(".built")) {
          files.put(name, new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1));
        }
      }
    }
    return files;
  }

  /** The same bytes as anywhere else, however the folder is named. */
  @Test
  void everyNameOfAFolderBuildsTheSame() throws IOException {
    Path unix =
        Files.createDirectories(Jimfs.newFileSystem(Configuration.unix()).getPath("/bench"));
    Repository.copy(Repository.LIBRARY, unix.resolve("procedures"));
    assertEquals(0, run(unix, "build", "procedures", "-o", "out"), out + err);
    Map<String, String> right = written(unix.resolve("out"));
    assertTrue(right.size() > 20);
    Repository.copy(Repository.LIBRARY, windows.getPath("D:\\lib\\procedures"));
    Repository.copy(Repository.LIBRARY, windows.getPath("\\\\srv\\dept\\procedures"));
    String[][] calls = {
      {"procedures", "out"},
      {".\\procedures\\", "out2\\"},
      {"procedures/../procedures", "deep/er/out"},
      {"C:\\bench\\procedures", "C:\\out"},
      {"D:\\lib\\procedures", "D:\\lib\\out"},
      {"D:/lib/procedures", "out3"},
      {"\\\\srv\\dept\\procedures", "\\\\srv\\dept\\out"},
    };
    for (String[] call : calls) {
      assertEquals(0, run("build", call[0], "-o", call[1]), call[0] + "\n" + out + err);
      assertEquals(right, written(work.resolve(call[1])), call[0]);
    }
  }

  @Test
  void sourcesWithTheLineEndsOfWindowsMeanTheSame() throws IOException {
    assertEquals(0, run("build", "procedures", "-o", "out"), out + err);
    try (Stream<Path> all = Files.walk(work.resolve("procedures"))) {
      for (Path file : (Iterable<Path>) all.filter(Files::isRegularFile)::iterator) {
        Files.writeString(file, Files.readString(file).replace("\n", "\r\n"));
      }
    }
    assertEquals(0, run("build", "procedures", "-o", "crlf"), out + err);
    assertEquals(written(work.resolve("out")).keySet(), written(work.resolve("crlf")).keySet());
    for (String limits : List.of("out", "crlf")) {
      assertEquals(0, run("format", "--check", "procedures"), limits + out + err);
    }
    assertEquals(0, run("diff", "procedures", "procedures"), out + err);
    assertEquals(
        Files.readString(work.resolve("out\\teasel-output\\limits.csv")),
        Files.readString(work.resolve("crlf\\teasel-output\\limits.csv")));
  }

  /** Every command that takes a file finds it by any of its names. */
  @Test
  void everyCommandTakesAFilesNames() throws IOException {
    assertEquals(0, run("build", "procedures"), out + err);
    List<String> mains =
        List.of(
            MAIN,
            MAIN.replace('\\', '/'),
            "C:\\bench\\" + MAIN,
            "c:\\BENCH\\" + MAIN.toUpperCase(java.util.Locale.ROOT));
    for (String main : mains) {
      for (String command : List.of("check", "format", "steps")) {
        assertEquals(0, run(command, main), command + " " + main + "\n" + out + err);
      }
      assertEquals(0, run("diff", main, MAIN), main + "\n" + out + err);
    }
    String limits = "out\\teasel-output\\limits.json";
    assertEquals(0, run("readings", limits), out + err);
    Files.writeString(work.resolve("readings.csv"), out);
    for (String command : List.of("judge", "record")) {
      int status = run(command, limits, "C:\\bench\\readings.csv");
      assertEquals(1, status, command + "\n" + out + err);
    }
  }

  /** What no file can be named is no file: said in a line, and a commit's file is asked of git. */
  @Test
  void namesThatNoFileCanHave() {
    List<String> names =
        List.of(
            "a?b.pband",
            "a*b",
            "a:b",
            "<a>",
            "a|b",
            "\"a\"",
            "HEAD~1:procedures",
            "HEAD:",
            "A..B?");
    for (String name : names) {
      List<String[]> calls = new ArrayList<>();
      for (String command :
          List.of("check", "build", "format", "steps", "readings", "fleet", "verify")) {
        calls.add(new String[] {command, name});
      }
      calls.add(new String[] {"history", name, name, name});
      calls.add(new String[] {"diff", name, "procedures"});
      calls.add(new String[] {"diff", "procedures", name});
      if (!name.contains("..")) {
        calls.add(new String[] {"diff", name, "--analyzer", "shale"});
      }
      calls.add(new String[] {"judge", name, name});
      calls.add(new String[] {"record", name, name});
      calls.add(new String[] {"check", "procedures", "--root", name});
      calls.add(new String[] {"build", "procedures", "-o", name});
      calls.add(new String[] {"build", "procedures", "--depfile", name});
      calls.add(new String[] {"release", name, "--by", "A", "--on", "2026-01-31"});
      for (String[] call : calls) {
        int status = run(call);
        assertEquals(2, status, String.join(" ", call) + "\n" + out + err);
        assertEquals(1, err.lines().count(), String.join(" ", call) + "\n" + err);
        assertTrue(err.contains(name), String.join(" ", call) + "\n" + err);
      }
    }
  }

  /** A use to another drive is no use of this library. */
  @Test
  void anotherDriveIsOutsideOfTheLibrary() throws IOException {
    Files.createDirectories(windows.getPath("D:\\other"));
    Files.writeString(windows.getPath("D:\\other\\x.pband"), "leads l \"L\" {\n}\n");
    for (String used :
        List.of("D:/other/x.pband", "D:\\\\other\\\\x.pband", "//srv/dept/x.pband")) {
      Files.writeString(work.resolve("procedures\\x.pband"), "use \"" + used + "\"\n");
      int status = run("check", "procedures\\x.pband");
      assertEquals(1, status, used + "\n" + out + err);
      assertTrue(out.contains("procedures/x.pband:1:"), out + err);
    }
    Files.delete(work.resolve("procedures\\x.pband"));
    int status = run(windows.getPath("D:\\other"), "check", "C:\\bench\\procedures");
    assertEquals(0, status, out + err);
  }
}
