package passband.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import passband.build.Compilation;
import passband.build.SourceSelection;
import passband.command.DiskFolders;
import passband.diagnostic.Diagnostic;
import passband.testing.Repository;

/** Which root the editor's server gives to a document, and what it finds in its library. */
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

  /** One that was not saved yet, in an editor with a folder open: it uses what lies there. */
  @Test
  void aDocumentThatWasNeverSavedUsesTheFoldersFiles() throws IOException {
    write("/bench/lib/passband.library", "");
    workspace.add(folderUri("/bench/lib"));
    String uri = "untitled:Untitled-1";
    workspace.put(uri, "use \"shared.pband\"\nuse \"none.pband\"\n");
    assertEquals(new Workspace.Place(folderUri("/bench/lib"), uri), workspace.place(uri));
    assertEquals(1, found(uri).size(), found(uri).toString());
    assertEquals(uri, workspace.uri(folderUri("/bench/lib"), uri));
  }

  // ---- the whole library ----

  /** What the editor shows of a library. */
  private TreeSet<String> shown() throws IOException {
    Workspace.Opened opened = workspace.opened().get(0);
    opened.check().run(workspace.paths(opened.root()), opened.open(), () -> {}, () -> false);
    return opened.check().found().values().stream()
        .flatMap(List::stream)
        .map(WorkspaceTest::said)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static String said(Diagnostic one) {
    return one.span().file().path() + ":" + one.span().start() + ": " + one.message();
  }

  /** What the command says of the same files. */
  private TreeSet<String> checked(Path root) throws Exception {
    Compilation<String> compilation =
        Compilation.each(
            SourceSelection.units(List.of("."), root, null, null), null, plan -> "", () -> {});
    return compilation.diagnostics().list().stream()
        .map(WorkspaceTest::said)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /**
   * After any edit of any file, open or not, the editor shows what the command finds: lines go,
   * names and numbers change, files come and go.
   */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void theEditorShowsWhatTheCommandFinds(long seed) throws Exception {
    Path root = disk.getPath("/qa");
    Repository.copy(Repository.LIBRARY, root);
    Files.createFile(root.resolve("passband.library"));
    Map<String, String> sound = new TreeMap<>(Repository.texts(Repository.LIBRARY));
    String open = uri("/qa/leads.pband");
    workspace.put(open, sound.get("leads.pband"));
    assertEquals(new TreeSet<>(), shown());
    Random random = new Random(seed);
    List<String> paths = List.copyOf(sound.keySet());
    int faults = 0;
    for (int i = 0; i < 25; i++) {
      String path = paths.get(random.nextInt(paths.size()));
      String text = random.nextInt(3) == 0 ? sound.get(path) : edited(sound.get(path), random);
      if (random.nextInt(12) == 0 && !path.equals("leads.pband")) {
        Files.deleteIfExists(root.resolve(path));
      } else {
        Files.writeString(root.resolve(path), text);
      }
      if (path.equals("leads.pband")) {
        workspace.put(open, text);
      } else {
        workspace.forget(uri("/qa/" + path));
      }
      TreeSet<String> expected = checked(root);
      faults += expected.isEmpty() ? 0 : 1;
      assertEquals(expected, shown(), path);
    }
    assertTrue(faults > 5, "the edits find something");
  }

  private static String edited(String text, Random random) {
    List<String> lines = new ArrayList<>(text.lines().toList());
    int at = random.nextInt(Math.max(1, lines.size()));
    if (lines.isEmpty() || random.nextBoolean()) {
      lines.add(at, "  allow mode-untested because \"x\"");
    } else {
      lines.set(at, lines.get(at).replaceFirst("[a-z]{4}", "zzzz"));
    }
    return String.join("\n", lines) + "\n";
  }
}
