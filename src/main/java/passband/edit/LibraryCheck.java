package passband.edit;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BooleanSupplier;
import passband.compile.Compiler;
import passband.compile.FoundTogether;
import passband.diagnostic.Diagnostic;
import passband.diagnostic.Diagnostics;
import passband.library.Library;
import passband.library.ParsedFiles;
import passband.library.SourceReader;
import passband.library.UseGraph;
import passband.source.Span;
import passband.syntax.Word;

/**
 * What is found in all files of a library, which is what {@code check} finds in its folder. What a
 * change does not concern is not looked at again. One thread runs it; any may tell it of changes.
 */
public final class LibraryCheck {
  private final ParsedFiles parsed;
  private final SourceReader reader;
  private final Map<String, Unit> units = new HashMap<>();
  private int changes;

  /**
   * A file that no other uses, with all that it uses.
   *
   * @param own the files whose procedures it compiles
   * @param fresh whether nothing has changed since
   */
  private record Unit(
      Set<String> own,
      Diagnostics diagnostics,
      Set<Span> usedAllows,
      List<Word> names,
      Set<String> consulted,
      boolean fresh) {
    Unit stale() {
      return new Unit(own, diagnostics, usedAllows, names, consulted, false);
    }
  }

  /**
   * @param reader gives the bytes of files under the root, as the editor has them
   */
  public LibraryCheck(ParsedFiles parsed, SourceReader reader) {
    this.parsed = parsed;
    this.reader = reader;
  }

  /** A file has changed, or has come or gone. */
  public synchronized void forget(String path) {
    changes++;
    units.replaceAll((start, unit) -> unit.consulted.contains(path) ? unit.stale() : unit);
  }

  /**
   * Looks at what has changed.
   *
   * @param paths the library's files, relative to the root
   * @param first of these, the ones that somebody has before them
   * @param shown told when what concerns those is done and much is left
   * @param stop asked between units; what is done until then is kept
   */
  public void run(
      Collection<String> paths, Set<String> first, Runnable shown, BooleanSupplier stop) {
    TreeSet<String> given = new TreeSet<>(paths);
    UseGraph graph = new UseGraph(given, reader);
    List<String> starts = graph.starts(given);
    Set<String> taken = new HashSet<>();
    Map<String, Set<String>> left = new HashMap<>();
    List<String> order = new ArrayList<>();
    for (String start : starts) {
      Set<String> files = graph.from(start);
      Set<String> own = new TreeSet<>(files);
      own.removeAll(taken);
      taken.addAll(files);
      if (!isFresh(start, own)) {
        left.put(start, own);
        order.add(files.stream().anyMatch(first::contains) ? 0 : order.size(), start);
      }
    }
    retain(starts);
    int concerned = (int) order.stream().filter(s -> concerns(graph.from(s), first)).count();
    for (int i = 0; i < order.size() && !stop.getAsBoolean(); i++) {
      if (i == concerned && order.size() - i > MANY) {
        shown.run();
      }
      String start = order.get(i);
      compile(start, left.get(start), graph.from(start), first);
    }
  }

  /** So many units take long enough for what is before somebody's eyes to be shown first. */
  private static final int MANY = 10;

  private static boolean concerns(Set<String> files, Set<String> first) {
    return files.stream().anyMatch(first::contains);
  }

  private synchronized boolean isFresh(String start, Set<String> own) {
    Unit unit = units.get(start);
    return unit != null && unit.fresh && unit.own.equals(own);
  }

  private synchronized void retain(List<String> starts) {
    units.keySet().retainAll(new HashSet<>(starts));
  }

  private void compile(String start, Set<String> own, Set<String> files, Set<String> kept) {
    int before = changes();
    Diagnostics found = new Diagnostics();
    Library library = new Library(parsed, found);
    try {
      library.load(start);
    } catch (IOException e) {
      return; // it has gone since
    }
    Compiler compiler =
        new Compiler(
            library,
            null,
            found,
            file -> {
              String path = library.pathOf(file);
              return own.contains(path) || !files.contains(path);
            });
    List<Word> names = new ArrayList<>();
    compiler.compile().forEach(plan -> names.add(plan.name()));
    if (!kept.contains(start)) {
      parsed.forget(start); // no other uses it: a large library's trees are not kept
    }
    put(
        start,
        new Unit(own, found, compiler.usedAllows(), names, library.consulted(), true),
        before);
  }

  private synchronized int changes() {
    return changes;
  }

  private synchronized void put(String start, Unit unit, int before) {
    units.put(start, changes == before ? unit : unit.stale());
  }

  /**
   * What is found in a file, by whatever unit; of a unit that has changed what was found before.
   */
  public synchronized Map<String, List<Diagnostic>> found() {
    FoundTogether together = new FoundTogether();
    for (String start : new TreeSet<>(units.keySet())) {
      Unit unit = units.get(start);
      together.take(unit.diagnostics, unit.usedAllows, unit.names);
    }
    Map<String, List<Diagnostic>> found = new HashMap<>();
    for (Diagnostic one : together.diagnostics().list()) {
      found.computeIfAbsent(one.span().file().path(), k -> new ArrayList<>()).add(one);
    }
    return found;
  }
}
