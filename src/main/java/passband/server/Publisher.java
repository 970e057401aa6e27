package passband.server;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import passband.diagnostic.Diagnostics;
import passband.edit.Analysis;

/**
 * Shows the editor what is found in the open documents, once a text has rested for a moment. What a
 * newer text has made stale is not shown.
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

  /** Shows what is found now; a closed document has nothing to show any longer. */
  void closed(String uri) {
    work.inOrder(
        () -> {
          publish(uri, List.of());
          show();
        });
  }

  /** Analyzes here, finds the faults on the other thread, and shows them here again. */
  void show() {
    int change = documents.changes();
    Map<String, Analysis> analyses = new LinkedHashMap<>();
    workspace.open().forEach(uri -> analyses.put(uri, workspace.analysis(uri)));
    analyses.values().removeIf(Objects::isNull);
    work.aside(
        () -> {
          if (documents.changes() == change) {
            analyses.values().forEach(Analysis::diagnostics);
            work.inOrder(() -> show(analyses, change));
          }
        });
  }

  private void show(Map<String, Analysis> analyses, int change) {
    if (documents.changes() == change) {
      analyses.keySet().forEach(uri -> publish(uri, found(uri, analyses)));
    }
  }

  /** What is found in a document, by itself and by the open ones that use it. */
  private List<Diagnostic> found(String uri, Map<String, Analysis> analyses) {
    Workspace.Place place = workspace.place(uri);
    Diagnostics here = new Diagnostics();
    analyses.forEach(
        (other, analysis) -> {
          if (workspace.place(other).root().equals(place.root())) {
            analysis.diagnostics().stream()
                .filter(d -> d.span().file().path().equals(place.path()))
                .forEach(here::add);
          }
        });
    Replies.Uris uris = workspace.uris(uri);
    return here.list().stream().map(d -> Replies.diagnostic(d, uris)).toList();
  }

  private void publish(String uri, List<Diagnostic> found) {
    if (!found.equals(shown.put(uri, found))) {
      editor.accept(new PublishDiagnosticsParams(uri, found));
    }
  }
}
