package passband.command;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import passband.resolve.Library;
import passband.source.SourceReader;

/**
 * Which files use which, read off their {@code use} lines alone. It only decides what is compiled
 * together and how long a parsed file is kept; what a file really uses the compiler finds itself.
 */
final class UseGraph {
  private static final Pattern USE = Pattern.compile("(?m)^[ \\t]*use[ \\t]+\"([^\"\\r\\n]*)\"");
  private static final Pattern ANALYZER = Pattern.compile("(?m)^[ \\t]*analyzer[^\\r\\n]*\\{");

  private final SourceReader reader;
  private final Map<String, List<String>> uses = new HashMap<>();
  private final Set<String> used = new HashSet<>();
  private final Set<String> withAnalyzers = new TreeSet<>();

  /** Looks at the files and at all that they use. */
  UseGraph(Collection<String> files, SourceReader reader) {
    this.reader = reader;
    Deque<String> next = new ArrayDeque<>(files);
    while (!next.isEmpty()) {
      String path = next.poll();
      if (!uses.containsKey(path)) {
        uses.put(path, look(path));
        next.addAll(uses.get(path));
      }
    }
  }

  private List<String> look(String path) {
    List<String> found = new ArrayList<>();
    String text;
    try {
      text = new String(reader.read(path), StandardCharsets.UTF_8);
    } catch (IOException e) {
      return found; // said when it is compiled
    }
    if (ANALYZER.matcher(text).find()) {
      withAnalyzers.add(path);
    }
    Matcher use = USE.matcher(text);
    while (use.find()) {
      String target = Library.normalised(path, use.group(1));
      if (target != null && !target.equals(path)) {
        found.add(target);
        used.add(target);
      }
    }
    return found;
  }

  /** The files in which an analyzer is declared. */
  Set<String> withAnalyzers() {
    return withAnalyzers;
  }

  /**
   * The files from which all of the given can be reached, in order: those that no other uses, and
   * of a circle one.
   */
  List<String> starts(TreeSet<String> given) {
    List<String> starts = new ArrayList<>();
    Set<String> reached = new HashSet<>();
    for (String path : given) {
      if (!used.contains(path)) {
        starts.add(path);
        reached.addAll(from(path));
      }
    }
    for (String path : given) {
      if (!reached.contains(path)) {
        starts.add(path);
        reached.addAll(from(path));
      }
    }
    starts.sort(null);
    return starts;
  }

  /** A file and all that it uses. */
  Set<String> from(String start) {
    Set<String> reached = new LinkedHashSet<>();
    Deque<String> next = new ArrayDeque<>(List.of(start));
    while (!next.isEmpty()) {
      String path = next.poll();
      if (reached.add(path)) {
        next.addAll(uses.getOrDefault(path, List.of()));
      }
    }
    return reached;
  }
}
