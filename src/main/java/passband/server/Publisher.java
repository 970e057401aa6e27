package passband.server;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import passband.edit.Analysis;

/**
 * Shows the editor what is found in the libraries that documents are open of, in every file, once a
 * text has rested for a moment. What a newer text has made stale is not shown.
 */
final class Publisher {
  /** So long a text must rest before its faults are shown. */
  private static final long REST_MILLIS = 80;

  private final Workspace workspace;
  private final Documents documents;
  private final Work work;
  private final Consumer<PublishDiagnosticsParams> editor;
  private final Map<String, List<Diagnostic>> shown = new HashMap<>();

  Publisher(
      Workspace workspace,
      Documents documents,
      Work work,
      Consumer<PublishDiagnosticsParams> editor) {
    this.workspace = workspace;
    this.documents = documents;
    this.work = work;
    this.editor = editor;
  }

  /** Shows what is found when this document has not changed for a moment. */
  void showSoon(String uri) {
    int version = documents.version(uri);
    work.inOrderAfter(
        REST_MILLIS,
        () -> {
          if (documents.version(uri) == version) {
            show();
          }
        });
  }

  /** Looks at the libraries on the other thread, and shows here what is found. */
  void show() {
    int change = documents.changes();
    List<Workspace.Opened> libraries = workspace.opened();
    List<Analysis> analyses =
        workspace.open().stream().map(workspace::analysis).filter(Objects::nonNull).toList();
    work.aside(
        () -> {
          Runnable shown = () -> work.inOrder(() -> show(libraries, change));
          for (Workspace.Opened library : libraries) {
            look(library, shown, () -> documents.changes() != change);
          }
          shown.run();
          if (documents.changes() == change) {
            analyses.forEach(Analysis::diagnostics); // fixes are asked for next
          }
        });
  }

  private void look(Workspace.Opened library, Runnable shown, BooleanSupplier stop) {
    try {
      library.check().run(workspace.paths(library.root()), library.open(), shown, stop);
    } catch (IOException | RuntimeException | StackOverflowError e) {
      work.report(e);
    }
  }

  private void show(List<Workspace.Opened> libraries, int change) {
    if (documents.changes() != change) {
      return;
    }
    Map<String, List<Diagnostic>> found = new TreeMap<>();
    workspace.open().forEach(uri -> found.put(uri, List.of()));
    for (Workspace.Opened library : libraries) {
      Replies.Uris uris = path -> workspace.uri(library.root(), path);
      library
          .check()
          .found()
          .forEach(
              (path, list) ->
                  found.put(
                      uris.of(path), list.stream().map(d -> Replies.diagnostic(d, uris)).toList()));
    }
    TreeSet<String> gone = new TreeSet<>(shown.keySet());
    gone.removeAll(found.keySet());
    gone.forEach(
        uri -> {
          publish(uri, List.of());
          shown.remove(uri);
        });
    found.forEach(this::publish);
  }

  private void publish(String uri, List<Diagnostic> found) {
    if (!found.equals(shown.put(uri, found))) {
      editor.accept(new PublishDiagnosticsParams(uri, found));
    }
  }
}
