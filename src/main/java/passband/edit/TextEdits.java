package passband.edit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import passband.diagnostic.Fix;
import passband.source.SourceFile;
import passband.source.Span;

/** One text in the place of several spans that do not overlap, in any files. */
final class TextEdits {
  private final String text;
  private final SortedMap<String, List<Span>> spans = new TreeMap<>();

  /**
   * @param spans each once
   */
  TextEdits(Collection<Span> spans, String text) {
    this.text = text;
    for (Span span : spans.stream().sorted().toList()) {
      this.spans.computeIfAbsent(span.file().path(), path -> new ArrayList<>()).add(span);
    }
  }

  /** The files that change. */
  List<SourceFile> files() {
    return spans.values().stream().map(all -> all.get(0).file()).toList();
  }

  /** The text of a file after the edits. */
  String applied(SourceFile file) {
    StringBuilder out = new StringBuilder();
    int at = 0;
    for (Span span : spans.getOrDefault(file.path(), List.of())) {
      out.append(file.text(), at, span.start()).append(text);
      at = span.end();
    }
    return out.append(file.text(), at, file.text().length()).toString();
  }

  /** Where the start of a span is after the edits, as {@code path:offset}. */
  String moved(Span span) {
    int start = span.start();
    for (Span edited : spans.getOrDefault(span.file().path(), List.of())) {
      if (edited.start() < span.start()) {
        start += text.length() - (edited.end() - edited.start());
      }
    }
    return span.file().path() + ":" + start;
  }

  /** The edits one by one, in order of place. */
  List<Fix.Edit> all() {
    List<Fix.Edit> all = new ArrayList<>();
    spans.values().forEach(some -> some.forEach(span -> all.add(new Fix.Edit(span, text))));
    return all;
  }
}
