package passband.command;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Which root the command gives to a file, from whatever folder it is called. */
class LibraryRootTest {
  private static final String DEVICE = "device d \"D\" {\n}\n";
  private static final String USE_UP = "use \"../shared.pband\"\n";

  private FileSystem disk;
  private Path work;
  private String out;
  private String err;

  @BeforeEach
  void open() throws IOException {
    disk = Jimfs.newFileSystem(Configuration.unix());
    work = Files.createDirectories(disk.getPath("/bench"));
  }

  @AfterEach
  void close() throws IOException {
    disk.close();
  }

  private void write(String path, String text) throws IOException {
    Path file = disk.getPath(path);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  private int run(String in, String... words) {
    GitFolder folder = new GitFolder(disk.getPath(in));
    int status = folder.run(words);
    out = folder.out();
    err = folder.err();
    return status;
  }

  /** A library with a file in a folder that uses one of another folder. */
  private void library(String root) throws IOException {
    write(root + "/shared.pband", DEVICE);
    write(root + "/part/a.pband", USE_UP);
  }

  private void assertOutside(String root) {
    assertTrue(
        out.contains(
            "error: '../shared.pband' is outside the library root "
                + root
                + " (set it with --root) [use-outside-root]"),
        out + err);
  }

  // ---- each branch of the rule ----

  @Test
  void theGivenRootIsBeforeAnyMarker() throws IOException {
    library("/bench/lib");
    write("/bench/lib/passband.library", "");
    assertEquals(0, run("/bench", "check", "lib/part/a.pband"), out + err);
    assertEquals(1, run("/bench", "check", "lib/part/a.pband", "--root", "lib/part"));
    assertOutside("/bench/lib/part");
    write("/bench/lib/part/passband.library", "");
    assertEquals(0, run("/bench", "check", "lib/part/a.pband", "--root", "."), out + err);
  }

  @ParameterizedTest
  @ValueSource(strings = {"passband.library", ".git", ".git/HEAD"})
  void theNearestMarkedFolderIsBeforeTheWorkingFolder(String marker) throws IOException {
    library("/bench/lib");
    write("/bench/lib/" + marker, "");
    for (String from : List.of("/", "/bench", "/bench/lib", "/bench/lib/part", "/elsewhere")) {
      Files.createDirectories(disk.getPath(from));
      assertEquals(0, run(from, "check", "/bench/lib/part/a.pband"), from + out + err);
      assertEquals(0, run(from, "check", "/bench/lib/part"), from + out + err);
    }
    write("/bench/lib/part/" + marker, "");
    for (String from : List.of("/", "/bench/lib", "/bench/lib/part", "/elsewhere")) {
      assertEquals(1, run(from, "check", "/bench/lib/part/a.pband"));
      assertOutside("/bench/lib/part");
    }
  }

  @Test
  void aFolderThatIsNamedLikeTheMarkerIsNone() throws IOException {
    library("/bench/lib");
    Files.createDirectories(disk.getPath("/bench/lib/part/passband.library"));
    assertEquals(0, run("/bench", "check", "lib/part/a.pband"), out + err);
  }

  @Test
  void theWorkingFolderWhereItHoldsThePath() throws IOException {
    library("/bench/lib");
    assertEquals(0, run("/bench", "check", "lib/part/a.pband"), out + err);
    assertEquals(0, run("/bench/lib", "check", "part"), out + err);
    assertEquals(1, run("/bench/lib/part", "check", "a.pband"));
    assertOutside("/bench/lib/part");
  }

  @Test
  void elseTheFolderItself() throws IOException {
    library("/bench/lib");
    Files.createDirectories(disk.getPath("/elsewhere"));
    assertEquals(1, run("/elsewhere", "check", "/bench/lib/part/a.pband"));
    assertOutside("/bench/lib/part");
    assertEquals(1, run("/elsewhere", "check", "../bench/lib/part"));
    assertOutside("/bench/lib/part");
    assertEquals(0, run("/elsewhere", "check", "/bench/lib"), out + err);
  }

  // ---- what follows from it ----

  /** Each file of a folder has the root that it has alone. */
  @Test
  void aLibraryInALibraryKeepsItsRoot() throws IOException {
    library("/bench/lib");
    write("/bench/.git/HEAD", "");
    write("/bench/lib/part/passband.library", "");
    assertEquals(1, run("/bench", "check", "lib"));
    assertOutside("/bench/lib/part");
  }

  @ParameterizedTest
  @CsvSource({
    "/bench, lib/part/a.pband",
    "/bench/lib, part/a.pband",
    "/bench/lib/part, a.pband",
    "/bench/lib/other, ../part/a.pband",
    "/elsewhere, /bench/lib/part/a.pband"
  })
  void messagesNameFilesFromTheWorkingFolder(String from, String shown) throws IOException {
    library("/bench/lib");
    write("/bench/lib/passband.library", "");
    write("/bench/lib/shared.pband", "devise\n");
    Files.createDirectories(disk.getPath(from));
    assertEquals(1, run(from, "check", "/bench/lib/part/a.pband"));
    String shared = shown.replace("../part/a", "../shared").replace("part/a", "shared");
    shared = shared.equals("a.pband") ? "../shared.pband" : shared;
    assertTrue(out.startsWith(shared + ":1:1: error"), out);
    write("/bench/lib/part/a.pband", "devise\n");
    assertEquals(1, run(from, "check", "/bench/lib/part/a.pband"));
    assertTrue(out.startsWith(shown + ":1:1: error"), out);
  }

  @Test
  void aPathOutsideTheGivenRootIsRefused() throws IOException {
    library("/bench/lib");
    assertEquals(2, run("/bench", "check", "lib/shared.pband", "--root", "lib/part"));
    assertEquals(
        "passband: '/bench/lib/shared.pband' is outside the library root /bench/lib/part"
            + " (set it with --root)\n",
        err);
    assertEquals(2, run("/bench", "check", "lib", "--root", "nowhere"));
    assertEquals("passband: no such folder: nowhere\n", err);
  }

  // ---- symbolic links ----

  @Test
  void aLinkedFolderIsInTheLibraryThatItReallyIsIn() throws IOException {
    library("/elsewhere/lib");
    write("/bench/.git/HEAD", "");
    Files.createSymbolicLink(disk.getPath("/bench/link"), disk.getPath("/elsewhere/lib"));
    assertEquals(0, run("/bench", "check", "link"), out + err);
    assertEquals(1, run("/bench", "check", "link/part/a.pband"));
    assertOutside("/bench/link/part");
    write("/elsewhere/lib/passband.library", "");
    assertEquals(0, run("/bench", "check", "link/part/a.pband"), out + err);
  }

  @Test
  void aLinkInsideTheLibraryIsFollowed() throws IOException {
    library("/bench/lib");
    write("/bench/lib/passband.library", "");
    Files.createSymbolicLink(disk.getPath("/bench/lib/again"), disk.getPath("/bench/lib/part"));
    assertEquals(0, run("/", "check", "/bench/lib/again/a.pband"), out + err);
  }

  @Test
  void aLinkedFileOutsideIsRefused() throws IOException {
    write("/elsewhere/x.pband", DEVICE);
    Files.createSymbolicLink(work.resolve("x.pband"), disk.getPath("/elsewhere/x.pband"));
    assertEquals(2, run("/bench", "check", "x.pband"));
    assertEquals(
        "passband: 'x.pband' is outside the library root /bench (set it with --root)\n", err);
  }
}
