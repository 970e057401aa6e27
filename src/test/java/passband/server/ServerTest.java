package passband.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.eclipse.lsp4j.*;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import passband.testing.Repository;

/** The language server as a process, spoken to over its pipes as an editor does. */
class ServerTest implements LanguageClient {
  private static final String OUTPUT = "teasel/teasel-output.pband";
  private static final String DEVICE = "teasel/teasel.pband";

  @TempDir Path work;
  private Process process;
  private LanguageServer server;
  private final Map<String, List<Diagnostic>> shown = new ConcurrentHashMap<>();
  private final List<String> logged = Collections.synchronizedList(new ArrayList<>());
  private final List<String> registered = Collections.synchronizedList(new ArrayList<>());
  private final Map<String, Integer> versions = new ConcurrentHashMap<>();

  @Override
  public void publishDiagnostics(PublishDiagnosticsParams params) {
    shown.put(params.getUri(), params.getDiagnostics());
  }

  @Override
  public void logMessage(MessageParams message) {
    logged.add(message.getMessage());
  }

  @Override
  public CompletableFuture<Void> registerCapability(RegistrationParams params) {
    registered.addAll(params.getRegistrations().stream().map(Registration::getMethod).toList());
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public void telemetryEvent(Object object) {
    logged.add("telemetry");
  }

  @Override
  public void showMessage(MessageParams message) {
    logged.add(message.getMessage());
  }

  @Override
  public CompletableFuture<MessageActionItem> showMessageRequest(
      ShowMessageRequestParams parameters) {
    return CompletableFuture.completedFuture(null);
  }

  @BeforeEach
  void start() throws Exception {
    Repository.copy(Repository.LIBRARY, work);
    process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                "passband.command.Main",
                "server")
            .redirectError(work.resolve("stderr.txt").toFile())
            .start();
    var launcher =
        LSPLauncher.createClientLauncher(this, process.getInputStream(), process.getOutputStream());
    launcher.startListening();
    server = launcher.getRemoteProxy();
    InitializeParams params = new InitializeParams();
    params.setWorkspaceFolders(List.of(new WorkspaceFolder(work.toUri().toString(), "procedures")));
    WorkspaceClientCapabilities workspace = new WorkspaceClientCapabilities();
    workspace.setDidChangeWatchedFiles(new DidChangeWatchedFilesCapabilities(true));
    params.setCapabilities(new ClientCapabilities(workspace, null, null));
    assertEquals("passband", got(server.initialize(params)).getServerInfo().getName());
    server.initialized(new InitializedParams());
  }

  @AfterEach
  void stop() throws Exception {
    if (process.isAlive()) {
      got(server.shutdown());
      server.exit();
      assertTrue(process.waitFor(10, TimeUnit.SECONDS), "it does not leave");
      assertEquals(0, process.exitValue());
    }
    assertEquals(List.of(), logged);
  }

  // ---- talking ----

  private static <T> T got(CompletableFuture<T> reply) throws Exception {
    return reply.get(20, TimeUnit.SECONDS);
  }

  private String uri(String path) {
    return work.resolve(path).toUri().toString();
  }

  private TextDocumentIdentifier document(String path) {
    return new TextDocumentIdentifier(uri(path));
  }

  private String open(String path) throws IOException {
    String text = Files.readString(work.resolve(path));
    open(path, text);
    return text;
  }

  private void open(String path, String text) {
    versions.put(path, 1);
    server
        .getTextDocumentService()
        .didOpen(
            new DidOpenTextDocumentParams(new TextDocumentItem(uri(path), "passband", 1, text)));
  }

  private void change(String path, String text) {
    int version = versions.merge(path, 1, Integer::sum);
    server
        .getTextDocumentService()
        .didChange(
            new DidChangeTextDocumentParams(
                new VersionedTextDocumentIdentifier(uri(path), version),
                List.of(new TextDocumentContentChangeEvent(text))));
  }

  /** Where a piece of a text begins, so many characters on. */
  private static Position at(String text, String piece, int on) {
    int offset = text.indexOf(piece);
    assertTrue(offset >= 0, piece);
    String before = text.substring(0, offset + on);
    int line = (int) before.chars().filter(c -> c == '\n').count();
    return new Position(line, before.length() - before.lastIndexOf('\n') - 1);
  }

  private static void awaited(BooleanSupplier what) throws InterruptedException {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
    while (!what.getAsBoolean()) {
      assertTrue(System.nanoTime() < end, "waited in vain");
      Thread.sleep(5);
    }
  }

  private List<String> codes(String path) {
    return shown.getOrDefault(uri(path), List.of()).stream()
        .map(d -> d.getCode().getLeft())
        .toList();
  }

  private List<String> proposed(String path, Position at) throws Exception {
    return got(server.getTextDocumentService().completion(new CompletionParams(document(path), at)))
        .getLeft()
        .stream()
        .map(CompletionItem::getLabel)
        .toList();
  }

  /** The text after the edits. */
  private static String edited(String text, List<? extends TextEdit> edits) {
    List<TextEdit> last = new ArrayList<>(edits);
    last.sort(
        (a, b) -> offset(text, b.getRange().getStart()) - offset(text, a.getRange().getStart()));
    String made = text;
    for (TextEdit edit : last) {
      made =
          made.substring(0, offset(made, edit.getRange().getStart()))
              + edit.getNewText()
              + made.substring(offset(made, edit.getRange().getEnd()));
    }
    return made;
  }

  private static int offset(String text, Position position) {
    int at = 0;
    for (int i = 0; i < position.getLine(); i++) {
      at = text.indexOf('\n', at) + 1;
    }
    return at + position.getCharacter();
  }

  // ---- diagnostics ----

  @Test
  void faultsAreShownAsTyped() throws Exception {
    String text = open(OUTPUT);
    awaited(() -> shown.containsKey(uri(OUTPUT)));
    assertEquals(List.of(), codes(OUTPUT));
    change(OUTPUT, text.replace("setup  bipolar-load\n", "setup  bipolar-lod\n"));
    awaited(() -> codes(OUTPUT).contains("unknown-name"));
    Diagnostic fault =
        shown.get(uri(OUTPUT)).stream()
            .filter(d -> d.getCode().getLeft().equals("unknown-name"))
            .findFirst()
            .orElseThrow();
    assertEquals(at(text, "bipolar-load\n", 0), fault.getRange().getStart());
    assertEquals(DiagnosticSeverity.Error, fault.getSeverity());
    assertTrue(fault.getMessage().getLeft().contains("did you mean 'bipolar-load'?"));
    change(OUTPUT, text);
    awaited(() -> codes(OUTPUT).isEmpty());
  }

  /**
   * A change in one open file shows in another that uses it, and what is open counts, not the disk.
   */
  @Test
  void aChangeShowsWhereTheFileIsUsed() throws Exception {
    open(OUTPUT);
    String device = open(DEVICE);
    awaited(() -> shown.containsKey(uri(OUTPUT)) && shown.containsKey(uri(DEVICE)));
    change(DEVICE, device.replace("mode tack \"Tack\"", "mode seal \"Tack\""));
    awaited(() -> codes(OUTPUT).contains("unknown-name"));
    change(DEVICE, device);
    awaited(() -> codes(OUTPUT).isEmpty());
  }

  /** Nobody has opened the procedure that a change of the generator breaks. */
  @Test
  void aBrokenLibraryIsShownWhereItIsBroken() throws Exception {
    String device = open(DEVICE);
    awaited(() -> shown.containsKey(uri(DEVICE)));
    assertEquals(List.of(), codes(DEVICE));
    change(DEVICE, device.replace("mode tack \"Tack\"", "mode seal \"Tack\""));
    awaited(() -> codes(OUTPUT).contains("unknown-name"));
    change(DEVICE, device);
    awaited(() -> codes(OUTPUT).isEmpty());
    Files.writeString(work.resolve("new.pband"), "device\n");
    server
        .getWorkspaceService()
        .didChangeWatchedFiles(
            new DidChangeWatchedFilesParams(
                List.of(new FileEvent(uri("new.pband"), FileChangeType.Created))));
    awaited(() -> !codes("new.pband").isEmpty());
    server.getTextDocumentService().didClose(new DidCloseTextDocumentParams(document(DEVICE)));
    awaited(() -> codes("new.pband").isEmpty());
  }

  /** A file that is not open changes on the disk, and the editor, asked to, says so. */
  @Test
  void aChangeOnTheDiskIsSeen() throws Exception {
    open(OUTPUT);
    awaited(() -> shown.containsKey(uri(OUTPUT)));
    assertEquals(List.of("workspace/didChangeWatchedFiles"), registered);
    Path device = work.resolve(DEVICE);
    Files.writeString(
        device, Files.readString(device).replace("mode tack \"Tack\"", "mode seal \"Tack\""));
    server
        .getWorkspaceService()
        .didChangeWatchedFiles(
            new DidChangeWatchedFilesParams(
                List.of(new FileEvent(uri(DEVICE), FileChangeType.Changed))));
    awaited(() -> codes(OUTPUT).contains("unknown-name"));
  }

  /** A file outside the editor's folders: its library begins at the marker above it. */
  @Test
  void aFileOutsideTheFoldersFindsWhatItUses(@TempDir Path other) throws Exception {
    Path elsewhere = Files.createDirectories(other.resolve("a/b"));
    Files.copy(work.resolve(DEVICE), other.resolve("device.pband"));
    String uri = elsewhere.resolve("new.pband").toUri().toString();
    server
        .getTextDocumentService()
        .didOpen(
            new DidOpenTextDocumentParams(
                new TextDocumentItem(uri, "passband", 1, "use \"../../device.pband\"\n")));
    awaited(() -> shown.containsKey(uri) && shown.get(uri).size() == 1);
    assertEquals(
        "'../../device.pband' is outside the library root " + elsewhere + " (set it with --root)",
        shown.get(uri).get(0).getMessage().getLeft().lines().findFirst().orElse(""));
    Path marker = Files.createFile(other.resolve("passband.library"));
    server
        .getWorkspaceService()
        .didChangeWatchedFiles(
            new DidChangeWatchedFilesParams(
                List.of(new FileEvent(marker.toUri().toString(), FileChangeType.Created))));
    awaited(() -> shown.get(uri).isEmpty());
  }

  // ---- completion ----

  @Test
  void completionKnowsThePlace() throws Exception {
    String text = open(OUTPUT);
    assertTrue(
        proposed(OUTPUT, at(text, "bipolar-load\n    accept power within 15", 0))
            .containsAll(List.of("bipolar-load", "monopolar-load")));
    assertTrue(
        proposed(OUTPUT, at(text, "thin  | 20", 2)).containsAll(List.of("thin", "thick", "tack")));
    assertTrue(proposed(OUTPUT, at(text, "analyzer.load-high", 9)).contains("load-low"));
    assertTrue(
        proposed(OUTPUT, at(text, "accept power from output", 7))
            .containsAll(List.of("power", "peak-voltage", "by")));
    assertTrue(
        proposed(OUTPUT, at(text, "outlet mono-1", 7)).containsAll(List.of("bipolar", "mono-2")));
    assertTrue(proposed(OUTPUT, at(text, "on-time 3 s", 10)).containsAll(List.of("s", "min")));
    assertTrue(
        proposed(OUTPUT, at(text, "  section inspection", 2))
            .containsAll(List.of("section", "test", "caution")));
    List<String> units = proposed(OUTPUT, at(text, "on-time 3 s", 10));
    assertFalse(units.contains("test"), units.toString());
    assertEquals(List.of(), proposed(OUTPUT, at(text, "\"Before switching on\"", 5)));
    change(OUTPUT, text.replace("  test tack-output", "  allow \n  test tack-output"));
    assertTrue(proposed(OUTPUT, at(text, "  test tack-output", 8)).contains("mode-untested"));
  }

  /** In a use the library's other files, by their paths from here. */
  @Test
  void completionKnowsTheFilesOfTheLibrary() throws Exception {
    String text = open(OUTPUT);
    String changed = text.replace("use \"../leads.pband\"", "use \"../l\"");
    change(OUTPUT, changed);
    List<String> files = proposed(OUTPUT, at(changed, "../l\"", 4));
    assertTrue(
        files.containsAll(List.of("../leads.pband", "../yarrow/yarrow.pband", "../rules.pband")),
        files.toString());
    assertFalse(files.contains("teasel.pband"), "it is used already");
    assertFalse(files.contains("teasel-output.pband"), "no file uses itself");
  }

  @Test
  void completionKnowsPlaceholders() throws Exception {
    String text = open(DEVICE);
    String mark = "{mode}";
    assertTrue(
        proposed(DEVICE, at(text, mark, 1))
            .containsAll(List.of("mode", "setting", "load", "outlet", "contact")));
    assertEquals(List.of(), proposed(DEVICE, at(text, mark, 0)));
    String brace = text.replace(mark, "{{mode}");
    change(DEVICE, brace);
    assertEquals(List.of(), proposed(DEVICE, at(brace, "{{mode}", 2)), "that is a brace");
  }

  /** The units of the quantity that a line is about stand first. */
  @Test
  void unitsOfTheOwnQuantityComeFirst() throws Exception {
    String text = open(OUTPUT);
    for (List<String> one :
        List.of(
            List.of("on-time 3 s", "s"),
            List.of("at most 3.8 kV", "V"),
            List.of("stated current/mA", "A"))) {
      String line = one.get(0);
      int unit = Math.max(line.lastIndexOf(' '), line.lastIndexOf('/')) + 1;
      List<String> units = proposed(OUTPUT, at(text, line, unit));
      assertTrue(units.get(0).endsWith(one.get(1)), line + ": " + units.subList(0, 5));
    }
    String device = open(DEVICE);
    List<String> units = proposed(DEVICE, at(device, "setting  power 1 W", 17));
    assertTrue(units.get(0).endsWith("W"), units.subList(0, 5).toString());
    assertTrue(units.contains("mA"), "any other can be written");
  }

  @Test
  void completionKnowsATableOfTests() throws Exception {
    String text = open(OUTPUT);
    String table =
        "    setup \n    table {\n      test | outlet | accept\n      a \"A\" |  | power \n    }\n";
    String changed =
        text.replace("  test tack-output", "  tests {\n" + table + "  }\n  test tack-output");
    change(OUTPUT, changed);
    assertTrue(proposed(OUTPUT, at(changed, "  tests {", 10)).contains("accept"));
    assertTrue(proposed(OUTPUT, at(changed, table, 10)).contains("bipolar-load"));
    assertTrue(
        proposed(OUTPUT, at(changed, "test | outlet | accept", 7))
            .containsAll(List.of("outlet", "accept", "mode")));
    assertTrue(proposed(OUTPUT, at(changed, "\"A\" |  | power", 6)).contains("mono-2"));
    assertTrue(proposed(OUTPUT, at(changed, "|  | power ", 11)).contains("from output"));
  }

  @Test
  void completionKnowsParts() throws Exception {
    Repository.copy(Repository.PROCEDURES, work.resolve("demo"));
    String path = "demo/sedge-170/sedge-170-full.pband";
    String text = open(path);
    String changed =
        text.replace("  include  service-bench\n", "  include  service-bench\n  include \n")
            .replace(
                "  include safety-passed",
                "  setup x \"X\" {\n    connect red from safety. \n  }\n  include safety-passed");
    change(path, changed);
    assertTrue(
        proposed(path, at(changed, "  include \n", 10))
            .containsAll(List.of("cautions", "closing", "electrical-safety")));
    assertTrue(proposed(path, at(changed, "red from safety. ", 16)).contains("applied"));
    assertTrue(proposed(path, at(changed, "    setup  monitor\n", 11)).contains("bond"));
    String house = "demo/house.pband";
    String parts = open(house);
    String more = parts.replace("part closing {\n", "part closing {\n  \n");
    change(house, more);
    List<String> lines = proposed(house, at(more, "part closing {\n  ", 17));
    assertTrue(lines.containsAll(List.of("caution", "include", "tests")), lines.toString());
    assertFalse(lines.contains("revision"), lines.toString());
  }

  @Test
  void completionKnowsATableOfSetups() throws Exception {
    String text = open(OUTPUT);
    String table =
        "    table {\n      setup | connect red | \n      b \"B\" | outlet.left to analyzer. | \n    }\n";
    String changed =
        text.replace(
            "  test tack-output", "  setups {\n    connect \n" + table + "  }\n  test tack-output");
    change(OUTPUT, changed);
    assertTrue(proposed(OUTPUT, at(changed, "    connect \n", 12)).contains("red"));
    assertTrue(
        proposed(OUTPUT, at(changed, "setup | connect red", 8))
            .containsAll(List.of("connect", "link")));
    assertTrue(proposed(OUTPUT, at(changed, "setup | connect red", 16)).contains("red"));
    assertTrue(
        proposed(OUTPUT, at(changed, "\"B\" | outlet.left", 6))
            .containsAll(List.of("outlet", "device")));
    assertTrue(proposed(OUTPUT, at(changed, "outlet.left to analyzer", 7)).contains("left"));
    assertTrue(proposed(OUTPUT, at(changed, "outlet.left to analyzer", 12)).contains("to"));
    assertTrue(proposed(OUTPUT, at(changed, "to analyzer. |", 12)).contains("load-high"));
  }

  @Test
  void completionKnowsTheLimitsOfARecord() throws Exception {
    String text = open(OUTPUT);
    String record = "    record battery \"Battery\" in V ";
    String changed =
        text.replace(
            "  section inspection", "  section more {\n" + record + "\n  }\n  section inspection");
    change(OUTPUT, changed);
    List<String> limits = proposed(OUTPUT, at(changed, record, record.length()));
    assertTrue(limits.containsAll(List.of("at least", "at most", "from", "within")), limits + "");
    assertFalse(limits.contains("from output"), limits.toString());
    assertTrue(proposed(OUTPUT, at(changed, record, record.length() - 3)).contains("in"));
    assertTrue(proposed(OUTPUT, at(changed, record, record.length() - 2)).contains("mV"));
  }

  @Test
  void completionKnowsTheChoicesAndTheirOutcomes() throws Exception {
    String text = open(OUTPUT);
    String when = "    when fan is \"on\"";
    String changed =
        text.replace(
            "  section inspection",
            "  section more {\n    choose fan \"The fan is\" from \"on\", \"off\"\n  }\n"
                + "  section windy {\n"
                + when
                + "\n  }\n  section inspection");
    change(OUTPUT, changed);
    assertTrue(proposed(OUTPUT, at(changed, when, 9)).contains("fan"));
    assertEquals(List.of("is"), proposed(OUTPUT, at(changed, when, 13)));
    List<String> outcomes = proposed(OUTPUT, at(changed, "is \"on\"\n  }\n  section insp", 3));
    assertTrue(outcomes.containsAll(List.of("\"on\"", "\"off\"")), outcomes.toString());
    assertFalse(outcomes.contains("fan"), outcomes.toString());
  }

  @Test
  void completionKnowsByWhatPointsDiffer() throws Exception {
    String text = open(OUTPUT);
    String derive = "    derive spread = max(current) - min(current) over repeat, resolution 1 mA";
    String changed = text.replaceFirst("    accept power from output", derive + "\n$0");
    change(OUTPUT, changed);
    List<String> columns = proposed(OUTPUT, at(changed, derive, derive.indexOf("repeat")));
    assertTrue(columns.containsAll(List.of("repeat", "outlet", "setting")), columns.toString());
    assertFalse(columns.contains("current"), columns.toString());
    List<String> inside = proposed(OUTPUT, at(changed, derive, derive.indexOf("max")));
    assertTrue(inside.containsAll(List.of("current", "rise", "mean")), inside.toString());
  }

  @Test
  void completionKnowsWhatAContactFloatsOn() throws Exception {
    String text = open(DEVICE);
    String contact = "contact switch \"hand-switch contact\"";
    assertTrue(proposed(DEVICE, at(text, contact, contact.length())).contains("on"));
    String on = contact + " on l";
    String changed = text.replace(contact, on);
    change(DEVICE, changed);
    List<String> poles = proposed(DEVICE, at(changed, on, on.length() - 1));
    assertTrue(poles.containsAll(List.of("left", "right", "return-plate.plate")), poles.toString());
    assertFalse(poles.contains("switch"), poles.toString());
  }

  @Test
  void completionKnowsHowAnErrorIsDistributed() throws Exception {
    String text = open(DEVICE);
    String analyzer = "analyzer x \"X\" {\n  measure current {\n    error 1 % as t\n  }\n}\n";
    change(DEVICE, text + analyzer);
    List<String> known =
        proposed(DEVICE, at(text + analyzer, analyzer, analyzer.indexOf("as t") + 4));
    assertTrue(
        known.containsAll(List.of("rectangular", "triangular", "u-shaped", "normal coverage 2")),
        known.toString());
  }

  // ---- hover and hints ----

  @Test
  void aRowTellsItsLimits() throws Exception {
    String text = open(OUTPUT);
    String row = hover(OUTPUT, at(text, "thin  | 20", 8));
    // 17 W to 23 W in 125 ohm: 368.8 mA and 428.95 mA; the manual's 369 and 428 are tighter still.
    assertTrue(row.contains("`bipolar-output/bipolar/thin/20W/125ohm`"), row);
    assertTrue(row.contains("369.0 to 428.0 mA"), row);
    // 0.369² · 125 = 17.02 W and 0.428² · 125 = 22.9 W, of the 20 W that were aimed at.
    assertTrue(row.contains("−14.9 % +14.5 % of power"), row);
    String mode = hover(DEVICE, at(open(DEVICE), "mode flare", 6));
    assertTrue(mode.contains("mode **flare** — Flare"), mode);
    assertTrue(
        hover(OUTPUT, at(text, "accept  current from stated", 1))
            .contains("accept QUANTITY LIMIT"));
    assertTrue(hover(OUTPUT, at(text, "on-time 3 s", 10)).contains("unit **s**"));
    assertNull(
        got(
            server
                .getTextDocumentService()
                .hover(new HoverParams(document(OUTPUT), new Position(1, 0)))));
  }

  private String hover(String path, Position at) throws Exception {
    Hover hover = got(server.getTextDocumentService().hover(new HoverParams(document(path), at)));
    assertNotNull(hover, at.toString());
    return hover.getContents().getRight().getValue();
  }

  @Test
  void rowsShowTheirLimitsBesideThem() throws Exception {
    String text = open(OUTPUT);
    List<InlayHint> hints =
        got(
            server
                .getTextDocumentService()
                .inlayHint(
                    new InlayHintParams(
                        document(OUTPUT), new Range(new Position(0, 0), new Position(999, 0)))));
    int row = at(text, "thin  | 5 ", 0).getLine();
    InlayHint hint =
        hints.stream().filter(h -> h.getPosition().getLine() == row).findFirst().orElseThrow();
    assertEquals("179.0 to 219.0 mA", hint.getLabel().getLeft());
    long rows = text.lines().filter(l -> l.contains("|") && !l.contains("mode ")).count();
    assertEquals(rows, hints.size());
  }

  // ---- names ----

  @Test
  void aNameLeadsToItsDeclaration() throws Exception {
    String text = open(OUTPUT);
    Location mode = definition(OUTPUT, at(text, "tack | 1", 1));
    String device = Files.readString(work.resolve(DEVICE));
    assertEquals(uri(DEVICE), mode.getUri());
    assertEquals(at(device, "tack \"Tack\"", 0), mode.getRange().getStart());
    assertEquals(
        uri("leads.pband"), definition(OUTPUT, at(text, "\"../leads.pband\"", 3)).getUri());
    assertEquals(uri(DEVICE), definition(OUTPUT, at(text, "outlet.cut-switch", 9)).getUri());
  }

  private Location definition(String path, Position at) throws Exception {
    return got(server.getTextDocumentService().definition(new DefinitionParams(document(path), at)))
        .getLeft()
        .get(0);
  }

  @Test
  void referencesAreFoundInFilesThatAreNotOpen() throws Exception {
    String device = open(DEVICE);
    ReferenceParams params =
        new ReferenceParams(
            document(DEVICE), at(device, "mode flare", 6), new ReferenceContext(false));
    List<? extends Location> places = got(server.getTextDocumentService().references(params));
    String text = Files.readString(work.resolve(OUTPUT));
    assertEquals(1, places.size(), places.toString());
    assertEquals(uri(OUTPUT), places.get(0).getUri());
    assertEquals(at(text, "flare | 10", 0), places.get(0).getRange().getStart());
  }

  /** After a rename everything compiles as before, under the new name. */
  @Test
  void aRenameGoesThroughAllFiles() throws Exception {
    String device = open(DEVICE);
    RenameParams params =
        new RenameParams(document(DEVICE), at(device, "mode flare", 6), "fulguration");
    Map<String, List<TextEdit>> changes =
        got(server.getTextDocumentService().rename(params)).getChanges();
    assertEquals(2, changes.size());
    changes.forEach(
        (uri, edits) -> {
          Path file = Path.of(java.net.URI.create(uri));
          String text = Repository.text(file);
          String made = edited(text, edits);
          assertFalse(made.contains("flare |"), made);
          open(work.relativize(file).toString(), made);
        });
    awaited(() -> shown.containsKey(uri(OUTPUT)));
    assertEquals(List.of(), codes(OUTPUT));
    assertTrue(
        hover(OUTPUT, at(Files.readString(work.resolve(OUTPUT)), "flare | 10", 1))
            .contains("fulguration"));
  }

  /** The cells of a table in a file of its own are renamed as well. */
  @Test
  void aRenameGoesThroughTableFiles() throws Exception {
    String folder = "yarrow/";
    String device = open(folder + "yarrow.pband");
    RenameParams params =
        new RenameParams(document(folder + "yarrow.pband"), at(device, "mode carve", 6), "divide");
    Map<String, List<TextEdit>> changes =
        got(server.getTextDocumentService().rename(params)).getChanges();
    String table = Files.readString(work.resolve(folder + "carve-limits.csv"));
    String made = edited(table, changes.get(uri(folder + "carve-limits.csv")));
    assertEquals(table.replace("carve,", "divide,"), made);
    assertFalse(made.contains("carve"), made);
  }

  @Test
  void theSameNameIsHighlightedInTheDocument() throws Exception {
    String device = open(DEVICE);
    DocumentHighlightParams params =
        new DocumentHighlightParams(document(DEVICE), at(device, "outlet mono-1", 8));
    List<? extends DocumentHighlight> found =
        got(server.getTextDocumentService().documentHighlight(params));
    assertEquals(DocumentHighlightKind.Write, found.get(0).getKind());
    assertTrue(found.size() > 1, found.toString());
    for (DocumentHighlight one : found) {
      int line = one.getRange().getStart().getLine();
      int start = one.getRange().getStart().getCharacter();
      assertTrue(device.lines().toList().get(line).startsWith("mono-1", start), one.toString());
    }
  }

  @Test
  void aRenameThatCannotBeIsRefused() throws Exception {
    String device = open(DEVICE);
    for (String name : List.of("2nd", "a b", "", "slit", "ü-é°!")) {
      ExecutionException refused =
          assertThrows(
              ExecutionException.class,
              () ->
                  got(
                      server
                          .getTextDocumentService()
                          .rename(
                              new RenameParams(
                                  document(DEVICE), at(device, "mode flare", 6), name))));
      assertTrue(refused.getCause() instanceof ResponseErrorException, name);
    }
  }

  // ---- shape ----

  @Test
  void outlineFoldsAndColours() throws Exception {
    String text = open(OUTPUT);
    DocumentSymbol procedure =
        got(server
                .getTextDocumentService()
                .documentSymbol(new DocumentSymbolParams(document(OUTPUT))))
            .get(0)
            .getRight();
    assertEquals("teasel-output", procedure.getName());
    assertEquals(
        List.of("inspection", "bipolar-load", "monopolar-load", "bipolar-output", "tack-output"),
        procedure.getChildren().stream().limit(5).map(DocumentSymbol::getName).toList());
    List<FoldingRange> folds =
        got(
            server
                .getTextDocumentService()
                .foldingRange(new FoldingRangeRequestParams(document(OUTPUT))));
    int test = at(text, "test tack-output", 0).getLine();
    assertTrue(folds.stream().anyMatch(f -> f.getStartLine() == test));
    SemanticTokens tokens =
        got(
            server
                .getTextDocumentService()
                .semanticTokensFull(new SemanticTokensParams(document(OUTPUT))));
    assertEquals(0, tokens.getData().size() % 5);
    assertTrue(tokens.getData().size() / 5 > 300);
    assertTrue(
        got(server.getWorkspaceService().symbol(new WorkspaceSymbolParams("flare")))
            .getRight()
            .stream()
            .anyMatch(s -> s.getName().equals("flare-output")));
  }

  @Test
  void aTextIsLaidOut() throws Exception {
    String text = Files.readString(work.resolve(OUTPUT));
    open(
        OUTPUT,
        text.replace("  device   teasel", " device teasel").replace("thin  | 5 ", "thin|5 "));
    List<? extends TextEdit> edits = format(OUTPUT);
    assertEquals(1, edits.size());
    assertEquals(
        text,
        edited(
            text.replace("  device   teasel", " device teasel").replace("thin  | 5 ", "thin|5 "),
            edits));
    change(OUTPUT, text);
    assertEquals(List.of(), format(OUTPUT));
    change(OUTPUT, text + "\n}");
    assertEquals(List.of(), format(OUTPUT));
  }

  private List<? extends TextEdit> format(String path) throws Exception {
    return got(
        server
            .getTextDocumentService()
            .formatting(
                new DocumentFormattingParams(document(path), new FormattingOptions(2, true))));
  }

  // ---- fixes ----

  /** A document with the line ends of Windows keeps them. */
  @Test
  void aTextIsLaidOutWithItsOwnLineEnds() throws Exception {
    String text = Files.readString(work.resolve(OUTPUT)).replace("\n", "\r\n");
    open(OUTPUT, text.replace("  revision", "revision"));
    List<? extends TextEdit> edits =
        got(
            server
                .getTextDocumentService()
                .formatting(
                    new DocumentFormattingParams(
                        document(OUTPUT), new FormattingOptions(2, true))));
    assertEquals(text, edited(text.replace("  revision", "revision"), edits));
    change(OUTPUT, text);
    assertEquals(
        List.of(),
        got(
            server
                .getTextDocumentService()
                .formatting(
                    new DocumentFormattingParams(
                        document(OUTPUT), new FormattingOptions(2, true)))));
  }

  @Test
  void symbolsAreFoundInAnyCase() throws Exception {
    open(OUTPUT);
    List<String> found =
        got(server.getWorkspaceService().symbol(new WorkspaceSymbolParams("BIPOLAR-L")))
            .getRight()
            .stream()
            .map(s -> s.getName())
            .toList();
    assertTrue(found.contains("bipolar-load"), found.toString());
  }

  @Test
  void aFixMends() throws Exception {
    String text = Files.readString(work.resolve(OUTPUT));
    Map<String, String> slips =
        Map.of(
            "setup  monopolar-load", "setup  monopolar-lod",
            "on-time 3 s", "on-time 3 sec",
            "179 to 219", "219 to 179",
            "5, 30, 60", "5, 30,60",
            "Before switching on\" {", "Before switching on {",
            "flare | 10, 30, 60 | 600", "flare | 10, 30, 60 | 600 Ohms");
    for (Map.Entry<String, String> slip : slips.entrySet()) {
      assertTrue(text.contains(slip.getKey()), slip.getKey());
      String broken =
          text.replaceFirst(java.util.regex.Pattern.quote(slip.getKey()), slip.getValue());
      shown.remove(uri(OUTPUT));
      open(OUTPUT, broken);
      awaited(() -> !codes(OUTPUT).isEmpty());
      Diagnostic fault = shown.get(uri(OUTPUT)).get(0);
      List<String> results = new ArrayList<>();
      for (CodeAction action : actions(OUTPUT, fault)) {
        results.add(edited(broken, action.getEdit().getChanges().get(uri(OUTPUT))));
      }
      String wanted = text.replace("  ", " ");
      assertTrue(
          results.stream()
              .anyMatch(
                  r ->
                      r.replace("  ", " ").equals(wanted)
                          || r.replace(" Ω", "")
                              .replace(" ohm\n", "\n")
                              .replace("  ", " ")
                              .equals(wanted)),
          slip
              + " "
              + fault.getMessage()
              + " "
              + actions(OUTPUT, fault).stream().map(CodeAction::getTitle).toList());
    }
  }

  @Test
  void aWarningCanBeAllowedAndAnUnusedAllowTakenOut() throws Exception {
    String text = Files.readString(work.resolve(OUTPUT));
    String warned = text.replace("179 to 219", "181 to 217");
    open(OUTPUT, warned);
    awaited(() -> codes(OUTPUT).contains("stated-tighter"));
    CodeAction allow =
        actions(OUTPUT, shown.get(uri(OUTPUT)).get(0)).stream()
            .filter(a -> a.getTitle().startsWith("allow stated-tighter"))
            .findFirst()
            .orElseThrow();
    String allowed =
        edited(warned, allow.getEdit().getChanges().get(uri(OUTPUT)))
            .replace("because \"\"", "because \"the maker says so\"");
    change(OUTPUT, allowed);
    awaited(() -> codes(OUTPUT).isEmpty());
    change(OUTPUT, allowed.replace("181 to 217", "179 to 219"));
    awaited(() -> codes(OUTPUT).contains("allow-unused"));
    CodeAction out = actions(OUTPUT, shown.get(uri(OUTPUT)).get(0)).get(0);
    assertEquals(
        text,
        edited(
            allowed.replace("181 to 217", "179 to 219"),
            out.getEdit().getChanges().get(uri(OUTPUT))));
  }

  private List<CodeAction> actions(String path, Diagnostic fault) throws Exception {
    return got(
            server
                .getTextDocumentService()
                .codeAction(
                    new CodeActionParams(
                        document(path), fault.getRange(), new CodeActionContext(List.of(fault)))))
        .stream()
        .map(org.eclipse.lsp4j.jsonrpc.messages.Either::getRight)
        .toList();
  }

  // ---- under pressure ----

  @Test
  void aLargeFileIsAnsweredAfterEachChange() throws Exception {
    String text = Files.readString(work.resolve(OUTPUT));
    StringBuilder tests = new StringBuilder();
    for (int i = 0; i < 34; i++) {
      tests
          .append("  test more-" + i + " \"More\" {\n    outlet bipolar\n    setup bipolar-load\n")
          .append("    accept power from output, read as current\n    table {\n")
          .append("      mode | setting/W | load/ohm\n");
      for (int w = 5; w < 56; w++) {
        tests.append("      thick | " + w + " | 125\n");
      }
      tests.append("    }\n  }\n");
    }
    String large = text.replace("  test tack-output", tests + "  test tack-output");
    assertTrue(large.lines().count() > 2000);
    open(OUTPUT, large);
    Position row = at(large, "thick | 50 | 125", 1);
    for (String accepted : List.of("within 10 %", "within 20 %")) {
      change(OUTPUT, large.replace("power from output", "power " + accepted + " of setting"));
      assertTrue(proposed(OUTPUT, row).contains("thick"));
      // 40 W and 60 W in 125 ohm: 565.7 and 692.8 mA; 45 W and 55 W: 600 and 663.3 mA.
      String wanted = accepted.equals("within 20 %") ? "566 to 692 mA" : "600 to 663 mA";
      assertTrue(hover(OUTPUT, row).contains(wanted), hover(OUTPUT, row));
    }
  }

  @Test
  void requestsAboutAnOlderTextAreDropped() throws Exception {
    String text = open(OUTPUT);
    List<CompletableFuture<Hover>> replies = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      replies.add(
          server
              .getTextDocumentService()
              .hover(new HoverParams(document(OUTPUT), at(text, "thin  | 20", 8))));
      change(OUTPUT, text + " ".repeat(i));
    }
    int dropped = 0;
    for (CompletableFuture<Hover> reply : replies) {
      try {
        got(reply);
      } catch (ExecutionException e) {
        assertTrue(e.getCause().getMessage().contains("changed since"), e.toString());
        dropped++;
      }
    }
    assertTrue(dropped > 0);
    assertNotNull(hover(OUTPUT, at(text, "thin  | 20", 8)));
  }

  @Test
  void nothingThatIsSentEndsIt() throws Exception {
    OutputStream pipe = process.getOutputStream();
    for (String bad :
        List.of(
            "{",
            "[]",
            "null",
            "{\"jsonrpc\":\"2.0\",\"method\":7}",
            "{\"jsonrpc\":\"2.0\",\"id\":5,\"method\":\"textDocument/hover\",\"params\":{\"textDocument\":null}}")) {
      byte[] body = bad.getBytes(StandardCharsets.UTF_8);
      synchronized (pipe) {
        pipe.write(
            ("Content-Length: " + body.length + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
        pipe.write(body);
        pipe.flush();
      }
    }
    open("nowhere/new.pband", "device \uD83D\uDE00 {\n".repeat(2000));
    awaited(() -> shown.containsKey(uri("nowhere/new.pband")));
    String deep = "procedure p {\n test t {\n accept power at most " + "(".repeat(20_000);
    open("nowhere/deep.pband", deep);
    awaited(() -> shown.containsKey(uri("nowhere/deep.pband")));
    String text = open(OUTPUT);
    for (int cut = 0; cut < text.length(); cut += 97) {
      String part = text.substring(0, cut);
      change(OUTPUT, part);
      Position end = at(part + "\u0000", "\u0000", 0);
      proposed(OUTPUT, end);
      got(server.getTextDocumentService().hover(new HoverParams(document(OUTPUT), end)));
      got(
          server
              .getTextDocumentService()
              .semanticTokensFull(new SemanticTokensParams(document(OUTPUT))));
    }
    change(OUTPUT, text);
    assertNotNull(hover(OUTPUT, at(text, "thin  | 20", 8)));
    logged.removeIf(m -> !m.contains("internal error"));
  }
}
