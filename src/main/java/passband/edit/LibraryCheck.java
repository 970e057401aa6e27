package passband.edit;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
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
  private final Map<String, Unit> units = new TreeMap<>();
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
      Set<String> takenUp,
      List<Word> names,
      Set<String> consulted,
      boolean fresh) {
    Unit stale() {
      return new Unit(own, diagnostics, usedAllows, takenUp, names, consulted, false);
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
    List<Task> concerned = new ArrayList<>();
    List<Task> others = new ArrayList<>();
    for (String start : starts) {
      Set<String> files = graph.from(start);
      Set<String> own = new TreeSet<>(files);
      own.removeAll(taken);
      taken.addAll(files);
      if (!isFresh(start, own)) {
        (files.stream().anyMatch(first::contains) ? concerned : others)
            .add(new Task(start, own, files));
      }
    }
    retain(starts);
    compile(concerned, first, stop);
    if (!concerned.isEmpty() && others.size() > MANY) {
      shown.run();
    }
    compile(others, first, stop);
  }

  /** A unit that is to be compiled: where it starts, its own files and all. */
  private record Task(String start, Set<String> own, Set<String> files) {}

  /** So many units take long enough for what is before somebody's eyes to be shown first. */
  private static final int MANY = 10;

  private void compile(List<Task> tasks, Set<String> kept, BooleanSupplier stop) {
    for (Task task : tasks) {
      if (stop.getAsBoolean()) {
        return;
      }
      compile(task, kept);
    }
  }

  private synchronized boolean isFresh(String start, Set<String> own) {
    Unit unit = units.get(start);
    return unit != null && unit.fresh && unit.own.equals(own);
  }

  private synchronized void retain(List<String> starts) {
    units.keySet().retainAll(new HashSet<>(starts));
  }

  private void compile(Task task, Set<String> kept) {
    int before = changes();
    Diagnostics found = new Diagnostics();
    Library library = new Library(parsed, found);
    try {
      library.load(task.start);
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
              return task.own.contains(path) || !task.files.contains(path);
            });
    List<Word> names = new ArrayList<>();
    compiler.compile().forEach(plan -> names.add(plan.name()));
    if (!kept.contains(task.start)) {
      parsed.forget(task.start); // no other uses it: a large library's trees are not kept
    }
    put(
        task.start,
        new Unit(
            task.own,
            found,
            compiler.usedAllows(),
            compiler.takenUp(),
            names,
            library.consulted(),
            true),
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
    for (Unit unit : units.values()) {
      together.take(unit.diagnostics, unit.usedAllows, unit.takenUp, unit.names);
    }
    Map<String, List<Diagnostic>> found = new HashMap<>();
    for (Diagnostic one : together.diagnostics().list()) {
      found.computeIfAbsent(one.span().file().path(), k -> new ArrayList<>()).add(one);
    }
    return found;
  }
}
