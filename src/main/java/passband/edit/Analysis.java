package passband.edit;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import passband.compile.Compiler;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.library.Library;
import passband.library.ParsedFiles;
import passband.plan.Plan;
import passband.plan.Point;
import passband.source.SourceFile;
import passband.source.Span;
import passband.syntax.Tree;

/** What a file and all that it uses come to, as it stands in the editor. */
public final class Analysis {
  private final ParsedFiles parsed;
  private final String path;
  private final Library library;
  private final Tree.File file;
  private @Nullable Planned planned;
  private @Nullable Checked checked;

  /** What planning comes to: the points on each row, and where everything is named. */
  private record Planned(Map<Span, List<Point>> points, Symbols symbols) {}

  /** What a whole compilation comes to. */
  private record Checked(List<Diagnostic> diagnostics, Set<String> consulted) {}

  private Analysis(ParsedFiles parsed, String path, Library library, Tree.File file) {
    this.parsed = parsed;
    this.path = path;
    this.library = library;
    this.file = file;
  }

  /**
   * Of one file.
   *
   * @param path relative to the root of the parsed files
   * @throws IOException when the file cannot be read
   */
  public static Analysis of(ParsedFiles parsed, String path) throws IOException {
    Library library = new Library(parsed, new Diagnostics());
    library.load(path);
    Tree.File file =
        library.files().stream()
            .filter(f -> library.pathOf(f).equals(path))
            .findFirst()
            .orElseThrow();
    return new Analysis(parsed, path, library, file);
  }

  /** The file. */
  public Tree.File file() {
    return file;
  }

  /** Its text. */
  public SourceFile source() {
    return file.source();
  }

  /** The files that it sees: itself, then what it uses. */
  public List<Tree.File> visible() {
    return library.visibleFrom(file);
  }

  /** Whether a file was asked for, there or not. */
  public synchronized boolean consulted(String asked) {
    return library.consulted().contains(asked)
        || checked != null && checked.consulted.contains(asked);
  }

  /** The points that are written on a row of a table, each once, as far as they can be planned. */
  public List<Point> points(Tree.Row row) {
    return planned().points.getOrDefault(row.span(), List.of());
  }

  /** Where everything is declared and named. */
  public Symbols symbols() {
    return planned().symbols;
  }

  private synchronized Planned planned() {
    if (planned == null) {
      Compiler compiler = new Compiler(library, null, new Diagnostics());
      Map<Span, List<Point>> points = points(compiler.planned());
      planned = new Planned(points, new Symbols(compiler.names()));
    }
    return planned;
  }

  private static Map<Span, List<Point>> points(List<Plan> plans) {
    Map<Span, List<Point>> points = new HashMap<>();
    for (Plan plan : plans) {
      for (Point point : plan.points()) {
        List<Point> there = points.computeIfAbsent(point.span(), span -> new ArrayList<>());
        if (there.stream().noneMatch(p -> p.id().equals(point.id()))) {
          there.add(point);
        }
      }
    }
    return points;
  }

  /**
   * Everything that is found, in all its files. This takes longest and may be done on a thread of
   * its own while the rest is asked for on another.
   */
  public List<Diagnostic> diagnostics() {
    synchronized (this) {
      if (checked != null) {
        return checked.diagnostics;
      }
    }
    Diagnostics found = new Diagnostics();
    Library own = new Library(parsed, found);
    try {
      own.load(path);
    } catch (IOException e) {
      return List.of(); // it has gone since
    }
    new Compiler(own, null, found).compile();
    synchronized (this) {
      checked = new Checked(found.list(), own.consulted());
      return checked.diagnostics;
    }
  }
}
