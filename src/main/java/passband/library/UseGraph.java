package passband.library;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Which files use which, read off their {@code use} lines alone. It only decides what is compiled
 * together and how long a parsed file is kept; what a file really uses the compiler finds itself.
 */
public final class UseGraph {
  private final SourceReader reader;
  private final Map<String, List<String>> uses = new HashMap<>();
  private final Set<String> used = new HashSet<>();
  private final Set<String> withAnalyzers = new TreeSet<>();
  private final boolean heads;

  /** Looks at the files and at all that they use. */
  public UseGraph(Collection<String> files, SourceReader reader) {
    this(files, reader, false);
  }

  /**
   * @param heads whether to look no further into a file than its first block, before which uses
   *     commonly stand
   */
  public UseGraph(Collection<String> files, SourceReader reader, boolean heads) {
    this.reader = reader;
    this.heads = heads;
    List<String> next = new ArrayList<>(files);
    for (int i = 0; i < next.size(); i++) {
      String path = next.get(i);
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
    int head = heads ? text.indexOf('{') : -1;
    text = head < 0 ? text : text.substring(0, head);
    int end;
    for (int at = 0; at < text.length(); at = end + 1) {
      end = at;
      while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
        end++;
      }
      while (at < end && isBlank(text.charAt(at))) {
        at++;
      }
      if (text.startsWith("use", at)) {
        String target = target(path, text.substring(at, end));
        if (target != null && !target.equals(path)) {
          found.add(target);
          used.add(target);
        }
      } else if (text.startsWith("analyzer", at) && text.substring(at, end).indexOf('{') > 0) {
        withAnalyzers.add(path);
      }
    }
    return found;
  }

  private static boolean isBlank(char c) {
    return c == ' ' || c == '\t' || c == '\uFEFF';
  }

  /** What a line that starts with {@code use} uses; null when that is no file under the root. */
  private static @Nullable String target(String path, String line) {
    int from = line.indexOf('"') + 1;
    int to = line.indexOf('"', from);
    boolean plain = from > 0 && to > from && line.substring("use".length(), from - 1).isBlank();
    return plain ? Library.normalised(path, line.substring(from, to)) : null;
  }

  /** The files in which an analyzer is declared. */
  public Set<String> withAnalyzers() {
    return withAnalyzers;
  }

  /**
   * The files from which all of the given can be reached, in order: those that no other uses, and
   * of a circle one.
   */
  public List<String> starts(TreeSet<String> given) {
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
  public Set<String> from(String start) {
    return Library.reached(start, uses);
  }
}
