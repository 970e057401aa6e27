package passband.server;

import static org.junit.jupiter.api.Assertions.assertEquals;

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
import org.junit.jupiter.params.provider.ValueSource;
import passband.command.DiskFolders;
import passband.diagnostic.Diagnostic;

/** Which root the editor's server gives to a document. */
class WorkspaceTest {
  private FileSystem disk;
  private Workspace workspace;

  @BeforeEach
  void open() throws IOException {
    disk = Jimfs.newFileSystem(Configuration.unix());
    workspace = new Workspace(new DiskFolders(null));
    write("/bench/lib/shared.pband", "device d \"D\" {\n}\n");
    write("/bench/lib/part/a.pband", "use \"../shared.pband\"\n");
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

  private String uri(String path) {
    return disk.getPath(path).toUri().toString();
  }

  private String folderUri(String path) {
    return uri(path).endsWith("/") ? uri(path) : uri(path) + "/";
  }

  private void assertRoot(String root, String path) {
    Workspace.Place place = workspace.place(uri(path));
    assertEquals(
        new Workspace.Place(
            folderUri(root), disk.getPath(root).relativize(disk.getPath(path)).toString()),
        place);
  }

  private List<String> found(String uri) {
    return workspace.analysis(uri).diagnostics().stream().map(Diagnostic::message).toList();
  }

  @Test
  void theGivenRootIsBeforeAnyMarker() throws IOException {
    workspace = new Workspace(new DiskFolders(disk.getPath("/bench")));
    write("/bench/lib/passband.library", "");
    assertRoot("/bench", "/bench/lib/part/a.pband");
  }

  @ParameterizedTest
  @ValueSource(strings = {"passband.library", ".git", ".git/HEAD"})
  void theNearestMarkedFolderIsBeforeTheEditorsFolder(String marker) throws IOException {
    workspace.add(folderUri("/bench/lib/part"));
    write("/bench/lib/" + marker, "");
    assertRoot("/bench/lib", "/bench/lib/part/a.pband");
    assertEquals(List.of(), found(uri("/bench/lib/part/a.pband")));
  }

  @Test
  void theDeepestOfTheEditorsFolders() {
    workspace.add(folderUri("/bench"));
    workspace.add(folderUri("/bench/lib"));
    assertRoot("/bench/lib", "/bench/lib/part/a.pband");
    assertEquals(List.of(), found(uri("/bench/lib/part/a.pband")));
  }

  @Test
  void elseTheFolderItself() {
    assertRoot("/bench/lib/part", "/bench/lib/part/a.pband");
    assertEquals(
        List.of(
            "'../shared.pband' is outside the library root "
                + uri("/bench/lib/part").replaceAll("/$", "")
                + " (set it with --root)"),
        found(uri("/bench/lib/part/a.pband")));
  }

  @Test
  void aMarkerThatTurnsUpCounts() throws IOException {
    assertEquals(1, found(uri("/bench/lib/part/a.pband")).size());
    write("/bench/lib/passband.library", "");
    workspace.forget(uri("/bench/lib/passband.library"));
    assertRoot("/bench/lib", "/bench/lib/part/a.pband");
    assertEquals(List.of(), found(uri("/bench/lib/part/a.pband")));
  }

  @Test
  void aLinkedFolderIsInTheLibraryThatItReallyIsIn() throws IOException {
    write("/other/.git/HEAD", "");
    Files.createSymbolicLink(disk.getPath("/other/link"), disk.getPath("/bench/lib"));
    assertRoot("/other/link/part", "/other/link/part/a.pband");
    write("/bench/lib/passband.library", "");
    workspace.forget(uri("/bench/lib/passband.library"));
    assertRoot("/other/link", "/other/link/part/a.pband");
  }

  /** What is renamed in a library is not renamed in another one below it. */
  @Test
  void aLibraryInALibraryIsAnother() throws IOException {
    write("/bench/lib/passband.library", "");
    write("/bench/lib/part/passband.library", "");
    assertEquals(List.of("shared.pband"), new DiskFolders(null).sources(folderUri("/bench/lib")));
    assertRoot("/bench/lib/part", "/bench/lib/part/a.pband");
  }

  @Test
  void aDocumentOnNoDiskIsByItself() {
    workspace.put("untitled:one", "device d \"D\" {\n}\n");
    assertEquals(new Workspace.Place("", "untitled:one"), workspace.place("untitled:one"));
    assertEquals(List.of(), found("untitled:one"));
  }
}
